/** Entries of one invented stay, and which of them stand against a late one while something is in force. */
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { TriggerKind } from '../../orders/values.ts';
import {
  begun,
  check,
  confirm,
  hold,
  hours,
  order,
  recordOf,
  session,
  trigger,
  type Told,
} from './history.testkit.ts';
import { restrictionsOf } from './restrictions.ts';
import { named, type History } from './told-stays.testkit.ts';

const says = (waitsForHelp: string, followsInstructions: string) => ({
  cooperation: { waitsForHelp, followsInstructions },
});
const partNotMet = (last: 'edge' | 'walk', at: number): Told => {
  const one = check(last, at);
  const { stages } = one.payload as { stages: { findings: { result: string }[] }[] };
  stages.at(-1)!.findings[0]!.result = 'not-met';
  return one;
};
const pressure = {
  kind: 'pressure',
  posture: 'standing',
  minute: 1,
  systolic: 100,
  diastolic: 60,
  at: new Date(hours(3)).toISOString(),
};
const rate = { kind: 'heart-rate', perMinute: 80, at: pressure.at };
const bears = (most: 'none' | 'limited' | 'unrestricted', at = 3) =>
  order(at, { about: 'weight-bearing', limb: 'left-leg', bears: most });
const upTo = (most: string, at = 3, by: Told['role'] = 'nurse') => order(at, { about: 'activity', most }, by);
/** Entries that may ask for more help, or not. */
const ENTRIES: History = [
  named(begun(), 'begun'),
  named(trigger('fall', 1), 'fall'),
  named(trigger('faint', 1.1), 'faint'),
  named(hold(2, 'walking', 9), 'hold-walking'),
  named(bears('limited'), 'leg limited'),
  named(bears('unrestricted', 3.1), 'leg free'),
  named(upTo('chair', 3.2), 'up to chair'),
  named(upTo('no-limit', 3.3), 'no limit'),
  named(check('walk', 4), 'all-met'),
  named(check('walk', 4.1, { walk: { outcome: 'not-met' } }), 'walk not met'),
  named(check('walk', 4.2, { stand: { symptom: true } }), 'a symptom'),
  named(partNotMet('walk', 4.3), 'a part not met'),
  named(check('walk', 4.4, {}, { readings: [pressure] }), 'a pressure'),
  named(check('walk', 4.5, {}, { readings: [rate] }), 'a rate'),
  named(check('walk', 4.6, {}, { readings: [rate, pressure] }), 'a rate and a pressure'),
  named(check('walk', 4.7, {}, says('no', 'yes')), 'does not wait'),
  named(check('walk', 4.8, {}, says('yes', 'no')), 'does not follow'),
  named(check('walk', 4.9, {}, says('varies', 'yes')), 'waits at times'),
  named(check('walk', 5, {}, { cooperation: undefined }), 'nothing said of waiting'),
  named(session(6), 'session'),
  named(confirm(7, 'all-met'), 'confirm'),
];
type InForce = Parameters<typeof restrictionsOf>[1];
interface Given {
  readonly open?: readonly (readonly [string, TriggerKind])[];
  readonly holds?: readonly string[];
  readonly orders?: readonly object[];
  readonly stages?: readonly string[];
  readonly parts?: readonly boolean[];
  /** Checks that were judged to have found less. */
  readonly judged?: readonly string[];
  readonly drop?: boolean;
  readonly waits?: string;
  readonly follows?: string;
}
function standing(given: Given): string[] {
  const inForce = {
    triggers: { seen: [], open: (given.open ?? []).map(([event, kind]) => ({ event, kind })) },
    holds: (given.holds ?? []).map((one) => ({ hold: one })),
    orders: { list: (given.orders ?? []).map((one) => ({ order: one })) },
    tier: {
      seen: {
        stages: new Map((given.stages ?? []).map((outcome, i) => [i, { outcome }])),
        parts: new Map((given.parts ?? []).map((met, i) => [i, { met }])),
        foundLess: new Set(given.judged ?? []),
      },
      pressureDrop: given.drop ? { fact: 'a' } : null,
    },
    capability: { waitsForHelp: given.waits ?? 'yes', followsInstructions: given.follows ?? 'yes' },
  } as unknown as InForce;
  return restrictionsOf(effectiveFacts(recordOf(ENTRIES)).facts, inForce).map(({ event }) => event);
}
const leg = { about: 'weight-bearing', limb: 'left-leg' };
const GIVEN: readonly (readonly [string, Given])[] = [
  ['nothing', {}],
  ['an arrival', { open: [['begun', 'arrival']] }],
  ['a fall', { open: [['fall', 'fall']] }],
  ['a hold', { holds: ['hold-1'] }],
  ['another hold', { holds: ['hold-2'] }],
  ['a limit on the leg', { orders: [{ ...leg, bears: 'limited' }] }],
  ['none on the leg', { orders: [{ ...leg, bears: 'unrestricted' }] }],
  ['a limit on activity', { orders: [{ about: 'activity', most: 'chair' }] }],
  ['a stage not met', { stages: ['met', 'not-met'] }],
  [
    'a stage not met as every check was judged',
    { stages: ['not-met'], judged: ENTRIES.flatMap((e) => e.id ?? []) },
  ],
  ['every stage met', { stages: ['met'], parts: [true] }],
  ['a part not met', { parts: [true, false] }],
  ['a pressure drop', { drop: true }],
  ['who does not wait', { waits: 'no' }],
  ['who waits at times', { waits: 'varies' }],
  ['who is not known to wait', { waits: 'not known' }],
  ['who does not follow', { follows: 'no' }],
  ['who follows at times', { follows: 'varies' }],
  ['a stage not met and a pressure drop', { stages: ['not-met'], drop: true }],
];

export const RESTRICTIONS = GIVEN.map(
  ([title, given]) => [`stands while there is ${title}`, () => standing(given)] as const,
);
