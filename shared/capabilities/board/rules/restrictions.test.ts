/** What was found less stands against a late entry: design, rule 2. More of it, told whole, in told-known.txt. */
import { describe, expect, it } from 'vitest';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { check, stayOf, type Told } from './history.testkit.ts';
import { restrictionsOf } from './restrictions.ts';

type InForce = Parameters<typeof restrictionsOf>[1];
const inForce = (over: {
  readonly notMet?: boolean;
  /** Checks in which a stage was judged not met. */
  readonly judged?: readonly string[];
  readonly waits?: string;
  readonly follows?: string;
}): InForce =>
  ({
    triggers: { seen: [], open: [] },
    holds: [],
    orders: { list: [] },
    tier: {
      seen: {
        stages: new Map(over.notMet ? [['walk', { outcome: 'not-met' }]] : []),
        parts: new Map(),
        foundLess: new Set(over.judged),
      },
      pressureDrop: null,
    },
    capability: { waitsForHelp: over.waits ?? 'yes', followsInstructions: over.follows ?? 'yes' },
  }) as unknown as InForce;
const against = (one: Told, over: Parameters<typeof inForce>[0]) =>
  restrictionsOf(effectiveFacts(stayOf({ ...one, id: 'check' })).facts, inForce(over)).map(
    ({ event }) => event,
  );

interface StageSaid {
  readonly outcome: string;
  readonly symptom: boolean;
  readonly findings: readonly { readonly result: string }[];
}
/** A check of which the last stage reads otherwise. */
function lastStage(told: Told, over: (last: StageSaid) => Partial<StageSaid>): Told {
  const { stages, ...rest } = told.payload as { stages: readonly StageSaid[] };
  const last = stages.at(-1)!;
  return { ...told, payload: { ...rest, stages: [...stages.slice(0, -1), { ...last, ...over(last) }] } };
}
const walked = check('walk', 1);

describe('a check, while a stage is known as not met', () => {
  it.each([
    [
      'a stage that was not met, though no part of it is named',
      lastStage(walked, () => ({ outcome: 'not-met', findings: [] })),
      true,
    ],
    [
      'a stage that was not met, though each part named was',
      lastStage(walked, () => ({ outcome: 'not-met' })),
      true,
    ],
    ['a symptom', lastStage(walked, () => ({ symptom: true })), true],
    [
      'a part not met',
      lastStage(walked, ({ findings }) => ({
        findings: findings.map((one, i) => (i === 0 ? { ...one, result: 'not-met' } : one)),
      })),
      true,
    ],
    ['every stage and part met', walked, false],
  ])('with %s: stands %s', (_what, told, stands) => {
    expect(against(told, { notMet: true })).toEqual(stands ? ['check'] : []);
    expect(against(told, {})).toEqual([]);
  });
});

describe('a check that wrote everything down as met, and was judged otherwise', () => {
  it('stands, while a stage is known as not met', () => {
    expect(against(walked, { notMet: true, judged: ['check'] })).toEqual(['check']);
    expect(against(walked, { notMet: true, judged: ['another'] })).toEqual([]);
    expect(against(walked, { judged: ['check'] })).toEqual([]);
  });
});

describe('a check, while help is not waited for or instructions are not followed', () => {
  const says = (waitsForHelp: string, followsInstructions: string) =>
    check('walk', 1, {}, { cooperation: { waitsForHelp, followsInstructions } });
  it.each([
    ['no', 'yes', true],
    ['varies', 'yes', true],
    ['yes', 'no', true],
    ['no', 'no', true],
    ['yes', 'yes', false],
  ])('that says waits %s, follows %s: stands %s', (waits, follows, stands) => {
    const told = says(waits, follows);
    for (const now of [{ waits: 'no' }, { waits: 'varies' }, { follows: 'no' }]) {
      expect(against(told, now)).toEqual(stands ? ['check'] : []);
    }
    expect(against(told, {})).toEqual([]);
  });
});
