/**
 * Trust and due dates. Source: the design's validity row (hospital policies listed in users-job.md
 * 3a; the hours are common practice, to be signed by the ward).
 */
import { describe, expect, it } from 'vitest';
import type { StayRecord } from '../../corrections/facts.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  confirm,
  correct,
  hold,
  hours,
  onOwn,
  order,
  recordOf,
  retract,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const at = (record: StayRecord, h: number) => evaluateStay(record, ward, calendar, hours(h)).view;
const first = { ...check('edge', 1), id: 'first' };

describe('before the first check', () => {
  it('nothing is known, and the check is due within 4 h of arrival', () => {
    expect(at(stayOf(), 3.9)).toMatchObject({
      trust: { state: 'not-known' },
      tier: { word: 'Not known' },
      due: { state: 'not-due', at: hours(4) },
      today: { goal: null, recorded: false, met: null },
    });
    expect(at(stayOf(), 4).due).toMatchObject({ state: 'overdue', at: hours(4) });
  });
  it('a return from surgery does not put the first check off', () => {
    expect(at(stayOf(trigger('return-from-surgery', 1)), 5).due).toMatchObject({
      state: 'overdue',
      at: hours(4),
    });
  });
  it('a check by an aide makes nothing known', () => {
    expect(at(stayOf({ ...first, role: 'aide' }), 2).trust.state).toBe('not-known');
  });
});

describe('the validity of a plan', () => {
  it('is 12 h from the check; then it reads re-check and overdue, and the tier is kept', () => {
    expect(at(stayOf(first), 12.9)).toMatchObject({ trust: { state: 'current' }, due: { at: hours(13) } });
    expect(at(stayOf(first), 13)).toMatchObject({
      trust: { state: 're-check' },
      due: { state: 'overdue', at: hours(13) },
      tier: { word: 'Edge' },
    });
  });
  it('is renewed by a nurse who confirms, not by an aide, and not by a session', () => {
    expect(at(stayOf(first, confirm(10, 'first')), 14).due).toMatchObject({
      state: 'not-due',
      at: hours(22),
    });
    expect(at(stayOf(first, confirm(10, 'first', 'aide')), 14).due.state).toBe('overdue');
    expect(at(stayOf(first, session(10)), 14).due.state).toBe('overdue');
  });
  it('is not renewed by a confirm of a plan that a later check replaced', () => {
    const later = { ...check('walk', 5), id: 'later' };
    expect(at(stayOf(first, later, confirm(10, 'first')), 16).due).toMatchObject({ at: hours(17) });
  });
  it('is 24 h once the tier was the same for 48 h with no trigger', () => {
    const daily = [1, 12, 24, 36, 49.5].map((h) => ({
      ...check('edge', h),
      id: h === 49.5 ? 'last' : `d${h}`,
    }));
    expect(at(stayOf(...daily), 50).due.at).toBe(hours(73.5));
    expect(at(stayOf(...daily, trigger('fall', 30)), 50).due.at).toBe(hours(61.5));
    const walked = check('walk', 49.2);
    expect(at(stayOf(...daily, walked, confirm(49.6, 'last')), 50).due.at).toBe(hours(61.6));
    expect(at(stayOf(...daily.slice(0, -1)), 40).due.at).toBe(hours(48));
  });
  it('counts those 48 h from end to end: the first check, the stay and any trigger on both sides', () => {
    const days = (h: number, last: number) => [check('edge', h), check('edge', 24), check('edge', last)];
    const ms = 1 / 3_600_000;
    expect(at(stayOf(...days(0, 48)), 50).due).toMatchObject({
      at: hours(72),
      because: [{ words: '24 h: the same tier for 48 h and no trigger (common practice, no source)' }],
    });
    expect(at(stayOf(...days(0, 48 - ms)), 50).due.at).toBe(hours(60 - ms));
    expect(at(stayOf(...days(1 + ms, 49)), 50).due.at).toBe(hours(61));
    const given = (h: number) => ({ ...trigger('sedation', h), id: 'f' });
    const answered = { ...check('edge', 49, {}, { answers: ['f'] }), id: 'last' };
    const since = [check('edge', 0.5), check('edge', 24), answered];
    expect(at(stayOf(...since, given(1)), 50).due.at).toBe(hours(73));
    expect(at(stayOf(...since, given(1 + ms)), 50).due.at).toBe(hours(61));
    expect(at(stayOf(...since, given(49)), 50).due.at).toBe(hours(61));
  });
  it('says what the plan stands on: a confirm, a check, or nothing', () => {
    expect(at(stayOf(first, confirm(10, 'first')), 14).trust.because).toEqual([
      { rule: 'trust/current', facts: [expect.any(String)], words: 'Confirmed 25 Oct 03:00' },
    ]);
    expect(at(stayOf(first), 2).trust.because).toEqual([
      { rule: 'trust/current', facts: ['first'], words: 'Checked 24 Oct 19:00' },
    ]);
    expect(at(stayOf(), 2).trust.because).toEqual([
      { rule: 'trust/not-known', facts: ['e00001'], words: 'Not checked on this ward' },
    ]);
  });
});

