/**
 * Days below the usual way of moving: when they are told, which day something counts on, and of whom.
 * Design and the users' research, 4b and 4c. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import { begun, calendar, check, hours, notDone, recordOf, ward, type Told } from './history.testkit.ts';
import { did, fails, kindsAt, look, rulesWith, sign, signWithoutArrival, usual } from './signs.testkit.ts';

/** Whole ward days begin 14, 38, 62, 86 and 110 h after the arrival. */
const below = (h: number, ...told: readonly Told[]) => sign('below-baseline', h, told);
const three = [did(20, 'stand'), did(44, 'edge-sit'), did(68, 'chair')];

describe('below the usual way of moving', () => {
  it("SIGN-3 on three whole ward days in a row is told, with the usual way and each day's best", () => {
    expect(below(85.9, usual('walks'), ...three)).toBeUndefined();
    expect(look(85.9, [usual('walks'), ...three]).nextChange).toBeLessThanOrEqual(hours(86));
    const now = below(86, usual('walks'), ...three)!;
    expect(now.words).toBe(
      'Below the usual way of moving (walks, transfers alone) on 3 ward days in a row; most seen: chair',
    );
    expect(now.because).toEqual([
      {
        rule: 'signs/below-baseline',
        facts: ['usual', 's-20', 's-44', 's-68'],
        words: 'The most that was seen or done on each of those days, against the usual way of moving',
      },
    ]);
  });
  it('counts the best of each day, of sessions and of checks', () => {
    const more = [did(21, 'bed-exercise'), { ...check('stand', 45), id: 'checked' }];
    expect(below(86, usual('walks'), ...three, ...more)?.because[0]?.facts).toEqual([
      'usual',
      's-20',
      'checked',
      's-68',
    ]);
    expect(below(86, usual('walks'), ...three, check('walk', 45))).toBeUndefined();
    expect(below(86, usual('walks'), ...three, { ...check('walk', 45), role: 'aide' })).toBeDefined();
    expect(below(86, usual('walks'), ...three, did(45, 'walk', { outcome: 'part' }))).toBeUndefined();
    expect(below(86, usual('walks'), ...three, did(45, 'stairs'))).toBeUndefined();
  });
  it.each([
    ['upright', 'back raised'],
    ['edge', 'edge sit'],
    ['stand', 'stand'],
    ['turn', 'chair'],
  ] as const)('a check that cleared %s shows: %s', (stage, words) => {
    const told = [20, 44, 68].map((at) => check(stage, at));
    expect(below(86, usual('walks'), ...told)?.words).toMatch(new RegExp(`most seen: ${words}$`));
  });
  it('a check that cleared nothing of it was seen too: in bed', () => {
    const told = [20, 44, 68].map((at) => fails('clear', at));
    expect(below(86, usual('walks'), ...told)?.words).toMatch(/most seen: bed exercise$/);
  });
  it('a day with nothing seen counts nothing and breaks nothing, and is said', () => {
    const gap = [did(20, 'stand'), notDone(44, 'said-no'), did(68, 'chair'), did(92, 'stand')];
    expect(below(109.9, usual('walks'), ...gap)).toBeUndefined();
    expect(below(110, usual('walks'), ...gap)?.words).toBe(
      'Below the usual way of moving (walks, transfers alone) on 3 ward days in a row ' +
        '(1 day not recorded, not counted); most seen: chair',
    );
    const two = below(134, usual('walks'), did(20, 'stand'), did(92, 'chair'), did(116, 'stand'));
    expect(two?.words).toMatch(/\(2 days not recorded, not counted\)/);
    const latest = below(110, usual('walks'), ...three);
    expect(latest?.words).toMatch(/\(1 day not recorded, not counted\)/);
  });
  it('does not count days after the last one below, before which nothing was seen', () => {
    const late = [did(44, 'stand'), did(68, 'chair'), did(92, 'stand')];
    expect(below(110, usual('walks'), ...late)?.words).not.toMatch(/not recorded/);
  });
  it('a day that reached it breaks the row; today too, but today below does not count', () => {
    const told = [...three, did(92, 'walk')];
    expect(below(111, usual('walks'), ...told)).toBeUndefined();
    expect(below(93, usual('walks'), ...told)).toBeUndefined();
    expect(below(91, usual('walks'), ...three)).toBeDefined();
    expect(below(85, usual('walks'), ...three, did(84, 'stand'))).toBeUndefined();
  });
  it('leaves out the day of arrival, which is not whole', () => {
    const early = [did(2, 'stand'), did(20, 'stand'), did(44, 'stand')];
    expect(below(62, usual('walks'), ...early)).toBeUndefined();
    const fromSeven = [{ ...begun(), at: 14 }, { ...usual('walks'), at: 14.5 }, ...three];
    const kinds = (all: readonly Told[]) =>
      evaluateStay(recordOf(all), ward, calendar, hours(86)).view.signs.map((s) => s.kind);
    expect(kinds(fromSeven)).toContain('below-baseline');
    expect(kinds([{ ...begun(), at: 14.1 }, ...fromSeven.slice(1)])).not.toContain('below-baseline');
  });
  it.each([
    ['frame', 'alone', 'chair', 'walk'],
    ['wheelchair', 'alone', 'stand', 'chair'],
    ['wheelchair', 'helped', 'edge-sit', 'toilet'],
    ['wheelchair', 'lifted', 'back-raised', 'lifted-to-chair'],
    ['walks', 'lifted', 'back-raised', 'lifted-to-chair'],
  ])('usual way %s, transfers %s: %s is below it, %s is not', (moves, transfers, less, as) => {
    const days = (activity: string, extra: object = {}) => [20, 44, 68].map((at) => did(at, activity, extra));
    expect(below(86, usual(moves, transfers), ...days(less))).toBeDefined();
    expect(below(86, usual(moves, transfers), ...days(as))).toBeUndefined();
  });
  it("being lifted is below a transfer on one's own feet", () => {
    const help = { people: 2, aid: 'sling-lift' };
    const lifted = [20, 44, 68].map((at) => did(at, 'toilet', { help }));
    expect(below(86, usual('wheelchair'), ...lifted)?.words).toMatch(/most seen: lifted to chair$/);
    expect(below(86, usual('wheelchair', 'lifted'), ...lifted)).toBeUndefined();
  });
  it('is not told of someone who lived in bed, or whose usual way is not known', () => {
    const days = [20, 44, 68].map((at) => did(at, 'bed-exercise'));
    expect(below(86, usual('bed'), ...days)).toBeUndefined();
    expect(below(86, ...days)).toBeUndefined();
  });
  it("goes by the ward's own number of days", () => {
    const own = rulesWith((rules) => {
      rules.signs.daysBelowBaseline.value = 2;
    });
    const told = [usual('walks'), did(20, 'stand'), did(44, 'stand')];
    expect(kindsAt(62, told, own)).toEqual(['below-baseline']);
  });
});

