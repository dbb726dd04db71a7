/** Late, corrected and withdrawn entries: users-job.md A5, hazard 8, and the design's rule 2. */
import { describe, expect, it } from 'vitest';
import type { Task, People } from '../../handling/values.ts';
import { morePeople } from '../../handling/rules/help.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  calendar,
  check,
  correct,
  hold,
  hours,
  onOwn,
  order,
  retract,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const weight = (at: number, kg: number, extra: Partial<Told> = {}): Told => ({
  type: 'weight-recorded',
  at,
  payload: { weight: { kg, how: 'measured' } },
  ...extra,
});
const base = [weight(0.5, 70), { ...check('edge', 1), id: 'first' }];
const at = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...base, ...told), ward, calendar, hours(h)).view;
const plan = (view: ReturnType<typeof at>, task: Task) => view.plan!.day.find((p) => p.task === task)!;
const needs = (view: ReturnType<typeof at>, task: Task): [boolean, People, string] => {
  const { hold: held, people, aid } = plan(view, task);
  return [held, people, aid];
};

describe('what is said of an entry that does not count yet', () => {
  const fall = { ...trigger('fall', 3), id: 'fall' };
  it.each([
    ['withdraws a fall', [fall, trigger('faint', 3.5), { ...retract(4, 'fall'), id: 'gone' }]],
    [
      'puts right a stage not met',
      [
        { ...check('stand', 3, { stand: { outcome: 'not-met' } }), id: 'less' },
        { ...trigger('faint', 3.5), id: 'faint' },
        { ...correct(4, 'less', check('walk', 3)), id: 'right' },
      ],
    ],
    ['tells a check of before a fall after it', [fall, { ...check('walk', 2), id: 'late', recorded: 5 }]],
  ] as const)('given a nurse who %s, it is never that someone may not lower help', (_, told) => {
    const view = at(6, ...told);
    expect(view.trust.conflicts).not.toEqual([]);
    expect(JSON.stringify(view)).not.toMatch(/who may (not|only)/);
  });
  it('given an aide who withdraws a fall, it is', () => {
    const view = at(6, fall, retract(4, 'fall', 'aide'));
    expect(JSON.stringify(view)).toContain('by someone who may not lower help: the original stands');
  });
});

