import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { judgeRising } from '@footboard/shared/capabilities/assessments/rules/pressure';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { table } from './markdown.mjs';

const at = (minute) => new Date(Date.UTC(2026, 0, 1, 9, minute)).toISOString();
const reading = (posture, taken, [systolic, diastolic], minute) => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic,
  at: at(taken),
  ...(minute === undefined ? {} : { minute }),
});
const set = (lying, one, three) => [
  reading('lying', 0, lying),
  ...(one ? [reading('standing', 6, one, 1)] : []),
  ...(three ? [reading('standing', 8, three, 3)] : []),
];

/** Worked examples: readings in, what the rules answer. */
const EXAMPLES = [
  ['130/80, then 124/78 and 122/78', set([130, 80], [124, 78], [122, 78]), []],
  ['130/80, then 112/78 and 110/78', set([130, 80], [112, 78], [110, 78]), []],
  ['130/80, then 124/78 and 122/70', set([130, 80], [124, 78], [122, 70]), []],
  ['the same, and dizzy', set([130, 80], [124, 78], [122, 78]), ['dizzy']],
  ['104/70, then 92/66 and 88/64', set([104, 70], [92, 66], [88, 64]), []],
  ['170/90, then 148/86 and 146/86', set([170, 90], [148, 86], [146, 86]), []],
  ['130/80, then 124/78 and none at 3 min', set([130, 80], [124, 78], null), []],
];

export function rising() {
  const answers = EXAMPLES.map(([says, readings, symptoms]) => {
    const verdict = judgeRising({
      readings,
      symptoms,
      demanded: true,
      set: DEFAULT_PROTOCOL.pressureSet,
      rules: DEFAULT_RULES.rising,
    });
    const fired = verdict.fired.map((f) => f.words).join('; ') || 'none';
    return [says, verdict.fall, fired, verdict.follows.words.join('. ') || 'nothing more'];
  });
  return [
    '## Blood pressure on rising',
    '',
    'The limits are under "Rising" below. Worked examples of a whole set (lying, then standing at 1 and 3 min), answered by',
    'the rules themselves. What follows from a fall is common practice, no source. A rise of the heart rate is shown as a',
    'rise and never called by a diagnosis.',
    '',
    ...table(['readings', 'fall', 'rules that fired', 'what follows'], answers),
  ];
}
