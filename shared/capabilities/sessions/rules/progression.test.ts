/** Steps of the goal: design, progression row (2 easy sessions at goal; 2 misses or an event; never automatic). Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  order,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';

/** The whole ward day from START + 14 h; looked at in its evening. */
const view = (...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(25)).view;
const proposal = (...told: readonly Told[]) => view(...told).proposal;
const step = (...told: readonly Told[]) => {
  const now = proposal(...told);
  return now && [now.step, now.goal];
};
const set = (goal: object, at = 14.1, more: Partial<Told> = {}): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity: 'chair', timesUp: 3, ...goal } },
  ...more,
});
let count = 0;
const did = (at: number, activity: string, extra: object = {}): Told => ({
  ...session(at, { activities: [activity], effort: 3, ...extra }),
  id: `s${(count += 1)}`,
});
const twice = (activity: string, extra: object = {}) => [did(15, activity, extra), did(17, activity, extra)];
const usual = (moves: string): Told => ({
  type: 'usual-way-recorded',
  at: 0.5,
  payload: { usual: { moves, transfers: 'alone', stairs: 'no' } },
});
const walks = check('walk', 14.05);
const chair = set({});

describe('a step up is proposed', () => {
  it('PROGRESS-1 after two easy sessions at goal with nothing wrong, with the sessions that carry it', () => {
    const [one, two] = twice('chair') as [Told, Told];
    expect(proposal(walks, chair, one)).toBeNull();
    const now = proposal(walks, chair, one, two)!;
    expect(now).toMatchObject({
      step: 'up',
      goal: { activity: 'walk', timesUp: 3 },
      sessions: [one.id, two.id],
    });
    expect(now.because).toEqual([
      {
        rule: 'progression/up',
        facts: [one.id, two.id],
        words: '2 sessions at goal in a row, effort 4 of 10 or less, nothing went wrong',
      },
      { rule: 'progression/step', facts: [one.id, two.id], words: 'Next: walk, 3 times a day' },
      {
        rule: 'progression/to-accept',
        facts: [one.id, two.id],
        words: 'A proposal only: a nurse or therapist accepts it or leaves it',
      },
    ]);
  });
  it('on the last of several, and on sessions of anyone who was there', () => {
    const three = [...twice('chair'), did(19, 'chair')];
    expect(proposal(walks, chair, ...three)?.sessions).toEqual([three[1]!.id, three[2]!.id]);
    const nurse = twice('chair').map((one) => ({ ...one, role: 'nurse' as const }));
    expect(proposal(walks, chair, ...nurse)?.step).toBe('up');
  });
  it('for effort up to the limit, not beyond it, and never for effort that nobody wrote down', () => {
    expect(proposal(walks, chair, ...twice('chair', { effort: 4 }))?.step).toBe('up');
    expect(proposal(walks, chair, ...twice('chair', { effort: 5 }))).toBeNull();
    expect(proposal(walks, chair, ...twice('chair', { effort: undefined }))).toBeNull();
    const gap = did(16, 'chair', { effort: undefined });
    expect(proposal(walks, chair, ...twice('chair'), gap)?.step).toBe('up');
    expect(proposal(walks, chair, ...twice('chair'), did(16, 'chair', { effort: 5 }))).toBeNull();
  });
  it('only by sessions that reach the activity of the goal', () => {
    expect(proposal(walks, chair, ...twice('stand'))).toBeNull();
    expect(proposal(walks, chair, ...twice('walk'))?.step).toBe('up');
    const toilet = twice('toilet', { occasion: 'toilet' });
    expect(proposal(walks, chair, ...toilet)?.step).toBe('up');
    const lifted = twice('toilet', { help: { people: 2, aid: 'sling-lift' } });
    expect(proposal(walks, chair, ...lifted)).toBeNull();
    expect(
      proposal(walks, chair, ...twice('chair', { help: { people: 3, aid: 'bariatric-lift' } })),
    ).toBeNull();
    expect(proposal(walks, chair, ...twice('chair', { help: { people: 1, aid: 'belt' } }))?.step).toBe('up');
  });
  it('only by sessions with their share of the distance and of the minutes, as written down', () => {
    const far = set({ activity: 'walk', metres: 90 });
    expect(proposal(walks, far, ...twice('walk', { metres: 30 }))?.step).toBe('up');
    expect(proposal(walks, far, ...twice('walk', { metres: 29 }))).toBeNull();
    expect(proposal(walks, far, ...twice('walk'))).toBeNull();
    const long = set({ minutesOutOfBed: 90 });
    expect(proposal(walks, long, ...twice('chair', { minutesOutOfBed: 30 }))?.step).toBe('up');
    expect(proposal(walks, long, ...twice('chair', { minutesOutOfBed: 29 }))).toBeNull();
    expect(proposal(walks, long, ...twice('chair'))).toBeNull();
    const noTimes = set({ activity: 'walk', timesUp: 0, metres: 30 });
    expect(proposal(walks, noTimes, ...twice('walk', { metres: 30 }))?.step).toBe('up');
    expect(proposal(walks, noTimes, ...twice('walk', { metres: 29 }))).toBeNull();
  });
  it('in a row: a planned walk that was too short breaks it, a short way to the toilet does not', () => {
    const far = set({ activity: 'walk', metres: 90 });
    const [one, two] = twice('walk', { metres: 30 }) as [Told, Told];
    expect(proposal(walks, far, one, did(16, 'walk', { metres: 8 }), two)).toBeNull();
    expect(proposal(walks, far, one, did(16, 'walk', { metres: 8, occasion: 'toilet' }), two)?.step).toBe(
      'up',
    );
    expect(proposal(walks, far, one, did(16, 'chair'), two)?.step).toBe('up');
  });
  it("in a row: a refusal or a session half done breaks it, what is not the person's does not", () => {
    const [one, two] = twice('chair') as [Told, Told];
    expect(proposal(walks, chair, one, notDone(16, 'said-no'), two)).toBeNull();
    expect(proposal(walks, chair, one, did(16, 'chair', { outcome: 'part' }), two)).toBeNull();
    for (const group of [
      'not-here',
      'no-people',
      'no-kit',
      'bad-moment',
      'infection-steps',
      'clinically-held',
    ]) {
      expect(proposal(walks, chair, one, notDone(16, group), two)?.step).toBe('up');
    }
    const broken = did(16, 'chair', { events: ['equipment-fault'] });
    expect(proposal(walks, chair, one, broken)).toBeNull();
    expect(proposal(walks, chair, one, broken, two)?.sessions).toEqual([one.id, two.id]);
  });
  it('by when the sessions began, whatever order they were told in', () => {
    const [one, two] = twice('chair') as [Told, Told];
    const startedBefore = { ...notDone(18, 'said-no'), payload: notDone(16, 'said-no').payload };
    expect(proposal(walks, chair, one, startedBefore, two)).toBeNull();
  });
  it('PROGRESS-2 counts from when the goal was set: whatever was set, the count begins again', () => {
    const again = set({}, 18);
    expect(proposal(walks, chair, ...twice('chair'), again)).toBeNull();
    expect(proposal(walks, chair, ...twice('chair'), again, did(19, 'chair'))).toBeNull();
    expect(proposal(walks, chair, ...twice('chair'), again, did(19, 'chair'), did(20, 'chair'))?.step).toBe(
      'up',
    );
    expect(proposal(walks, set({}, 15), ...twice('chair'))).toBeNull();
    const byAide = set({}, 18, { role: 'aide' });
    expect(proposal(walks, chair, ...twice('chair'), byAide)?.step).toBe('up');
  });
  it('of a goal that nobody set counts from the check it stands on', () => {
    const far = [did(15, 'walk', { metres: 40 }), did(17, 'walk', { metres: 40 })];
    expect(step(walks, ...far)).toEqual(['up', { activity: 'walk', timesUp: 3, metres: 150 }]);
    expect(step(walks, ...far, check('walk', 18))).toBeNull();
    expect(step(check('walk', 15), ...far)).toBeNull();
  });
});