describe('an entry that came late', () => {
  const clears = { ...check('walk', 2), id: 'pt', role: 'therapist' as const };
  const noWeight = { about: 'weight-bearing', limb: 'left-leg', bears: 'none' };

  it('BOARD-10 A5: a therapist clears more at 10:00, the order of 09:55 arrives at 10:05: the safer stands, both are shown', () => {
    const late = { ...order(1.92, noWeight), id: 'o', recorded: 2.1 };
    const view = at(2.5, clears, late);
    const before = at(2.5, { ...order(1.92, noWeight), id: 'o' });
    expect(view.trust.state).toBe('re-check');
    expect(view.trust.conflicts).toContainEqual(expect.objectContaining({ safer: 'o', other: 'pt' }));
    expect(plan(view, 'walk').people).not.toBe('stand-by');
    expect(plan(view, 'bed-chair').people).not.toBe('stand-by');
    expect(plan(before, 'walk').hold).toBe(true);
  });

  it('BOARD-10 does not lower help below a trigger that came after it, and shows both', () => {
    const fell = { ...trigger('faint', 3), id: 'f' };
    const late = { ...clears, recorded: 4 };
    const without = at(5, fell);
    const view = at(5, fell, late);
    for (const task of ['edge-of-bed', 'bed-chair', 'stand', 'walk'] as const) {
      expect(needs(view, task)).toEqual(needs(without, task));
    }
    expect(view.tier.word).toBe('Edge');
    expect(view.trust.conflicts).toContainEqual(expect.objectContaining({ safer: 'f', other: 'pt' }));
    // Entered in time, the same check counts and only the trigger adds to it.
    const inTime = at(5, fell, clears);
    expect(inTime.tier.word).toBe('Walk');
    expect(inTime.trust.conflicts).toEqual([]);
  });

  it('counts once what stood against it is answered by a later check', () => {
    const late = { ...clears, recorded: 4 };
    const answered = at(6, trigger('sedation', 3), late, check('edge', 5));
    expect(answered.trust.conflicts).toEqual([]);
    expect(answered.tier.word).toBe('Walk');
  });

  it('is no conflict where it lowers nothing, and none where nothing is open', () => {
    const late = { ...clears, recorded: 4 };
    expect(at(5, late).trust).toMatchObject({ state: 'current', conflicts: [] });
    const same = { ...check('edge', 2), id: 'again', recorded: 4 };
    expect(at(5, hold(3, 'walking', 9), same).trust.conflicts).toEqual([]);
  });

  it.each([
    ['a hold', hold(3, 'walking', 9)],
    ['an order', order(3, { about: 'activity', most: 'stand' })],
    ['a stage not met', check('edge', 3, { edge: { outcome: 'not-met' } })],
    [
      'help not waited for',
      check('clear', 3, {}, { cooperation: { waitsForHelp: 'no', followsInstructions: 'yes' } }),
    ],
  ] as const)('does not lower help below %s at or after it', (_what, open) => {
    const late = { ...clears, recorded: 4 };
    for (const task of ['edge-of-bed', 'bed-chair', 'stand', 'walk'] as const) {
      expect(needs(at(3.5, open as Told, late), task)).toEqual(needs(at(3.5, open as Told), task));
    }
  });

  it('that sets "on own" leaves it off', () => {
    const walks = { ...check('walk', 1.5), id: 'w' };
    expect(at(5, walks, onOwn(2)).onOwn).not.toBeNull();
    expect(at(5, walks, hold(3, 'walking', 9), { ...onOwn(2), recorded: 4 }).onOwn).toBeNull();
  });

  it.each([
    ['an aide who tells it afterwards does not bring "on own" back', 'aide', 4, undefined],
    ['nor does a nurse: who set it did not know that somebody was to look again', 'nurse', 4, undefined],
    ['told by an aide before "on own" was set, it waits until somebody looked', 'aide', 1.7, ['room']],
  ] as const)(
    'given "on own" set under a comfort plan: the staged check before it: %s',
    (_what, role, recorded, own) => {
      const walks = { ...check('walk', 1.2), id: 'w' };
      const scope = (h: number, kind: string, extra: Partial<Told> = {}): Told => ({
        type: 'scope-set',
        at: h,
        role: 'nurse',
        payload: { scope: kind },
        ...extra,
      });
      const told = [walks, scope(1.5, 'comfort'), onOwn(2)];
      const back = { ...scope(1.6, 'staged', { role }), recorded };
      expect(at(5, ...told).onOwn).toBeNull();
      const after = at(5, ...told, back);
      expect(after.scope.kind).toBe('staged');
      expect(after.onOwn).toBeNull();
      const looked = at(7, ...told, back, { ...check('walk', 6), id: 'looked' });
      expect(looked.onOwn?.where).toEqual(own);
    },
  );
});

describe('a correction or withdrawal by a qualified person', () => {
  it('BOARD-10 does not lower help while something at or after the entry is open', () => {
    const held = { ...hold(2, 'out-of-bed', 40), id: 'h' };
    const fell = { ...trigger('new-symptom', 3), id: 'n' };
    const withdrawn = { ...retract(4, 'h'), id: 'r' };
    const view = at(5, held, fell, withdrawn);
    expect(view.holds).toMatchObject([{ event: 'h' }]);
    expect(needs(view, 'bed-chair')).toEqual(needs(at(5, held, fell), 'bed-chair'));
    expect(view.trust.conflicts).toContainEqual(expect.objectContaining({ safer: 'n', other: 'r' }));
    expect(at(5, held, withdrawn).holds).toEqual([]);
  });

  it('BOARD-8 keeps "weight unknown" until a nurse records what an aide read, and shows both', () => {
    const read = { ...weight(2, 70), role: 'aide', id: 'read' } as const;
    const of = (...told: readonly Told[]) =>
      evaluateStay(stayOf({ ...check('edge', 1), id: 'first' }, ...told), ward, calendar, hours(4)).view;
    expect(plan(of(), 'bed-chair').aid).toBe('bariatric-lift');
    expect(plan(of(read), 'bed-chair').aid).toBe('bariatric-lift');
    expect(of(read).trust.conflicts).toMatchObject([{ question: 'weight', other: 'read' }]);
    expect(plan(of(read, weight(3, 70)), 'bed-chair').aid).not.toBe('bariatric-lift');
    // A heavier one asks for more, so anybody's counts at once.
    const heavier = of(weight(2, 70), { ...weight(3, 150), role: 'aide' });
    expect(needs(heavier, 'bed-chair')).toEqual(needs(of(weight(3, 150)), 'bed-chair'));
    expect(needs(heavier, 'bed-chair')).not.toEqual(needs(of(weight(2, 70)), 'bed-chair'));
  });

  it('BOARD-9 lets no correction close what stands against it by moving a check past it', () => {
    const late = { ...check('edge', 2), id: 'late', recorded: 10 } as const;
    const moved = { ...correct(0, 'late', check('edge', 9), 'nurse', 9), id: 'moved', recorded: 11 };
    const open = trigger('asked-to-look-again', 5);
    const before = at(12, open, late);
    const after = at(12, open, late, moved);
    expect(after.trust.state).not.toBe('current');
    for (const was of before.plan!.day)
      expect(needs(after, was.task)).toEqual([was.hold, was.people, was.aid]);
  });

  it('BOARD-10 keeps the heavier weight while a trigger after it is open', () => {
    const heavy = weight(2, 150, { id: 'w' });
    const lighter = { ...correct(4, 'w', weight(2, 60)), id: 'c' };
    const fell = trigger('bleed', 3);
    expect(plan(at(5, heavy, fell, lighter), 'from-floor').aid).toBe('bariatric-lift');
    expect(plan(at(5, heavy, lighter), 'from-floor').aid).toBe('sling-lift');
  });

  it('is not held back by what happened only after it was made', () => {
    const held = { ...hold(2, 'out-of-bed', 40), id: 'h' };
    expect(at(6, held, retract(4, 'h'), trigger('sedation', 5)).holds).toEqual([]);
  });

  it('is not held back by the entry it speaks of', () => {
    const bed = { ...order(2, { about: 'activity', most: 'bed' }), id: 'o' };
    const chair = correct(4, 'o', order(2, { about: 'activity', most: 'chair' }));
    expect(at(5, bed, chair).orders).toMatchObject([{ order: { most: 'chair' } }]);
    expect(at(5, bed, chair).trust.state).toBe('re-check');
  });
});

