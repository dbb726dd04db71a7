/** What the huddle is told of how far the board may be believed, and of the tier. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, retract, trigger } from '../../board/rules/history.testkit.ts';
import type { TierView } from '../../board/moving-view.ts';
import {
  between,
  boardOf,
  changedFor,
  HUDDLE,
  LATER,
  lines,
  ofKind,
  tell,
  wardOf,
} from './changes.testkit.ts';

const first = { ...check('edge', 1), id: 'e-first' };

describe('the only check of a person, taken back', () => {
  const changes = () => changedFor([first], [retract(3, 'e-first')]);
  it('leaves their plan not known any more', () => {
    expect(lines(ofKind(changes(), 'trust-lost'))).toEqual([
      '1 trust-lost: Not known any more: Not checked on this ward',
    ]);
  });
  it('is no check: "Not known" is not said as a tier that somebody found', () => {
    const kinds = changes().map(({ kind }) => kind);
    expect(kinds).toContain('trust-lost');
    expect(kinds.filter((kind) => ['checked', 'tier-up', 'tier-down'].includes(kind))).toEqual([]);
  });
});

describe('a plan that needs a check again', () => {
  it('is not said to be not known', () => {
    const lost = ofKind(changedFor([first], [trigger('fall', 3)]), 'trust-lost');
    expect(lines(lost)).toEqual(['1 trust-lost: Check again: Fall, 24 Oct 21:00']);
  });
});

describe('a person checked again after the ward changed its staged check', () => {
  /** What is said, beside the help, where the check before was done under this document. */
  function checkedUnder(protocol: NonNullable<TierView['protocol']>, reached: 'walk' | 'edge' = 'walk') {
    const log = wardOf({ 1: [check('edge', 1)] });
    const before = boardOf(log, HUDDLE);
    tell(log, 1, [check(reached, 3)]);
    const now = boardOf(log, LATER);
    const beds = before.beds.map((bed) => ({
      ...bed,
      stay: bed.stay && { ...bed.stay, tier: { ...bed.stay.tier, protocol } },
    }));
    const said = between({ ...before, beds }, now).map(({ kind, words }) => `${kind}: ${words}`);
    return said.filter((one) => !one.startsWith('less-help'));
  }
  it('is said to be checked, not to have gone up: two documents are not compared', () => {
    expect(checkedUnder({ id: 'the-one-before', version: 1 })).toEqual(['checked: Checked: Walk']);
  });
  it('so also under a newer version of the same document', () => {
    expect(checkedUnder({ id: 'footboard-default', version: 2 })).toEqual(['checked: Checked: Walk']);
  });
  it('so also where the new document has them at the same place on the bar', () => {
    expect(checkedUnder({ id: 'the-one-before', version: 1 }, 'edge')).toEqual(['checked: Checked: Edge']);
    expect(checkedUnder({ id: 'footboard-default', version: 1 }, 'edge')).toEqual([]);
  });
  it('goes up under the same one', () => {
    expect(checkedUnder({ id: 'footboard-default', version: 1 })).toEqual([
      'tier-up: Walk now cleared, was Edge',
    ]);
  });
});
