/**
 * The tier: the last stage cleared with all before it cleared. A summary of what was seen, never a
 * ground for choosing an aid: the handling rules ask for capabilities, not for the tier.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { ifAny, type Because } from '../../board/because.ts';
import type { TierView, TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Side } from '../values.ts';
import { STAGE_MEANINGS, type Protocol, type ProtocolLookup, type ProtocolStage } from './protocol.ts';
import type { Seen, StageStanding } from './seen.ts';
import { partKey, seenSoFar, stageKey } from './seen.ts';
import { scopesTold } from '../../stays/rules/scope.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';

export const NOT_KNOWN = 'Not known';

export interface TierInput {
  /** Effective facts of one stay, ordered by occurred, rank, event id. Those after `t` do not count. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
}

export interface TierJudgement {
  readonly view: TierView;
  /** Keys of the stages cleared with all before them cleared: `clear`, `upright`, `edge`, `stand` ... */
  readonly cleared: ReadonlySet<string>;
  /** Those of them cleared on one's own; the others were held safe. */
  readonly clearedFree: ReadonlySet<string>;
  /** The latest assessment by a qualified author that tested something. */
  readonly assessment: Fact | null;
  readonly everWalked: boolean;
  readonly pressureDrop: Stated<true> | null;
  readonly conflicts: TrustView['conflicts'];
  /** What the tier stands on, for the capability. */
  readonly seen: Seen;
  /** By assessment, the place of the last stage that stood cleared after it, with all before it; -1 for none. */
  readonly clearedAfter: ReadonlyMap<EventId, number>;
}

const SIDES: readonly Side[] = ['left', 'right'];

/** A free rise needs push against resistance on a leg that bears; holding against gravity alone does not do. */
function strongEnoughToRiseFree(seen: Seen, oneLeg: Side | null): boolean {
  return SIDES.some(
    (side) =>
      (oneLeg === null || oneLeg === side) &&
      seen.parts.get(partKey('leg-bears', side))?.met !== false &&
      seen.parts.get(partKey('leg-against-resistance', side))?.met,
  );
}

const HELD: Record<NonNullable<StageStanding['securedWith']>, string> = {
  'raised-bed': 'in the raised bed',
  sling: 'in a sling',
  'standing-aid': 'with the standing aid',
  'two-people': 'by two people',
};
const held = (s: StageStanding) => (s.securedWith ? HELD[s.securedWith] : 'held safe');
const named = (stage: ProtocolStage) => stage.word ?? stage.id;

function scopeAt(
  facts: readonly Fact[],
  t: EpochMs,
): { scope: 'clinicians-plan' | 'comfort'; fact: Fact } | null {
  const fact = scopesTold(facts.filter((f) => f.occurred <= t)).counted.at(-1);
  const scope = fact?.data.scope ?? 'staged';
  return fact && scope !== 'staged' ? { scope, fact } : null;
}

const noTier: Pick<TierView, 'notch' | 'protocol' | 'oneLeg' | 'secured' | 'at' | 'by'> = {
  notch: null,
  protocol: null,
  oneLeg: null,
  secured: false,
  at: null,
  by: null,
};

export function judgeTier(input: TierInput): TierJudgement {
  const clearedAfter = new Map<EventId, number>();
  const seen = seenSoFar(input.facts, input.t, input.rules, input.protocols, (fact, then) => {
    clearedAfter.set(fact.id, lastCleared(then));
  });
  const base = {
    assessment: seen.assessment,
    everWalked: seen.everWalked,
    pressureDrop: seen.pressureDrop,
    conflicts: seen.conflicts,
    seen,
    clearedAfter,
  };
  const nothing = { cleared: new Set<string>(), clearedFree: new Set<string>() };
  const remarks: Because[] = seen.remarks.map((r) => ({ rule: r.rule, facts: [r.fact.id], words: r.words }));
  if (seen.start?.verdict.word === 'ask-first') {
    const words = seen.start.verdict.reasons.map((r) => r.words).join('; ');
    remarks.push({ rule: 'start/ask-first', facts: [seen.start.fact.id], words: `Ask first: ${words}` });
  }
  remarks.push(...seen.rising.remarks());

  const scope = scopeAt(input.facts, input.t);
  if (scope) {
    const words =
      scope.scope === 'comfort'
        ? 'Comfort plan: no tier'
        : "Clinician's plan only: the staged check does not apply";
    return {
      ...base,
      ...nothing,
      view: { ...noTier, word: null, because: [{ rule: 'tier/scope', facts: [scope.fact.id], words }] },
    };
  }
  if (!seen.assessment || !seen.protocol) {
    const arrival = arrivalOf(input.facts.filter((f) => f.occurred <= input.t));
    return {
      ...base,
      ...nothing,
      view: {
        ...noTier,
        word: NOT_KNOWN,
        because: [
          { rule: 'tier/not-known', facts: ifAny(arrival), words: 'Not assessed on this ward' },
          ...remarks,
        ],
      },
    };
  }
  return { ...base, ...judgeAlong(seen, seen.protocol, seen.assessment, remarks) };
}

