import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES, rulesDocument, type RulesDocument } from './rules-document.ts';
import { faultsOfRules } from './rules-faults.ts';

/** The defaults with some values of one group put in their place. */
function withValues<G extends keyof RulesDocument>(group: G, values: Record<string, unknown>): RulesDocument {
  const limits = DEFAULT_RULES[group] as unknown as Record<string, object>;
  const changed = Object.entries(values).map(([name, value]) => [name, { ...limits[name], value }]);
  return rulesDocument.parse({ ...DEFAULT_RULES, [group]: { ...limits, ...Object.fromEntries(changed) } });
}
const placesOf = (document: RulesDocument): readonly string[] => faultsOfRules(document).map((f) => f.place);

describe("a ward's limits at the door", () => {
  it('given the defaults, then nothing is wrong with them', () => {
    expect(faultsOfRules(DEFAULT_RULES)).toEqual([]);
  });

  it('given a limit that would always speak, then its place and the range are named', () => {
    expect(faultsOfRules(withValues('signs', { stagesLost: 0 }))).toEqual([
      { place: '/signs/stagesLost/value', reason: '0 cannot be meant: a number from 1 to 20' },
    ]);
    expect(faultsOfRules(withValues('handling', { bariatricFromKg: 0 }))).toEqual([
      { place: '/handling/bariatricFromKg/value', reason: '0 cannot be meant: a number from 60 to 300 kg' },
    ]);
  });

  it.each([
    ['pounds instead of kilograms', 'handling', 'bariatricFromKg', 301],
    ['kilopascals instead of mmHg', 'start', 'systolicBelow', 12],
    ['a share instead of percent', 'start', 'saturationBelow', 0.9],
    ['Fahrenheit instead of Celsius', 'start', 'temperatureFrom', 101.3],
    ['percent instead of a share', 'handling', 'estimatedWeightMargin', 20],
    ['percent instead of a share', 'criticalCare', 'oxygenFractionAbove', 60],
    ['minutes instead of hours', 'validity', 'settledHours', 1440],
    ['a limit below nothing', 'handling', 'liftLimitKgPerCarer', -15],
    ['no time at all', 'validity', 'firstCheckHours', 0],
    ['hours instead of minutes', 'rising', 'restingWithinMinutes', 4],
    ['a rest of the day before', 'rising', 'restingWithinMinutes', 241],
  ] as const)('given %s, then %s/%s is refused', (_what, group, name, value) => {
    expect(placesOf(withValues(group, { [name]: value }))).toEqual([`/${group}/${name}/value`]);
  });

  it.each([
    ['start', { systolicBelow: 40, systolicAbove: 260 }],
    ['start', { saturationBelow: 100, painAskFrom: 1, painReliefFirstFrom: 1 }],
    ['start', { heartRateAskFrom: 130, heartRateAbove: 130 }],
    ['handling', { bariatricFromKg: 60 }],
    ['handling', { bariatricFromKg: 300 }],
    ['validity', { firstCheckHours: 0.25 }],
    ['validity', { firstCheckHours: 72 }],
    ['signs', { stagesLost: 1, refusalsInRow: 20 }],
    ['rising', { restingWithinMinutes: 5 }],
    ['rising', { restingWithinMinutes: 240 }],
  ] as const)('given the ends of what can be meant in %s (%o), then it is taken', (group, values) => {
    expect(faultsOfRules(withValues(group, values))).toEqual([]);
  });

  it('given two limits the wrong way round, then the lower one is named with the other', () => {
    expect(faultsOfRules(withValues('start', { systolicBelow: 181 }))).toEqual([
      { place: '/start/systolicBelow/value', reason: '181 must be below systolicAbove (180)' },
    ]);
    expect(placesOf(withValues('start', { systolicBelow: 180 }))).toEqual(['/start/systolicBelow/value']);
    expect(faultsOfRules(withValues('earlyWarning', { totalFrom: 8 }))).toEqual([
      { place: '/earlyWarning/totalFrom/value', reason: '8 must be below emergencyFrom (7) or the same' },
    ]);
  });

  it('given several at once, then each is named', () => {
    const document = withValues('criticalCare', { sedationBelow: 1, sedationAskAbove: 3, heartRateAbove: 5 });
    expect(placesOf(document)).toEqual([
      '/criticalCare/heartRateAbove/value',
      '/criticalCare/heartRateAskFrom/value',
      '/criticalCare/sedationBelow/value',
      '/criticalCare/sedationAskAbove/value',
    ]);
  });
});
