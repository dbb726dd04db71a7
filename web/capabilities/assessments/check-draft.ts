/**
 * A staged check while it is being done: one stage at a time, in the protocol's order. Pure; the
 * page holds the value and redraws. Nothing here decides a tier: that is the shared rules' business.
 */
import type {
  Protocol,
  ProtocolPart,
  ProtocolStage,
} from '@footboard/shared/capabilities/assessments/rules/protocol';
import type {
  Cooperation,
  Depth,
  Finding,
  Side,
  StageRecord,
  WalkingSupport,
} from '@footboard/shared/capabilities/assessments/values';
import { toIso, type EpochMs } from '@footboard/shared/kernel/times';
import type { ReadingSlots } from './reading-slots.ts';
import { readingsOf } from './reading-slots.ts';

export type Answer = Omit<Finding, 'part' | 'side'>;
export type Worn = 'prosthesis' | 'brace' | 'glasses' | 'hearing-aids' | 'shoes';
export type RisingSymptom = 'dizzy' | 'faint' | 'blurred-sight' | 'nausea' | 'other';

export interface StageDraft {
  readonly stage: string;
  /** By `part` or `part/side`. */
  readonly answers: Readonly<Record<string, Answer>>;
  /** Null until said: free is the freer answer, so it is never assumed. */
  readonly how: 'free' | 'secured' | null;
  readonly securedWith: NonNullable<StageRecord['securedWith']> | null;
  readonly people: number;
  /** Null until asked: a gap is not a "no". */
  readonly symptom: boolean | null;
  readonly oneLeg: Side | null;
  /** The whole stage left untested, and why. */
  readonly notTested: NonNullable<StageRecord['reason']> | null;
  /** Passed over on the way to the stage where the check begins: recorded as not tested, which changes nothing. */
  readonly passedOver: boolean;
  /** When the stage was closed; null while it is open. */
  readonly at: EpochMs | null;
}

export interface CheckDraft {
  readonly depth: Exclude<Depth, 'confirm'>;
  /** The stage to go on at after the first, which is always asked; null for every stage in order. */
  readonly startAt: string | null;
  /** Stages in order, as far as the check has got; the last one may be open. */
  readonly stages: readonly StageDraft[];
  /** `made-safe`: a part was not met and the person has not yet been made safe. */
  readonly at: 'stage' | 'make-safe' | 'after' | 'review';
  readonly cooperation: Cooperation | null;
  readonly slots: ReadingSlots;
  /** Asked on rising; null when not asked. */
  readonly risingSymptoms: readonly RisingSymptom[] | null;
  readonly wears: readonly Worn[];
  readonly walkingSupport: WalkingSupport | null;
  readonly answers: readonly string[];
  readonly firstTimeUp: boolean;
  readonly note: string;
}

export const answerKey = (part: string, side?: Side): string => (side ? `${part}/${side}` : part);
/** The questions of a stage in the order they are asked. */
export const questionsOf = (stage: ProtocolStage): readonly { part: ProtocolPart; side?: Side }[] =>
  stage.parts.flatMap((part) =>
    part.sided
      ? [
          { part, side: 'left' as const },
          { part, side: 'right' as const },
        ]
      : [{ part }],
  );

const openStage = (stage: ProtocolStage, firstTimeUp: boolean): StageDraft => {
  const secured = stage.firstTimeSecured && firstTimeUp;
  return {
    stage: stage.id,
    answers: {},
    how: secured ? 'secured' : stage.securedBy.length === 0 ? 'free' : null,
    securedWith: secured ? (stage.securedBy.at(-1) ?? null) : null,
    people: 1,
    symptom: null,
    oneLeg: null,
    notTested: null,
    passedOver: false,
    at: null,
  };
};

export function startCheck(
  protocol: Protocol,
  depth: Exclude<Depth, 'confirm'>,
  options: { firstTimeUp: boolean; answers: readonly string[]; startAt?: string | null },
): CheckDraft {
  return {
    depth,
    startAt: options.startAt ?? null,
    stages: [openStage(protocol.stages[0]!, options.firstTimeUp)],
    at: 'stage',
    cooperation: null,
    slots: {},
    risingSymptoms: null,
    wears: [],
    walkingSupport: null,
    answers: options.answers,
    firstTimeUp: options.firstTimeUp,
    note: '',
  };
}