describe('PROGRESS-3 a step up is never above what is cleared, ordered and free of holds', () => {
  it('goes to the next activity only when its stage is cleared; else to one time more', () => {
    expect(step(check('turn', 14.05), chair, ...twice('chair'))).toEqual([
      'up',
      { activity: 'chair', timesUp: 4 },
    ]);
    expect(step(walks, hold(2, 'walking', 9), chair, ...twice('chair'))).toEqual([
      'up',
      { activity: 'chair', timesUp: 4 },
    ]);
    expect(step(usual('wheelchair'), walks, chair, ...twice('chair'))?.[1]).toMatchObject({
      activity: 'chair',
      timesUp: 4,
    });
    expect(step(usual('frame'), walks, chair, ...twice('chair'))?.[1]).toMatchObject({ activity: 'walk' });
  });
  it('goes one activity at a time', () => {
    expect(step(walks, set({ activity: 'back-raised' }), ...twice('edge-sit'))?.[1]).toMatchObject({
      activity: 'edge-sit',
    });
    expect(step(walks, set({ activity: 'lifted-to-chair' }), ...twice('lifted-to-chair'))?.[1]).toMatchObject(
      {
        activity: 'edge-sit',
      },
    );
    expect(step(walks, set({ activity: 'edge-sit' }), ...twice('edge-sit'))?.[1]).toMatchObject({
      activity: 'stand',
    });
    expect(step(walks, set({ activity: 'stand' }), ...twice('stand'))?.[1]).toMatchObject({
      activity: 'chair',
    });
    expect(step(walks, set({ activity: 'march' }), ...twice('march'))?.[1]).toMatchObject({
      activity: 'walk',
    });
  });
  it("never proposes the stairs, and ends at the ward's most times a day", () => {
    const stairs = set({ activity: 'stairs', timesUp: 3 });
    expect(step(walks, stairs, ...twice('stairs'))).toEqual(['up', { activity: 'stairs', timesUp: 4 }]);
    const most = set({ activity: 'walk', timesUp: 4 });
    expect(step(walks, most, ...twice('walk'))).toBeNull();
    expect(step(walks, set({ activity: 'walk', timesUp: 3 }), ...twice('walk'))?.[1]).toEqual({
      activity: 'walk',
      timesUp: 4,
    });
  });
  it('goes a quarter further in distance, at most to the ceiling, then to one time more', () => {
    const grow = (metres: number) =>
      step(walks, set({ activity: 'walk', metres }), ...twice('walk', { metres: 200 }))?.[1];
    expect(grow(90)).toEqual({ activity: 'walk', timesUp: 3, metres: 113 });
    expect(grow(1)).toEqual({ activity: 'walk', timesUp: 3, metres: 2 });
    expect(grow(400)).toEqual({ activity: 'walk', timesUp: 3, metres: 500 });
    expect(grow(499)).toEqual({ activity: 'walk', timesUp: 3, metres: 500 });
    expect(grow(500)).toEqual({ activity: 'walk', timesUp: 4, metres: 500 });
    const told = proposal(walks, set({ activity: 'walk', metres: 90 }), ...twice('walk', { metres: 30 }));
    expect(told?.because[1]?.words).toBe('Next: more distance, 90 m to 113 m a day (at most 500 m)');
    const times = proposal(walks, set({ activity: 'walk' }), ...twice('walk'));
    expect(times?.because[1]?.words).toBe('Next: one time more, 4 times a day');
  });
  it('begins to walk with the distance that was done safely, and keeps the minutes', () => {
    const before = did(2, 'walk', { metres: 25 });
    const told = proposal(
      walks,
      before,
      set({ minutesOutOfBed: 60 }),
      ...twice('chair', { minutesOutOfBed: 20 }),
    );
    expect(told?.goal).toEqual({ activity: 'walk', timesUp: 3, minutesOutOfBed: 60, metres: 75 });
    expect(told?.because[1]?.facts).toEqual([before.id]);
    const long = did(2, 'walk', { metres: 300 });
    expect(proposal(walks, long, chair, ...twice('chair'))?.goal.metres).toBe(500);
  });
  it('is not proposed while the goal that was set may not be asked', () => {
    const held = [walks, set({ activity: 'walk' }, 1.2), hold(2, 'walking', 9)];
    expect(view(...held, ...twice('chair')).today.goal?.activity).toBe('chair');
    expect(proposal(...held, ...twice('chair'))).toBeNull();
  });
  it('is not proposed while a check is waiting, or before the first one', () => {
    expect(proposal(walks, chair, ...twice('chair'), trigger('asked-to-look-again', 20))).toBeNull();
    expect(proposal(chair, ...twice('chair'))).toBeNull();
  });
  it("is not proposed under a comfort or a clinician's plan", () => {
    const scope = (of: object): Told => ({ type: 'scope-set', at: 20, payload: of });
    expect(proposal(walks, chair, ...twice('chair'), scope({ scope: 'comfort' }))).toBeNull();
    const fence = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } };
    expect(proposal(walks, chair, ...twice('chair'), scope(fence))).toBeNull();
  });
  it("is not cut down on the day of arrival: a step is of a whole day's goal", () => {
    const told = [check('turn', 0.2), set({}, 0.3), did(0.5, 'chair'), did(1, 'chair')];
    const evening = evaluateStay(stayOf(...told), ward, calendar, hours(2)).view;
    expect(evening.today.goal).toEqual({ activity: 'chair', timesUp: 1 });
    expect(evening.proposal?.goal).toEqual({ activity: 'chair', timesUp: 4 });
  });
});