function lastCleared({ protocol, stages }: Seen): number {
  let place = -1;
  for (const stage of protocol?.stages ?? []) {
    if (stages.get(stageKey(protocol!, stage))?.outcome !== 'met') break;
    if (stage.shows) place = STAGE_MEANINGS.indexOf(stage.shows);
  }
  return place;
}

/** The tier's word after each assessment up to `t`, by the assessment; whatever plan applied then. */
export function tierWords({ facts, t, rules, protocols }: TierInput): ReadonlyMap<EventId, string> {
  const words = new Map<EventId, string>();
  seenSoFar(facts, t, rules, protocols, (fact, seen) => {
    const { assessment, protocol } = seen;
    const known = assessment !== null && protocol !== null;
    words.set(fact.id, known ? judgeAlong(seen, protocol, assessment, []).view.word! : NOT_KNOWN);
  });
  return words;
}

function judgeAlong(
  seen: Seen,
  protocol: Protocol,
  assessment: Fact,
  remarks: readonly Because[],
): Pick<TierJudgement, 'view' | 'cleared' | 'clearedFree'> {
  const cleared = new Set<string>();
  const clearedFree = new Set<string>();
  const because: Because[] = [];
  const worded = protocol.stages.filter((s) => s.word !== null);
  let word = protocol.lowestWord;
  let reached = 0;
  let deciding: StageStanding | null = null;
  let secured = false;
  let oneLeg: Side | null = null;

  for (const stage of protocol.stages) {
    const key = stageKey(protocol, stage);
    const standing = seen.stages.get(key);
    if (standing?.outcome !== 'met') {
      because.push(
        standing
          ? {
              rule: 'tier/stage-not-met',
              facts: [standing.fact.id],
              words: `${named(stage)} ${standing.outcome.replace('-', ' ')}${standing.reasons.length ? `: ${standing.reasons.join('; ')}` : ''}`,
            }
          : {
              rule: 'tier/stage-not-cleared-yet',
              facts: [assessment.id],
              words: `${named(stage)} not cleared yet`,
            },
      );
      break;
    }
    cleared.add(key);
    deciding = standing;
    if (stage.oneLegRoute) oneLeg = standing.oneLeg;
    const weak = stage.shows === 'stand' && !strongEnoughToRiseFree(seen, standing.oneLeg);
    secured = standing.how === 'secured' || weak;
    if (!secured) clearedFree.add(key);
    if (stage.word !== null) {
      word = stage.word;
      reached += 1;
    }
    if (weak && standing.how === 'free') {
      because.push({
        rule: 'tier/free-rise-needs-strength',
        facts: [standing.fact.id],
        words: `${named(stage)} counts as secured: no leg that bears was seen to push against resistance`,
      });
    }
  }
  because.unshift({
    rule: 'tier/last-stage-cleared',
    facts: [(deciding?.fact ?? assessment).id],
    words: deciding
      ? `${reached > 0 ? word : 'The start'} cleared with all before it` +
        (deciding.how === 'secured' ? ` (${held(deciding)})` : '') +
        (oneLeg ? `, standing on the ${oneLeg} leg` : '')
      : 'Assessed; no stage cleared',
  });
  // With nothing cleared the tier still has an age: that of the finding that says so.
  const lowest = seen.stages.get(stageKey(protocol, protocol.stages[0]!));
  const decidedBy = deciding?.fact ?? lowest?.fact ?? assessment;
  return {
    cleared,
    clearedFree,
    view: {
      word,
      notch: reached / worded.length,
      protocol: { id: protocol.id, version: protocol.version },
      oneLeg,
      secured,
      at: deciding?.at ?? lowest?.at ?? decidedBy.occurred,
      by: decidedBy.author,
      because: [...because, ...remarks],
    },
  };
}