export const currentStage = (draft: CheckDraft): StageDraft => draft.stages.at(-1)!;

export function changeStage(draft: CheckDraft, change: Partial<StageDraft>): CheckDraft {
  return { ...draft, stages: [...draft.stages.slice(0, -1), { ...currentStage(draft), ...change }] };
}

export function answerPart(draft: CheckDraft, key: string, answer: Answer): CheckDraft {
  return changeStage(draft, { answers: { ...currentStage(draft).answers, [key]: answer }, oneLeg: null });
}

/** Every part that is not answered yet, met, and no symptom: for a stage that went well as a whole. */
export function answerRestMet(draft: CheckDraft, stage: ProtocolStage): CheckDraft {
  const answers = { ...currentStage(draft).answers };
  for (const { part, side } of questionsOf(stage)) answers[answerKey(part.id, side)] ??= { result: 'met' };
  return changeStage(draft, { answers, symptom: currentStage(draft).symptom ?? false });
}

/** The side on which this stage could be met on one leg: the other side does not bear, this one does. */
export function oneLegSide(stage: ProtocolStage, draft: StageDraft): Side | null {
  if (!stage.oneLegRoute) return null;
  const bears = stage.parts.find((p) => p.shows === 'leg-bears' && p.sided);
  if (!bears) return null;
  const result = (side: Side) => draft.answers[answerKey(bears.id, side)]?.result;
  const fails = (side: Side) => result(side) === 'not-met' || result(side) === 'not-applicable';
  if (result('left') === 'met' && fails('right')) return 'left';
  if (result('right') === 'met' && fails('left')) return 'right';
  return null;
}

export interface StageOutcome {
  /** `open`: something that decides is not answered yet. */
  readonly outcome: 'met' | 'not-met' | 'not-tested' | 'open';
  readonly reason?: NonNullable<StageRecord['reason']>;
  /** The part that decided, in the protocol's words. */
  readonly because?: string;
  /** What an open stage still asks. */
  readonly asks?: 'parts' | 'how' | 'symptom';
}

/** What the answers so far make of the stage. A required part not met, or a symptom where it stops, is decided at once. */
export function outcomeOf(stage: ProtocolStage, draft: StageDraft): StageOutcome {
  if (draft.notTested) return { outcome: 'not-tested', reason: draft.notTested };
  if (draft.symptom && stage.symptomStops) return { outcome: 'not-met', because: 'a symptom' };
  let open = false;
  let untested: StageOutcome | null = null;
  for (const part of stage.parts) {
    if (part.gate === 'informs') continue;
    const sides: (Side | undefined)[] = part.sided ? ['left', 'right'] : [undefined];
    const answers = sides.map((side) => draft.answers[answerKey(part.id, side)]);
    const results = answers.map((a) => a?.result);
    const carried = part.shows === 'leg-bears' && draft.oneLeg !== null;
    if (part.gate === 'one-side' || carried) {
      if (results.includes('met')) continue;
      if (results.every((r) => r === 'not-met' || r === 'not-applicable') && results.includes('not-met')) {
        return { outcome: 'not-met', because: part.says };
      }
    } else if (results.includes('not-met')) {
      return { outcome: 'not-met', because: part.says };
    }
    if (results.includes(undefined)) open = true;
    const skipped = answers.find((a) => a?.result === 'not-tested');
    if (skipped) {
      untested ??= {
        outcome: 'not-tested',
        reason: skipped.reason as NonNullable<StageRecord['reason']>,
        because: part.says,
      };
    }
  }
  if (open) return { outcome: 'open', asks: 'parts' };
  if (untested) return untested;
  if (draft.symptom === null) return { outcome: 'open', asks: 'symptom' };
  return draft.how === null ? { outcome: 'open', asks: 'how' } : { outcome: 'met' };
}

/** Closes the open stage and goes where the check goes next. An open question keeps it where it is. */
export function closeStage(draft: CheckDraft, protocol: Protocol, now: EpochMs): CheckDraft {
  const index = draft.stages.length - 1;
  const stage = protocol.stages[index]!;
  const { outcome } = outcomeOf(stage, currentStage(draft));
  if (outcome === 'open') return draft;
  const closed = changeStage(draft, { at: now });
  if (outcome === 'not-met') return { ...closed, at: 'make-safe' };
  const from = nextIndex(draft, protocol, index);
  const next = protocol.stages[from];
  if (outcome === 'not-tested' || !next) return { ...closed, at: 'review' };
  const over = protocol.stages
    .slice(index + 1, from)
    .map((passed) => ({ ...PASSED_OVER, stage: passed.id, at: now }));
  return { ...closed, stages: [...closed.stages, ...over, openStage(next, draft.firstTimeUp)], at: 'stage' };
}

