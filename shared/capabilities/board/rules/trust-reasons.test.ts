/** What trust in a plan names as its reasons: the facts behind each, before arrival and outside the staged check too. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hours,
  order,
  recordOf,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const at = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
const walked = { ...check('walk', 1), id: 'walked' };
const fell = { ...trigger('fall', 4), id: 'fell' };
/** Two orders of one time disagree: the safer stands and both are shown. */
const disputed: readonly Told[] = [
  { ...order(3, { about: 'activity', most: 'chair' }), id: 'chair' },
  { ...order(3, { about: 'activity', most: 'bed' }), id: 'bed' },
];
const scope = (h: number, payload: object): Told => ({ type: 'scope-set', at: h, id: 'scope', payload });
const COMFORT = { scope: 'comfort' };
const FENCED = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } };

describe('given a check from before the person arrived here', () => {
  const early = { ...check('walk', -1), id: 'early' };
  const arrived = (...told: readonly Told[]) =>
    evaluateStay(recordOf([early, { ...begun(), id: 'arrived' }, ...told]), ward, calendar, hours(2)).view;
  it('the arrival asks for a look, although something is known', () => {
    expect(arrived().trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'arrived', kind: 'arrival' }],
      because: [{ rule: 'trust/trigger', facts: ['arrived'] }],
    });
  });
  it('a check since then answers it', () => {
    expect(arrived({ ...check('walk', 1), id: 'here' }).trust).toMatchObject({
      state: 'current',
      openTriggers: [],
      because: [{ rule: 'trust/current', facts: ['here'] }],
    });
  });
});

describe('each reason for a look names its facts', () => {
  it('a trigger its entry, a conflict both entries, a check that ran out the check', () => {
    const { trust } = at(14, walked, ...disputed, fell);
    expect(trust.conflicts).toMatchObject([{ safer: 'bed', other: 'chair' }]);
    expect(trust.because).toEqual([
      { rule: 'trust/trigger', facts: ['bed'], words: 'Order changed, 24 Oct 21:00' },
      { rule: 'trust/trigger', facts: ['chair'], words: 'Order changed, 24 Oct 21:00' },
      { rule: 'trust/trigger', facts: ['fell'], words: 'Fall, 24 Oct 22:00' },
      { rule: 'trust/conflict', facts: ['bed', 'chair'], words: trust.conflicts[0]!.words },
      { rule: 'trust/ran-out', facts: ['walked'], words: 'Last check 24 Oct 19:00: validity ran out' },
    ]);
  });
});

describe('outside the staged check', () => {
  it.each([
    ['a comfort plan', COMFORT, 'Comfort plan'],
    ["a clinician's plan", FENCED, "Clinician's plan only"],
  ])('%s with nothing against it is current, on the entry that set it', (_what, payload, words) => {
    const { trust, due } = at(30, walked, scope(3, payload));
    expect(trust).toEqual({
      state: 'current',
      openTriggers: [],
      conflicts: [],
      because: [{ rule: 'trust/scope', facts: ['scope'], words }],
    });
    expect(due).toEqual({
      state: 'none',
      at: null,
      because: [{ rule: 'due/scope', facts: ['scope'], words: `${words}: no staged check is due` }],
    });
  });
  it('an arrival that no check answered asks for none there', () => {
    expect(at(5, scope(3, COMFORT)).trust).toMatchObject({ state: 'current', openTriggers: [] });
  });
  it('a fall asks for a look and is named', () => {
    expect(at(5, walked, scope(3, FENCED), fell).trust).toMatchObject({
      state: 're-check',
      openTriggers: [{ event: 'fell', kind: 'fall', at: hours(4), words: 'Fall' }],
      because: [
        { rule: 'trust/scope', facts: ['scope'] },
        { rule: 'trust/trigger', facts: ['fell'], words: 'Fall' },
      ],
    });
  });
  it('two entries that disagree ask for a look by themselves', () => {
    // A weight read by an aide leaves "unknown" standing: a conflict, and no trigger.
    const weighed: Told = {
      type: 'weight-recorded',
      at: 2,
      role: 'aide',
      id: 'weighed',
      payload: { weight: { kg: 70, how: 'measured' } },
    };
    const { trust } = at(5, walked, weighed, scope(3, FENCED));
    const [conflict] = trust.conflicts;
    expect(trust).toMatchObject({
      state: 're-check',
      openTriggers: [],
      conflicts: [{ other: 'weighed' }],
      because: [
        { rule: 'trust/scope', facts: ['scope'] },
        { rule: 'trust/conflict', facts: [conflict!.safer, 'weighed'], words: conflict!.words },
      ],
    });
  });
});
