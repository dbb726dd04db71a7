/** May we start by a ward's own protocol: parts met on one side, parts that only inform, a symptom. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { hours } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { checkUnder, LONG } from './own-protocol.testkit.ts';
import { ask } from './told-start.testkit.ts';

/** A ward's own way to begin: one part to be met on a side, one that only informs. */
const OWN = {
  ...LONG,
  stages: LONG.stages.map((s, i) =>
    i > 0
      ? s
      : {
          ...s,
          parts: [
            {
              id: 'either',
              says: 'Lifts an arm',
              sided: true,
              gate: 'one-side' as const,
              source: 'invented',
            },
            {
              id: 'tells',
              says: 'Tells the day',
              sided: false,
              gate: 'informs' as const,
              source: 'invented',
            },
            {
              id: 'must',
              says: 'Opens the eyes',
              sided: false,
              gate: 'required' as const,
              source: 'invented',
            },
          ],
        },
  ),
};
const begin = (left: string, right: string, tells: string, must: string, more: object = {}) =>
  [
    `own protocol: arms ${left} and ${right}, tells ${tells}, must ${must}${'symptom' in more ? ', a symptom' : ''}`,
    () => {
      const finding = (part: string, result: string, side?: string) => ({
        part,
        result,
        ...(side ? { side } : {}),
      });
      const findings = [
        finding('either', left, 'left'),
        finding('either', right, 'right'),
        finding('tells', tells),
        finding('must', must),
      ];
      const data = checkUnder(OWN, 'look', hours(1), {
        look: { outcome: 'not-met', findings: findings as never, ...more },
      });
      return ask([{ type: 'assessment-recorded', at: 1, id: 'own', payload: data }], 2, DEFAULT_RULES, [
        { id: OWN.id, version: OWN.version, document: OWN },
      ]);
    },
  ] as const;

heldAgainst(new URL('told-own-start.txt', import.meta.url), [
  begin('met', 'not-met', 'met', 'met'),
  begin('not-met', 'not-met', 'met', 'met'),
  begin('met', 'met', 'not-met', 'met'),
  begin('met', 'met', 'met', 'not-met'),
  begin('met', 'met', 'met', 'met', { outcome: 'met', symptom: true }),
]);