describe('a trigger', () => {
  it('ends trust at once; the tier stays, the check comes before the next move', () => {
    expect(at(stayOf(first, trigger('new-symptom', 2)), 2.9)).toMatchObject({
      trust: { state: 're-check', openTriggers: [{ kind: 'new-symptom' }] },
      due: { state: 'at-next-move', at: null },
      tier: { word: 'Edge' },
    });
  });
  it('of surgery or sedation leaves the check at the next move, for 12 h', () => {
    const back = stayOf(first, trigger('return-from-surgery', 12));
    expect(at(back, 14)).toMatchObject({ trust: { state: 're-check' }, due: { state: 'at-next-move' } });
    expect(at(back, 24).due).toMatchObject({ state: 'overdue', at: hours(24) });
  });
  it('of another kind does not hide that the check is overdue', () => {
    expect(at(stayOf(first, trigger('fall', 12)), 14).due.state).toBe('overdue');
  });
});

describe('outside the staged check', () => {
  it.each([
    ['comfort', { scope: 'comfort' }],
    ['clinicians-plan', { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } }],
  ])('%s has no tier, no plan, no due time and no goal', (kind, payload) => {
    expect(at(stayOf(first, { type: 'scope-set', at: 2, payload }), 30)).toMatchObject({
      scope: { kind },
      tier: { word: null },
      due: { state: 'none', at: null },
      plan: null,
      checkBeforeMoving: false,
      today: { goal: null },
    });
  });
  it('from someone who may not free a plan counts only when it guards as much', () => {
    const set = (h: number, scope: string, role: Told['role'] = 'nurse'): Told => ({
      type: 'scope-set',
      at: h,
      role,
      payload: scope === 'clinicians-plan' ? { scope, fence: 'traction', plan: { ref: 't' } } : { scope },
    });
    const kind = (...told: Told[]) => at(stayOf(...told), 4).scope.kind;
    const guards = ['comfort', 'staged', 'clinicians-plan'];
    for (const [i, one] of guards.entries()) {
      for (const [j, then] of guards.entries()) {
        expect(kind(set(1, one), set(2, then))).toBe(then);
        expect(kind(set(1, one), set(2, then, 'aide'))).toBe(j >= i ? then : one);
      }
    }
    expect(kind(set(2, 'comfort', 'aide'))).toBe('staged');
  });
});

describe('back to the staged check', () => {
  const walks = { ...check('walk', 1), id: 'w' };
  const scope = (h: number, payload: object): Told => ({ type: 'scope-set', at: h, payload });
  const fenced = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } };
  it('the earlier plan comes back to be looked at, with one more person until then', () => {
    const back = at(stayOf(walks, scope(2, fenced), scope(3, { scope: 'staged' })), 4);
    expect(back.trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ kind: 'asked-to-look-again', at: hours(3) }],
    });
    expect(back.plan!.day.find((p) => p.task === 'bed-chair')!.people).not.toBe('stand-by');
    expect(at(stayOf(walks, scope(2, { scope: 'staged' })), 4).trust.state).toBe('current');
  });
  it('nobody is on their own by a setting made under the clinician’s plan', () => {
    expect(at(stayOf(walks, scope(2, fenced), onOwn(3)), 4).onOwn).toBeNull();
    expect(at(stayOf(walks, scope(2, fenced), onOwn(3), scope(4, { scope: 'staged' })), 5).onOwn).toBeNull();
  });
});

describe('corrections and trust', () => {
  it('one that may have lowered help leaves re-check until the next check or confirm', () => {
    const fell = { ...trigger('fall', 2), id: 'f' };
    const withdrawn = retract(3, 'f');
    expect(at(stayOf(first, fell, withdrawn), 4).trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ kind: 'asked-to-look-again' }],
    });
    expect(at(stayOf(first, fell, withdrawn, confirm(5, 'first')), 6).trust.state).toBe('current');
  });
  it('one by someone who may not lower help shows as a conflict until the next check', () => {
    const heavy: Told = {
      type: 'weight-recorded',
      at: 1,
      id: 'w',
      payload: { weight: { kg: 90, how: 'measured' } },
    };
    const light: Told = { ...heavy, payload: { weight: { kg: 60, how: 'measured' } } };
    const told = [first, heavy, correct(2, 'w', light, 'aide')];
    expect(at(stayOf(...told), 3).trust).toMatchObject({ state: 're-check', conflicts: [{ safer: 'w' }] });
    expect(at(stayOf(...told, check('edge', 4)), 5).trust).toMatchObject({ state: 'current', conflicts: [] });
  });
  it('A5: an order from before the check that arrives after it stands, and the conflict is shown', () => {
    const upgrade = { ...check('walk', 2), id: 'pt', role: 'therapist' as const };
    const late = {
      ...order(1.9, { about: 'weight-bearing', limb: 'left-leg', bears: 'none' }),
      id: 'o',
      recorded: 2.1,
    };
    const view = at(stayOf(first, upgrade, late), 3);
    expect(view.trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'o', kind: 'order-change' }],
    });
    expect(view.trust.conflicts).toContainEqual(expect.objectContaining({ safer: 'o', other: 'pt' }));
    expect(view.orders).toMatchObject([{ event: 'o' }]);
  });
});

