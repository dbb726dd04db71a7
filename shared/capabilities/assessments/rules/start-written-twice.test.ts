/**
 * A check with its start written down twice, as a log may hold one that was not entered at this door: the
 * safer of the two counts. Design, rule 2; common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { hours } from '../../board/rules/history.testkit.ts';
import { fact, tierInput } from './assessment.testkit.ts';
import { ask, checked, well } from './may-start-now.testkit.ts';
import { checkUnder, SHORT } from './own-protocol.testkit.ts';
import { protocolLookup } from './protocol.ts';
import { stageReasons } from './start-in-force.ts';
import { judgeTier } from './tier.ts';

const once = { stage: 'clear', how: 'free', people: 0, findings: [], symptom: false, at: toIso(hours(1)) };
const fine = { ...once, outcome: 'met' };
const confused = {
  ...once,
  outcome: 'met',
  findings: [{ part: 'no-new-confusion', result: 'not-met' }],
};
const notMet = { ...once, outcome: 'not-met' };
const ill = { ...once, outcome: 'met', symptom: true };
const notTested = { ...once, outcome: 'not-tested', reason: 'asleep' };

const says = (...stages: readonly object[]) =>
  ask(1.1, [checked(1, well(1), { stages })]).reasons.map((r) => `${r.word}: ${r.words}`);
const either = (one: object) => [says(fine, one), says(one, fine)];

describe('may we start, when the start of the last check is written down twice', () => {
  it('given one of them has a part not met, then not now, whichever came first', () => {
    for (const reasons of either(confused)) {
      expect(reasons).toContain('not-now: No new confusion: not met at the last check');
    }
  });
  it('given one of them is not met as a whole, then not now, whichever came first', () => {
    for (const reasons of either(notMet)) {
      expect(reasons).toContain('not-now: clear: not met at the last check');
    }
  });
  it('given a symptom in one of them, then it asks first, whichever came first', () => {
    for (const reasons of either(ill)) {
      expect(reasons).toContain('ask-first: A symptom at the start of the last check');
    }
  });
  it('given one of them was not tested, then the other has answered', () => {
    for (const reasons of either(notTested)) {
      expect(reasons.filter((r) => r.includes('last check'))).toEqual([]);
    }
  });
  it('given a symptom in one of them under a document in which it stops, then not now, whichever came first', () => {
    const protocols = protocolLookup([{ id: SHORT.id, version: 1, document: SHORT }]);
    const data = checkUnder(SHORT, 'look', hours(1));
    const [calm] = data.stages;
    const unwell = { ...calm!, symptom: true };
    for (const twice of [
      [calm!, unwell],
      [unwell, calm!],
    ]) {
      const check = fact('assessment-recorded', { ...data, stages: twice }, { at: 1 });
      const tier = judgeTier({ ...tierInput([check]), protocols });
      expect(stageReasons(tier, protocols).map((r) => `${r.word}: ${r.words}`)).toEqual([
        'not-now: A symptom at the start of the last check',
      ]);
    }
  });
});
