/** How far a check went, and how far orders and holds let one go. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import { protocolLookup, STAGE_MEANINGS, type StageMeaning } from '../../assessments/rules/protocol.ts';
import { check, hold, hours, order, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import type { Fact } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { howFar, isReadable, mayGoTo } from './reach.ts';

const factsOf = (...told: readonly Told[]) => effectiveFacts(stayOf(...told)).facts;

describe('how far a check may go', () => {
  const may = (...told: readonly Told[]): StageMeaning =>
    STAGE_MEANINGS[mayGoTo(factsOf(...told), hours(3), DEFAULT_RULES)]!;
  const activity = (most: string, at = 1) => order(at, { about: 'activity', most });
  const bears = (limb: string, says: string, at = 1) =>
    order(at, { about: 'weight-bearing', limb, bears: says });
  const other = (at: number, scope: string): Told => {
    const { payload, ...rest } = hold(at, scope, 30);
    return { ...rest, payload: { ...(payload as object), hold: 'hold-2' } };
  };

  it('is to the walk, where no order and no hold says otherwise', () => {
    expect(may()).toBe('walk');
  });
  it.each([
    ['bed', 'upright'],
    ['edge-of-bed', 'edge'],
    ['chair', 'edge'],
    ['stand', 'turn'],
    ['walk', 'walk'],
    ['no-limit', 'walk'],
  ])('given an order of activity up to %s, it is to %s', (most, last) => {
    expect(may(activity(most))).toBe(last);
  });
  it.each([
    ['walking', 'turn'],
    ['standing', 'edge'],
    ['out-of-bed', 'upright'],
    ['raising-the-back', 'clear'],
    ['all-including-turning', 'clear'],
  ])('given a hold on %s, it is to %s, and to the walk again once that has ended', (scope, last) => {
    const placed = { ...hold(1, scope, 30), id: 'p' };
    const ended: Told = { type: 'hold-ended', at: 2, payload: { hold: 'hold-1', placedBy: 'p' } };
    expect(may(placed)).toBe(last);
    expect(may(placed, ended)).toBe('walk');
  });
  it('given one leg that may bear nothing, it is to standing on the other; given two, to the edge', () => {
    expect(may(bears('left-leg', 'none'))).toBe('stand');
    expect(may(bears('right-leg', 'none'))).toBe('stand');
    expect(may(bears('left-leg', 'none'), bears('right-leg', 'none'))).toBe('edge');
    expect(may(bears('left-leg', 'none'), bears('left-leg', 'limited', 2))).toBe('walk');
  });
  it('given a leg that may bear something, or an arm that may bear nothing, it is to the walk', () => {
    expect(may(bears('left-leg', 'limited'), bears('right-leg', 'unrestricted'))).toBe('walk');
    expect(may(bears('left-arm', 'none'), bears('right-arm', 'none'))).toBe('walk');
  });
  it('given several of them, it is to what the strictest leaves', () => {
    expect(may(activity('stand'), bears('left-leg', 'none'))).toBe('stand');
    expect(may(activity('bed'), bears('left-leg', 'none'), hold(1, 'walking', 30))).toBe('upright');
    expect(may(activity('walk'), hold(1, 'walking', 30), other(1, 'raising-the-back'))).toBe('clear');
  });
});

describe('how far a check went', () => {
  const known = protocolLookup([]);
  const checked = (told: Told) =>
    factsOf(told).find((f) => f.type === 'assessment-recorded') as Fact<PayloadOf<typeof assessmentRecorded>>;

  it('is to its last stage tested, with the first that was not met', () => {
    expect(howFar(checked(check('edge', 1)), known)).toEqual({ tested: 2, lost: null });
    const lost = { outcome: 'not-met' } as const;
    expect(howFar(checked(check('walk', 1, { stand: lost, walk: lost })), known)).toEqual({
      tested: 5,
      lost: 3,
    });
  });
  it('is nowhere, under a protocol that is not known here: nobody can read it', () => {
    const foreign = checked(check('walk', 1, {}, { protocol: { id: 'elsewhere', version: 9 } }));
    expect(isReadable(foreign, known)).toBe(false);
    expect(howFar(foreign, known)).toEqual({ tested: -1, lost: null });
    expect(isReadable(checked(check('walk', 1)), known)).toBe(true);
  });
  it('passes over a stage that its protocol does not have', () => {
    const told = checked(check('stand', 1, { stand: { outcome: 'not-met' } }));
    const [last, ...before] = told.data.stages.toReversed();
    const stages = [...before.toReversed(), { ...last!, stage: 'of-another-protocol' }];
    expect(howFar({ ...told, data: { ...told.data, stages } }, known)).toEqual({ tested: 2, lost: null });
  });
});