describe('someone who may only make it safer', () => {
  const stands = (...told: readonly Told[]) => at(5, check('walk', 1.5), ...told);
  it.each<[string, Told, Told | null]>([
    [
      'by walking the person for the first time',
      { type: 'session-recorded', at: 3, role: 'aide', payload: walked() },
      null,
    ],
    [
      'by taking an order off',
      order(3, { about: 'weight-bearing', limb: 'left-leg', bears: 'unrestricted' }, 'aide'),
      order(2, { about: 'weight-bearing', limb: 'left-leg', bears: 'none' }),
    ],
    [
      'by a lesser kind of the same drain',
      drain(3, 'iv-line', false, 'aide'),
      drain(2, 'chest-drain', true, 'nurse'),
    ],
    ['by reading the scales lower', { ...weight(3, 60), role: 'aide' }, weight(2, 150)],
    [
      'by a support seen in use',
      { type: 'seen-walking', at: 3, role: 'aide', payload: { walkingSupport: 'none' } },
      check('walk', 2, {}, { walkingSupport: 'frame' }),
    ],
  ])('does not lower help %s', (_how, said, first) => {
    const before = first ? [first] : [];
    const [was, is] = [at(5, ...before), at(5, ...before, said)];
    const least = was.plan!.day.map(({ task, people, hold: held }) => ({
      task,
      people: morePeople(people, plan(is, task).people),
      hold: held || plan(is, task).hold,
    }));
    expect(is.plan!.day).toMatchObject(least);
    expect(is.walkingSupport).toBe(was.walkingSupport);
  });
  it('of two checks of the same minute what held the person more stands, whichever has the later id', () => {
    const free = check('walk', 2);
    const held = check('walk', 2, { walk: { how: 'secured' } });
    for (const [one, other] of [
      [free, held],
      [held, free],
    ] as const) {
      const view = stands(
        { ...one, id: 'a' },
        { ...other, id: 'b' },
        { type: 'session-recorded', at: 2.5, payload: walked() },
      );
      expect(plan(view, 'walk').people).toBe('two');
    }
  });
});

function walked() {
  return {
    session: {
      outcome: 'done',
      occasion: 'planned',
      activities: ['walk'],
      startedAt: new Date(hours(2.5)).toISOString(),
      events: [],
      firstTimeUp: false,
    },
  };
}
function drain(h: number, kind: string, needsOwnPerson: boolean, role: 'aide' | 'nurse'): Told {
  return {
    type: 'attachment-added',
    at: h,
    role,
    payload: { attachment: 'd', kind, disconnects: 'nurse', needsOwnPerson },
  };
}
