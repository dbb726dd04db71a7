/** What is on the measure sheet before it is sent, and what is still needed of it. */
import { recordWalkingMeasure } from '@footboard/shared/capabilities/measures/commands';
import {
  judgeMeasure,
  type MeasureJudgement,
  type WalkingLimits,
} from '@footboard/shared/capabilities/measures/rules/judge-measure';
import type { Measure } from '@footboard/shared/capabilities/measures/values';
import { stageKey } from '@footboard/shared/capabilities/assessments/rules/stage-standing';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import type { WalkingSupport } from '@footboard/shared/capabilities/assessments/values';
import type { TierView } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { say } from './words.ts';

export type MeasureKind = Measure['kind'];

export interface MeasureDraft {
  readonly kind: MeasureKind | null;
  readonly minutesAgo: number;
  readonly metres: number | null;
  readonly seconds: number | null;
  readonly notManaged: boolean;
  readonly pace: 'usual' | 'fast' | null;
  readonly start: 'walking' | 'from-standing' | null;
  readonly turn: boolean | null;
  readonly support: WalkingSupport | null;
  readonly heightCm: number | null;
  readonly weightKg: number | null;
  readonly stands: number | null;
  readonly usedArms: boolean | null;
  readonly age: number | null;
  readonly sex: 'female' | 'male' | null;
}

const NOTHING_DONE = {
  metres: null,
  seconds: null,
  notManaged: false,
  pace: null,
  start: null,
  turn: null,
  stands: null,
  usedArms: null,
} as const;

/** How a walk was done is never guessed, for it decides what it may be compared with; only the support is taken from the board. */
export const startMeasure = (view: StayView): MeasureDraft => ({
  kind: null,
  minutesAgo: 0,
  ...NOTHING_DONE,
  support: view.walkingSupport,
  heightCm: null,
  weightKg: null,
  age: null,
  sex: null,
});

/** Another kind begins anew; who the person is stays. */
export const chooseKind = (draft: MeasureDraft, kind: MeasureKind): MeasureDraft =>
  kind === draft.kind ? draft : { ...draft, ...NOTHING_DONE, kind };

/** What each kind must have before it is an entry, in the words of "Still needed". */
const NEEDED = {
  get metres() {
    return say('the-distance');
  },
  get seconds() {
    return say('the-time');
  },
  get pace() {
    return say('the-pace');
  },
  get start() {
    return say('how-it-began-2');
  },
  get turn() {
    return say('with-a-turn-or-not');
  },
  get support() {
    return say('the-support');
  },
  get stands() {
    return say('how-many-stands');
  },
  get usedArms() {
    return say('with-arms-or-not');
  },
} as const;
type Field = keyof typeof NEEDED;
export const FIELDS: Readonly<Record<MeasureKind, readonly Field[]>> = {
  'gait-speed': ['metres', 'seconds', 'pace', 'start', 'turn', 'support'],
  'six-minute-walk': ['metres', 'support'],
  'chair-stands': ['stands', 'usedArms'],
  'five-rises': ['seconds', 'usedArms'],
  'up-and-go': ['seconds', 'support'],
};
export const MAY_FAIL: ReadonlySet<MeasureKind> = new Set(['five-rises', 'up-and-go']);

/** In words, in the order of the sheet. An age without a sex, or the reverse, reads no table. */
export function stillNeeded(draft: MeasureDraft): readonly string[] {
  if (!draft.kind) return [say('which-measure-2')];
  const missing: string[] = FIELDS[draft.kind]
    .filter((field) => draft[field] === null && !(field === 'seconds' && draft.notManaged))
    .map((field) => NEEDED[field]);
  if (!READ_BY_AGE.has(draft.kind)) return missing;
  if (draft.age !== null && draft.sex === null) missing.push(say('the-sex-or-leave-out-the'));
  if (draft.age === null && draft.sex !== null) missing.push(say('the-age-or-leave-out-the'));
  return missing;
}
/** Kinds with a table by age and sex. For the others neither is asked, nor sent. */
export const READ_BY_AGE: ReadonlySet<MeasureKind> = new Set([
  'gait-speed',
  'six-minute-walk',
  'chair-stands',
]);

/** Data of `record-walking-measure`; what was not given is left out. */
export function measureData(draft: MeasureDraft, stay: string): object {
  const { kind, age, sex, heightCm, weightKg } = draft;
  const fields = Object.fromEntries((kind ? FIELDS[kind] : []).map((field) => [field, draft[field]]));
  return {
    stay,
    measure: {
      kind,
      ...fields,
      ...(draft.notManaged && 'seconds' in fields ? { seconds: null } : {}),
      ...(kind === 'six-minute-walk' && heightCm !== null ? { heightCm } : {}),
      ...(kind === 'six-minute-walk' && weightKg !== null ? { weightKg } : {}),
    },
    ...(kind && READ_BY_AGE.has(kind) && age !== null && sex !== null ? { readBy: { age, sex } } : {}),
  };
}

/** The shared rule on what is on the sheet; null while something is needed or out of bounds. */
export function previewMeasure(
  draft: MeasureDraft,
  stay: string,
  limits: WalkingLimits,
): MeasureJudgement | null {
  if (stillNeeded(draft).length > 0) return null;
  const parsed = recordWalkingMeasure.data.safeParse(measureData(draft, stay));
  return parsed.success ? judgeMeasure(parsed.data.measure, parsed.data.readBy, limits) : null;
}

/** Keys of the stages that the tier says are cleared; null when it was judged by another protocol document. */
export function clearedBy(tier: TierView, protocol: Protocol): ReadonlySet<string> | null {
  if (tier.word === null || tier.protocol === null) return new Set();
  if (tier.protocol.id !== protocol.id || tier.protocol.version !== protocol.version) return null;
  const last = protocol.stages.findIndex((stage) => stage.word === tier.word);
  return new Set(protocol.stages.slice(0, last + 1).map((stage) => stageKey(protocol, stage)));
}
