/** "Seen walking steadily on arrival", and the walking support last seen in use: design, rule 2.1. */
import { describe, expect, it } from 'vitest';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { knownAt } from './known.ts';
import { calendar, check, hours, stayOf, trigger, ward, type Told } from './history.testkit.ts';
import { seenWalkingInForce, walkingSupportOf } from './on-own.ts';

const seen = (at: number, role: Told['role'] = 'nurse'): Told => ({
  type: 'seen-walking',
  at,
  role: role!,
  id: `seen-${at}`,
  payload: { walkingSupport: 'stick' },
});
const inForce = (h: number, ...told: readonly Told[]) => {
  const { facts, triggers } = knownAt(
    effectiveFacts(stayOf(...told)),
    ward,
    calendar,
    hours(h),
    () => undefined,
  );
  return seenWalkingInForce(facts, triggers.seen, hours(h), DEFAULT_RULES, () => undefined);
};

describe('seen walking on arrival', () => {
  it('stands although the arrival itself asks for a check, at that very instant too', () => {
    for (const at of [0, 0.5]) {
      expect(inForce(1, seen(at))).toEqual({ value: 'stick', fact: `seen-${at}`, at: hours(at) });
    }
  });
  it('ends with any other reason to look again at or after it', () => {
    expect(inForce(2, trigger('fall', 0.5), seen(1))).not.toBeNull();
    expect(inForce(2, seen(1), trigger('fall', 1))).toBeNull();
    expect(inForce(2, seen(1), trigger('board-wrong', 1.5))).toBeNull();
  });
});

describe('the walking support', () => {
  const supportOf = (...told: readonly Told[]) =>
    walkingSupportOf(effectiveFacts(stayOf(...told)).facts).stands;
  const checkedWith = (support: string, at: number) => check('walk', at, {}, { walkingSupport: support });
  const nothingTested = (at: number): Told => {
    const told = checkedWith('frame', at);
    const { stages, ...rest } = told.payload as { stages: readonly object[] };
    return {
      ...told,
      payload: {
        ...rest,
        stages: stages.map((one) => ({ ...one, outcome: 'not-tested', reason: 'pain', findings: [] })),
      },
    };
  };
  it('is the one last seen, in a check or on arrival', () => {
    expect(supportOf(seen(1))).toMatchObject({ value: 'stick', fact: 'seen-1' });
    expect(supportOf(seen(1), checkedWith('frame', 2))).toMatchObject({ value: 'frame' });
    expect(supportOf(checkedWith('frame', 1), seen(2))).toMatchObject({ value: 'stick' });
    expect(supportOf()).toBeNull();
  });
  it('is not what an entry says in which nothing was tested, nor what somebody saw who may not check', () => {
    expect(supportOf(seen(1), nothingTested(2))).toMatchObject({ value: 'stick' });
    expect(supportOf(nothingTested(2))).toBeNull();
    expect(supportOf(seen(1, 'aide'))).toBeNull();
    expect(supportOf({ ...checkedWith('frame', 1), role: 'aide' })).toBeNull();
  });
});