describe('a ward day', () => {
  it('holds what was done at its very first instant', () => {
    const told = below(86, usual('walks'), did(14, 'stand'), did(38, 'edge-sit'), did(62, 'chair'));
    expect(told?.because[0]!.facts).toEqual(['usual', 's-14', 's-38', 's-62']);
  });
  it('that nothing was recorded on stays a gap, whatever less was done since', () => {
    const told = below(115, usual('walks'), ...three, did(112, 'stand'));
    expect(told?.words).toMatch(/ on 3 ward days in a row \(1 day not recorded, not counted\); /);
  });
});

describe('is told', () => {
  it.each([
    ['frame', 'chair', 'walks with a frame'],
    ['wheelchair', 'stand', 'wheelchair'],
  ])('against the usual way by its words: %s', (moves, less, words) => {
    const days = [20, 44, 68].map((at) => did(at, less));
    expect(below(86, usual(moves), ...days)?.words).toContain(`(${words}, transfers alone)`);
  });
  it("under the staged check alone: a clinician's plan has its own measure", () => {
    const fenced: Told = {
      type: 'scope-set',
      at: 80,
      payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } },
    };
    expect(below(86, usual('walks'), ...three)).toBeDefined();
    expect(below(86, usual('walks'), ...three, fenced)).toBeUndefined();
  });
  it('of nobody whose arrival was not entered: which days were whole is not known', () => {
    expect(signWithoutArrival('below-baseline', 86, [usual('walks'), ...three])).toBeUndefined();
  });
});