const PASSED_OVER: Omit<StageDraft, 'stage' | 'at'> = {
  answers: {},
  how: 'free',
  securedWith: null,
  people: 0,
  symptom: false,
  oneLeg: null,
  notTested: 'other',
  passedOver: true,
};
/** After the first stage the check may go on at a later one; otherwise stage by stage. */
function nextIndex(draft: CheckDraft, protocol: Protocol, index: number): number {
  const wanted = index === 0 ? protocol.stages.findIndex((stage) => stage.id === draft.startAt) : -1;
  return wanted > index ? wanted : index + 1;
}

/** Ends the check before the open stage; what was closed stands. */
export function stopHere(draft: CheckDraft): CheckDraft {
  const closed = draft.stages.filter((s) => s.at !== null);
  const done = closed.slice(0, closed.findLastIndex((s) => !s.passedOver) + 1);
  return done.length === 0 ? draft : { ...draft, stages: done, at: 'review' };
}

/** Opens the last closed stage again, its answers kept. */
export function stepBack(draft: CheckDraft): CheckDraft {
  if (draft.at === 'stage') {
    if (draft.stages.length < 2) return draft;
    const stages = draft.stages.slice(
      0,
      draft.stages.findLastIndex((s) => s.at !== null && !s.passedOver) + 1,
    );
    return { ...draft, stages: [...stages.slice(0, -1), { ...stages.at(-1)!, at: null }] };
  }
  return { ...changeStage(draft, { at: null }), at: 'stage' };
}

function recordOf(stage: ProtocolStage, draft: StageDraft, support: WalkingSupport | null): object {
  const { outcome, reason } = outcomeOf(stage, draft);
  const onFeet = stage.shows === 'stand' || stage.shows === 'turn' || stage.shows === 'walk';
  const findings = questionsOf(stage).flatMap(({ part, side }) => {
    const answer =
      draft.answers[answerKey(part.id, side)] ??
      // A part that was never reached is said to be so: a gap is not a failure.
      ({ result: 'not-tested', reason: draft.notTested ?? 'stopped-before' } as const);
    return [{ part: part.id, ...(side ? { side } : {}), ...answer }];
  });
  return {
    stage: stage.id,
    outcome: outcome === 'open' ? 'not-tested' : outcome,
    ...(outcome === 'not-tested' ? { reason } : outcome === 'open' ? { reason: 'stopped-before' } : {}),
    // Where the check stopped before this was said, the stage was not met: held safe or not changes nothing.
    how: draft.how ?? 'free',
    ...(draft.how === 'secured' && draft.securedWith ? { securedWith: draft.securedWith } : {}),
    people: draft.people,
    ...(onFeet && support && support !== 'none' ? { aid: support } : {}),
    findings,
    symptom: draft.symptom ?? false,
    ...(draft.oneLeg ? { oneLeg: draft.oneLeg } : {}),
    at: toIso(draft.at ?? 0),
  };
}

/** Data of `record-assessment`. */
export function assessmentData(draft: CheckDraft, protocol: Protocol, stay: string): object {
  return {
    stay,
    protocol: { id: protocol.id, version: protocol.version },
    depth: draft.depth,
    stages: draft.stages
      .filter((s) => s.at !== null)
      .map((s) =>
        recordOf(
          protocol.stages.find((p) => p.id === s.stage)!,
          s,
          draft.walkingSupport,
        ),
      ),
    readings: readingsOf(draft.slots),
    ...(draft.risingSymptoms ? { risingSymptoms: draft.risingSymptoms } : {}),
    ...(draft.cooperation ? { cooperation: draft.cooperation } : {}),
    wears: draft.wears,
    ...(draft.walkingSupport ? { walkingSupport: draft.walkingSupport } : {}),
    answers: draft.answers,
    firstTimeUp: draft.firstTimeUp,
    ...(draft.note.trim() ? { note: draft.note.trim() } : {}),
  };
}