describe('a step back and a review are proposed', () => {
  const walkGoal = set({ activity: 'walk' });
  it("after two misses in a row that are the person's", () => {
    const [one, two] = [notDone(15, 'said-no'), did(17, 'walk', { outcome: 'part' })];
    expect(proposal(walks, walkGoal, one)).toBeNull();
    expect(proposal(walks, walkGoal, two)).toBeNull();
    const now = proposal(walks, walkGoal, { ...one, id: 'no' }, two)!;
    expect(now).toMatchObject({
      step: 'back',
      goal: { activity: 'chair', timesUp: 3 },
      sessions: ['no', two.id],
    });
    expect(now.because.map((b) => b.words).slice(0, 2)).toEqual([
      '2 times in a row the person said no or did only part',
      'Step back and review: chair, 3 times a day',
    ]);
    const third = proposal(walks, walkGoal, one, two, { ...notDone(19, 'said-no'), id: 'last' });
    expect(third?.sessions).toEqual([two.id, 'last']);
  });
  it('not for what the ward could not do', () => {
    for (const group of [
      'not-here',
      'no-people',
      'no-kit',
      'bad-moment',
      'infection-steps',
      'clinically-held',
    ]) {
      expect(proposal(walks, walkGoal, notDone(15, group), notDone(17, group))).toBeNull();
      expect(
        proposal(walks, walkGoal, notDone(15, 'said-no'), notDone(16, group), notDone(17, 'said-no'))?.step,
      ).toBe('back');
    }
    const broken = { outcome: 'part', events: ['equipment-fault'] };
    expect(proposal(walks, walkGoal, ...twice('walk', broken))).toBeNull();
  });
  it("not when the goal's activity was done between, however hard", () => {
    const no = (at: number) => notDone(at, 'said-no');
    for (const extra of [{}, { effort: 9 }, { effort: undefined }]) {
      expect(proposal(walks, walkGoal, no(15), did(16, 'walk', extra), no(17))).toBeNull();
    }
    expect(proposal(walks, walkGoal, no(15), did(16, 'chair'), no(17))?.step).toBe('back');
  });
  it.each(['dizzy', 'near-fall', 'lowered-to-floor', 'line-pulled', 'low-oxygen', 'pain', 'distress'])(
    'after one session with an event: %s',
    (kind) => {
      const one = did(15, 'walk', { events: [kind] });
      const now = proposal(walks, walkGoal, one)!;
      expect(now).toMatchObject({ step: 'back', sessions: [one.id] });
      expect(now.because[0]).toEqual({
        rule: 'progression/back',
        facts: [one.id],
        words: `Something went wrong in a session: ${kind.replaceAll('-', ' ')}`,
      });
    },
  );
  it('after a session that was stopped, with or without a reason', () => {
    expect(proposal(walks, walkGoal, did(15, 'walk', { outcome: 'stopped' }))?.because[0]?.words).toBe(
      'A session was stopped: no reason written down',
    );
    const pain = did(15, 'walk', { outcome: 'stopped', events: ['pain', 'dizzy'] });
    expect(proposal(walks, walkGoal, pain)?.because[0]?.words).toBe('A session was stopped: pain, dizzy');
    expect(
      proposal(walks, walkGoal, did(15, 'walk', { outcome: 'done', events: ['equipment-fault'] })),
    ).toBeNull();
  });
  it('goes before a step up, until a staged check has looked or the goal is set again', () => {
    const hurt = did(14.5, 'walk', { events: ['pain'] });
    const easy = twice('walk');
    expect(proposal(walks, walkGoal, hurt, ...easy)).toMatchObject({ step: 'back', sessions: [hurt.id] });
    const looked = check('walk', 18);
    expect(proposal(walks, walkGoal, hurt, looked)).toBeNull();
    expect(proposal(walks, walkGoal, hurt, ...easy, looked)?.step).toBe('up');
    expect(proposal(walks, walkGoal, hurt, ...easy, { ...looked, role: 'aide' })?.step).toBe('back');
    expect(proposal(walks, walkGoal, hurt, set({ activity: 'walk' }, 18))).toBeNull();
    expect(
      proposal(walks, walkGoal, ...easy, did(18, 'walk', { events: ['pain'] }), check('walk', 19)),
    ).toBeNull();
  });
  it('after an event to a less demanding activity; after misses to less of the same first', () => {
    const far = set({ activity: 'walk', timesUp: 3, metres: 100 });
    const hurt = did(15, 'walk', { metres: 30, events: ['dizzy'] });
    expect(step(walks, far, check('walk', 14.5), hurt)?.[1]).toMatchObject({ activity: 'chair' });
    const noes = [notDone(15, 'said-no'), notDone(17, 'said-no')];
    expect(step(walks, far, ...noes)).toEqual(['back', { activity: 'walk', timesUp: 3, metres: 80 }]);
    expect(proposal(walks, far, ...noes)?.because[1]?.words).toBe(
      'Step back and review: less distance, 100 m to 80 m a day',
    );
    const short = (metres: number) => step(walks, set({ activity: 'walk', metres }), ...noes)?.[1];
    expect(short(3.75)).toEqual({ activity: 'walk', timesUp: 3, metres: 3 });
    expect(short(3.7)).toEqual({ activity: 'chair', timesUp: 3 });
    expect(step(walks, set({ activity: 'walk', timesUp: 0, metres: 1.2 }), ...noes)?.[1]).toEqual({
      activity: 'chair',
      timesUp: 0,
    });
  });
  it('takes back the times beyond the usual number before the activity', () => {
    const noes = [notDone(15, 'said-no'), notDone(17, 'said-no')];
    expect(step(walks, set({ activity: 'walk', timesUp: 4 }), ...noes)?.[1]).toEqual({
      activity: 'walk',
      timesUp: 3,
    });
    expect(proposal(walks, set({ activity: 'walk', timesUp: 4 }), ...noes)?.because[1]?.words).toBe(
      'Step back and review: one time less, 3 a day',
    );
    expect(step(walks, set({ minutesOutOfBed: 60 }), ...noes)?.[1]).toEqual({
      activity: 'stand',
      timesUp: 3,
      minutesOutOfBed: 60,
    });
    expect(step(walks, set({ activity: 'edge-sit', minutesOutOfBed: 60 }), ...noes)?.[1]).toEqual({
      activity: 'back-raised',
      timesUp: 3,
    });
  });
  it('ends at one time in bed: then there is nothing less to propose', () => {
    const noes = [notDone(15, 'said-no'), notDone(17, 'said-no')];
    const lowest = (timesUp: number) => step(walks, set({ activity: 'back-raised', timesUp }), ...noes);
    expect(lowest(2)?.[1]).toEqual({ activity: 'back-raised', timesUp: 1 });
    expect(lowest(1)).toBeNull();
    const hurt = did(15, 'back-raised', { events: ['pain'] });
    expect(step(walks, set({ activity: 'back-raised', timesUp: 2 }), hurt)?.[1]).toMatchObject({
      timesUp: 1,
    });
  });
  it('never to what a hold or an order stops', () => {
    const noes = [notDone(15, 'said-no'), notDone(17, 'said-no')];
    const ordered = order(0.5, { about: 'activity', most: 'chair' });
    // That order leaves the chair but not standing as an exercise.
    expect(step(ordered, check('turn', 14.05), chair, ...noes)?.[1]).toMatchObject({ activity: 'edge-sit' });
  });
});

it("the limits are the ward's own", () => {
  const rules = structuredClone(DEFAULT_RULES);
  rules.activity.stepUpSessions.value = 3;
  rules.activity.stepUpEffort.value = 6;
  rules.activity.stepBackMisses.value = 1;
  const look = (...told: readonly Told[]) =>
    evaluateStay(stayOf(...told), { ...ward, rules }, calendar, hours(25)).view.proposal;
  const hard = { effort: 6 };
  expect(look(walks, chair, ...twice('chair', hard))).toBeNull();
  const three = look(walks, chair, ...twice('chair', hard), did(19, 'chair', hard));
  expect(three?.sessions).toHaveLength(3);
  expect(three?.because[0]?.words).toBe(
    '3 sessions at goal in a row, effort 6 of 10 or less, nothing went wrong',
  );
  expect(look(walks, chair, notDone(15, 'said-no'))?.step).toBe('back');
});
