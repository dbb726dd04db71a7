/**
 * What one stage record is worth: met, not met or not tested, with the reasons. The record says what
 * the author saw; readings and findings of the same assessment can only lower it.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../events.ts';
import type { Finding, Side, StageRecord } from '../values.ts';
import type { StartVerdict } from './may-start.ts';
import type { RisingVerdict } from './pressure.ts';
import type { ProtocolPart, ProtocolStage } from './protocol.ts';

export type Assessment = PayloadOf<typeof assessmentRecorded>;

export interface JudgedStage {
  readonly outcome: 'met' | 'not-met' | 'not-tested';
  /** Why it is not what the record says, or which parts were not met. */
  readonly reasons: readonly string[];
  /** The leg that bore the weight, when only one did. */
  readonly oneLeg: Side | null;
}

const SIDES: readonly Side[] = ['left', 'right'];
const opposite = (side: Side): Side => (side === 'left' ? 'right' : 'left');
const sided = (part: ProtocolPart, side: Side | undefined) => (side ? `${part.says} (${side})` : part.says);

export const findingsOf = (record: StageRecord, part: ProtocolPart): Finding[] =>
  record.findings.filter((f) => f.part === part.id);

/** The leg left over when the other is absent, in a cast or may not bear. */
export function legLeft(record: StageRecord, stage: ProtocolStage): Side | null {
  const bears = stage.parts.find((p) => p.shows === 'leg-bears');
  if (!bears) return null;
  const none = findingsOf(record, bears).filter((f) => f.result === 'not-applicable' && f.side);
  return none.length === 1 && none[0]?.side ? opposite(none[0].side) : null;
}

/** Nobody stands on no leg: with both absent, in a cast or barred, standing is not met. */
export const appliesToNoLeg = (part: ProtocolPart, findings: readonly Finding[]): boolean =>
  part.shows === 'leg-bears' && findings.length > 0 && findings.every((f) => f.result === 'not-applicable');

/**
 * What the pressures and answers on rising say against Stand. Where Stand was not tested, a set in which nobody stood
 * and nobody was dizzy says nothing of it.
 */
function againstStanding(rising: RisingVerdict, recorded: StageRecord['outcome']): readonly string[] {
  const rose = rising.symptoms.length > 0 || rising.readings.some((r) => r.posture === 'standing');
  return recorded === 'not-tested' && !rose ? [] : rising.standNotCleared;
}

/** Standing on both legs goes beyond an order that lets one bear nothing, whatever was seen. */
function againstBothLegs(mayNotBear: ReadonlySet<Side>): string[] {
  const route = mayNotBear.size === 1 ? ': use the one-leg route' : '';
  return SIDES.filter((side) => mayNotBear.has(side)).map(
    (side) => `the order lets the ${side} leg bear nothing${route}`,
  );
}

export function judgeStage(
  record: StageRecord,
  stage: ProtocolStage,
  context: {
    /** Only looked at for the stage that means "may we start". */
    start: StartVerdict | null;
    /** Only looked at for the stage that means standing. */
    rising: RisingVerdict | null;
    /** Legs that may bear nothing by order when the assessment was done. */
    mayNotBear: ReadonlySet<Side>;
    /** Whether both arms push, by this check or the last one that tested them. Only for the one-leg route. */
    arms: 'both' | 'not' | 'not-seen';
  },
): JudgedStage {
  const recorded = record.outcome;
  const oneLeg = stage.oneLegRoute ? (record.oneLeg ?? legLeft(record, stage)) : null;
  const reasons: string[] = [];
  let untested: string | null = null;
  for (const part of stage.parts) {
    if (part.gate === 'informs') continue;
    const findings = findingsOf(record, part).filter(
      (f) => !(oneLeg && part.shows === 'leg-bears' && f.side === opposite(oneLeg)),
    );
    const failed = findings.filter((f) => f.result === 'not-met');
    const tested = findings.some((f) => f.result === 'met');
    if (failed.length && !(part.gate === 'one-side' && tested)) {
      for (const f of failed) reasons.push(sided(part, f.side));
    } else if (findings.some((f) => f.result === 'not-tested') && !(part.gate === 'one-side' && tested)) {
      untested ??= part.says;
    }
    if (appliesToNoLeg(part, findings)) {
      reasons.push(`${part.says}: there is no leg it applies to`);
    }
  }
  if (record.symptom && stage.symptomStops) reasons.push('a symptom during it');
  if (stage.shows === 'clear' && context.start?.word === 'not-now') {
    reasons.push(...context.start.reasons.filter((r) => r.word === 'not-now').map((r) => r.words));
  }
  if (stage.shows === 'stand' && context.rising) {
    reasons.push(...againstStanding(context.rising, recorded));
  }
  // What was found against a stage counts, though the stage as a whole was not tested; its route was not tried.
  if (recorded === 'not-tested') {
    return { outcome: reasons.length > 0 ? 'not-met' : 'not-tested', reasons, oneLeg: null };
  }
  if (oneLeg && context.mayNotBear.has(oneLeg)) {
    reasons.push(`the order lets the ${oneLeg} leg bear nothing`);
  }
  if (stage.oneLegRoute && !oneLeg) reasons.push(...againstBothLegs(context.mayNotBear));
  if (oneLeg && context.arms === 'not') reasons.push('on one leg both arms must push, and they do not');
  if (oneLeg && context.arms === 'not-seen') untested ??= 'both arms pushing, which one leg needs';
  if (recorded === 'not-met' || reasons.length) return { outcome: 'not-met', reasons, oneLeg };
  if (untested) return { outcome: 'not-tested', reasons: [`not tested: ${untested}`], oneLeg: null };
  return { outcome: 'met', reasons: [], oneLeg };
}