describe('on own', () => {
  const walks = { ...check('walk', 1), id: 'first' };
  it('stands as set by a nurse or therapist, not by anyone else', () => {
    expect(at(stayOf(walks, onOwn(2)), 3).onOwn).toMatchObject({ where: ['room'], when: ['day'] });
    expect(at(stayOf(walks, onOwn(2, 'aide')), 3).onOwn).toBeNull();
  });
  it.each([
    ['anyone', { type: 'on-own-removed', at: 3, role: 'aide', payload: {} }],
    ['a trigger', trigger('asked-to-look-again', 3)],
    ['a hold', hold(3, 'walking', 9)],
    ['a stage not met', check('walk', 3, { walk: { outcome: 'not-met' } })],
    ['a session that went wrong', session(3, { events: ['dizzy'] })],
  ] as const)('is taken back by %s, and does not come back by itself', (_who, told) => {
    const after = stayOf(
      walks,
      onOwn(2),
      told as Told,
      check('walk', 5, {}, { depth: 'full-with-pressure' }),
    );
    expect(at(after, 2.5).onOwn).not.toBeNull();
    expect(at(after, 4).onOwn).toBeNull();
    expect(at(after, 6).onOwn).toBeNull();
  });
  it('set at the very instant of a trigger does not count', () => {
    expect(at(stayOf(walks, onOwn(2), trigger('fall', 2)), 3).onOwn).toBeNull();
  });
});

describe('first time up since surgery', () => {
  const back = trigger('return-from-surgery', 2);
  it('is ahead until standing is cleared by a check', () => {
    expect(at(stayOf(first, back), 3).firstTimeUpPending).toBe(true);
    expect(at(stayOf(first, back, check('edge', 4)), 5).firstTimeUpPending).toBe(true);
    const held = check('stand', 4, { stand: { how: 'secured' } });
    expect(at(stayOf(first, back, held), 5).firstTimeUpPending).toBe(false);
  });
  it('done free where it was to be held safe keeps two people and the chair behind until it is repeated', () => {
    const free = check('turn', 4);
    const view = at(stayOf(first, back, free), 5);
    expect(view.firstTimeUpPending).toBe(true);
    expect(view.cautions.map((c) => c.words).join()).toContain('to be repeated, held safe');
    for (const task of ['bed-chair', 'toilet', 'stand', 'walk']) {
      const plan = view.plan!.day.find((p) => p.task === task)!;
      expect(['two', 'three-or-more']).toContain(plan.people);
      expect(plan.cautions).toContain('Chair behind, shoes on, bed low, brakes on');
    }
    expect(at(stayOf(first, back, free, check('turn', 6)), 7).firstTimeUpPending).toBe(false);
    // The first steps come later than the first stand: they are a first time of their own.
    const stoodHeld = check('stand', 4, { stand: { how: 'secured' } });
    expect(at(stayOf(first, back, check('stand', 4), check('turn', 6)), 7).firstTimeUpPending).toBe(true);
    expect(at(stayOf(first, back, stoodHeld, check('turn', 6)), 7).firstTimeUpPending).toBe(false);
  });
  it('is ahead for someone who arrives from theatre', () => {
    const { payload, ...arrival } = begun();
    const fromTheatre = recordOf([
      { ...arrival, payload: { ...(payload as object), from: 'theatre' } },
      first,
    ]);
    expect(at(fromTheatre, 2).firstTimeUpPending).toBe(true);
    expect(at(stayOf(first), 2).firstTimeUpPending).toBe(false);
  });
  it('is over when a qualified person records it as done; an aide cannot lower the help by it', () => {
    const up = session(4, { firstTimeUp: true, activities: ['stand'] });
    expect(at(stayOf(first, back, { ...up, role: 'therapist' }), 5).firstTimeUpPending).toBe(false);
    expect(at(stayOf(first, back, up), 5).firstTimeUpPending).toBe(true);
  });
});
