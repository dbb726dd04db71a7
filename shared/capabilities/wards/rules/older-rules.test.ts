/** A ward's rules that were published before some limits existed go on counting, with those from the defaults. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { judgeStart } from '../../assessments/rules/may-start.ts';
import { criticalCareSigns, type Reading } from '../../assessments/values.ts';
import { judgeCriticalCare } from '../../assessments/rules/critical-care.ts';
import { setUpWard, WARD, WardLog, hours } from '../../board/rules/history.testkit.ts';
import { judgeStop } from '../../sessions/rules/stop-limits.ts';
import { DEFAULT_RULES } from './rules-document.ts';
import { faultsOfRules } from './rules-faults.ts';
import { foldWard, rulesOf } from './ward-state.ts';

/** As a ward published it: its own values, and without the lower limits of pressure and breathing. */
function published() {
  const { systolicBelow: _low, breathingBelow: _slowest, ...stop } = structuredClone(DEFAULT_RULES.stop);
  const { breathingBelow: _slow, ...start } = structuredClone(DEFAULT_RULES.start);
  const { breathingBelow: _slower, ...criticalCare } = structuredClone(DEFAULT_RULES.criticalCare);
  stop.systolicAbove.value = 200;
  start.breathingAbove.value = 28;
  criticalCare.breathingAbove.value = 26;
  const log = new WardLog();
  setUpWard(log);
  log.add(`ward/${WARD}`, {
    type: 'rules-published',
    payload: { version: 2, document: { ...DEFAULT_RULES, version: 2, stop, start, criticalCare } },
  });
  return rulesOf(foldWard(WARD, log.events)!);
}
const at = toIso(hours(1));

describe('rules that a ward published before the lower limits existed', () => {
  it('given such a document, then its own values stay and the lower limits are those of the defaults', () => {
    const { version, start, stop, criticalCare } = published();
    expect(version).toBe(2);
    expect([stop.systolicAbove.value, start.breathingAbove.value, criticalCare.breathingAbove.value]).toEqual(
      [200, 28, 26],
    );
    expect(stop.systolicBelow).toEqual(DEFAULT_RULES.stop.systolicBelow);
    expect(stop.breathingBelow).toEqual(DEFAULT_RULES.stop.breathingBelow);
    expect(start.breathingBelow).toEqual(DEFAULT_RULES.start.breathingBelow);
    expect(criticalCare.breathingBelow).toEqual(DEFAULT_RULES.criticalCare.breathingBelow);
    expect(faultsOfRules(published())).toEqual([]);
  });
  it('given such a document, then the lower limits count on that ward', () => {
    const rules = published();
    const readings: Reading[] = [
      { kind: 'breathing', perMinute: 5, at },
      { kind: 'pressure', posture: 'seated', systolic: 70, diastolic: 40, at },
    ];
    const during = { readings, before: [], events: [], oxygenTarget: null, rules };
    expect(judgeStop(during).reasons.map((r) => r.words)).toEqual([
      'breathing rate 5 is 5 or less',
      'systolic 70 mmHg is below 90',
    ]);
    const asked = { cooperation: undefined, oxygenTarget: null, oxygenFlowBefore: null };
    expect(judgeStart({ ...asked, readings: readings.slice(0, 1), rules: rules.start }).word).toBe('not-now');
    const signs = criticalCareSigns.parse({ breathing: 5 });
    expect(judgeCriticalCare(signs, rules.criticalCare, 0).map((r) => r.word)).toEqual(['not-now']);
  });
});
