/**
 * Everything the assessments of a stay have shown up to an instant, question by question. A later
 * finding supersedes an earlier one on the same question; a finding that frees needs a qualified
 * author; a stage not met takes back what was cleared beyond it; of two findings of the same time
 * the safer stands and the conflict is kept.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../../kernel/stated.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Cooperation } from '../values.ts';
import type { Assessment } from './judge-stage.ts';
import type { StartVerdict } from './may-start.ts';
import { judgeStart, oxygenFlowAfter, readingsAtStart, type OxygenFlowBefore } from './may-start.ts';
import { OrdersThen } from './orders-then.ts';
import { CooperationSeen } from './cooperation-seen.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { judgeRising, type RisingVerdict } from './pressure.ts';
import type { Protocol, ProtocolLookup } from './protocol.ts';
import { RisingSeen } from './rising-seen.ts';
import type { StageStanding } from './stage-standing.ts';
import { sameTime, stageKey } from './stage-standing.ts';
import { StagesSeen, named } from './stages-seen.ts';
import type { JudgedRecord } from './work-out.ts';
import { partKey, workOut } from './work-out.ts';

export { partKey, stageKey, type StageStanding };

/** How a part, on one side, stands after the latest finding on it. */
export interface PartStanding {
  readonly met: boolean;
  readonly fact: Fact;
}

export interface Seen {
  /** By stage key: its meaning, or "protocol/stage" for a stage without one. */
  readonly stages: ReadonlyMap<string, StageStanding>;
  readonly parts: ReadonlyMap<string, PartStanding>;
  readonly cooperation: readonly Stated<Cooperation>[];
  /** The protocol of the latest assessment that could be read. */
  readonly protocol: Protocol | null;
  readonly assessment: Fact | null;
  readonly everWalked: boolean;
  readonly pressureDrop: Stated<true> | null;
  /** What the pressures on rising said. */
  readonly rising: RisingSeen;
  /** What the readings before rising said at the latest check that has the stage "may we start". */
  readonly start: { readonly verdict: StartVerdict; readonly fact: Fact } | null;
  readonly conflicts: TrustView['conflicts'];
  /** Assessments in which a stage was not met, as judged, or that cannot be read and found something against moving. */
  readonly foundLess: ReadonlySet<EventId>;
  /** Assessments that could not be read or did not count in full, in words. */
  readonly remarks: readonly { rule: string; fact: Fact; words: string }[];
}

class Fold {
  readonly parts = new Map<string, PartStanding>();
  readonly remarks: { rule: string; fact: Fact; words: string }[] = [];
  readonly foundLess = new Set<EventId>();
  protocol: Protocol | null = null;
  assessment: Fact | null = null;
  everWalked = false;
  readonly rising = new RisingSeen();
  start: Seen['start'] = null;
  private readonly cooperated = new CooperationSeen();
  private readonly cleared = new StagesSeen();
  private readonly partNotMet = new Map<string, Fact>();
  readonly orders: OrdersThen;
  /** What is known of the oxygen flow at the checks so far. */
  private oxygenFlow: OxygenFlowBefore = null;

  constructor(
    private readonly rules: RulesDocument,
    private readonly protocols: ProtocolLookup,
  ) {
    this.orders = new OrdersThen(rules.start.saturationBelow.value);
  }

  get stages(): ReadonlyMap<string, StageStanding> {
    return this.cleared.standing;
  }
  get cooperation(): readonly Stated<Cooperation>[] {
    return this.cooperated.all;
  }
  get pressureDrop(): Stated<true> | null {
    return this.rising.drop;
  }
  get conflicts(): TrustView['conflicts'] {
    return this.cleared.conflicts;
  }

  session(fact: Fact): void {
    if (!isQualified(fact.author)) return;
    const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
    if (session.outcome !== 'not-done' && session.activities.includes('walk')) this.everWalked = true;
  }

  assess(fact: Fact): void {
    const data = fact.data as Assessment;
    const qualified = isQualified(fact.author);
    if (data.cooperation) this.cooperated.take(fact, data.cooperation, qualified);
    const protocol = this.protocols(data.protocol.id, data.protocol.version);
    if (!protocol) {
      this.unreadable(fact, data);
      return;
    }
    const { judged, said, rising, start } = workOut(data, {
      protocol,
      rules: this.rules,
      oxygenTarget: this.orders.oxygenTarget,
      oxygenFlowBefore: this.oxygenFlow,
      mayNotBear: this.orders.mayNotBear,
      mayNotPush: this.orders.mayNotPush,
      armsPushed: {
        left: this.parts.get(partKey('arm-pushes', 'left'))?.met ?? null,
        right: this.parts.get(partKey('arm-pushes', 'right'))?.met ?? null,
      },
    });
    this.oxygenFlow = oxygenFlowAfter(data.readings, this.oxygenFlow);
    if (start) this.start = { verdict: start, fact };
    if (rising) this.rising.take(fact, rising, protocol, this.rules.rising);
    // What was found against a stage that nobody tested lowers; it makes the check none that the tier stands on.
    const tested = judged.some((j) => j.judged.outcome !== 'not-tested' && j.record.outcome !== 'not-tested');
    if (qualified && tested) {
      this.assessment = fact;
      this.protocol = protocol;
    } else if (!this.protocol && tested) this.protocol = protocol;
    this.findings(fact, said, protocol, qualified);
    const notMet = judged.filter((j) => j.judged.outcome === 'not-met');
    const firstNotMet = Math.min(...notMet.map((j) => j.index), Number.POSITIVE_INFINITY);
    if (qualified) {
      for (const j of judged) {
        if (j.judged.outcome !== 'met') continue;
        if (j.index < firstNotMet) this.met(fact, j, protocol);
        else this.cleared.metBeyond(fact, j, protocol, `${named(protocol.stages[firstNotMet]!)} was not met`);
      }
    } else if (judged.some((j) => j.judged.outcome === 'met')) {
      this.remarks.push({
        rule: 'tier/qualified-author',
        fact,
        words: 'A check by someone who may only make it safer: what it cleared does not count',
      });
    }
    if (notMet.length > 0) this.foundLess.add(fact.id);
    for (const j of notMet) this.cleared.notMet(fact, j, protocol);
  }

  private unreadable(fact: Fact, data: Assessment): void {
    // A fall is a fall under any protocol; a check that cannot be read takes none away.
    const rising = judgeRising({
      readings: data.readings,
      symptoms: data.risingSymptoms,
      demanded: false,
      set: DEFAULT_PROTOCOL.pressureSet,
      rules: this.rules.rising,
    });
    if (rising.fall === 'yes') this.rising.take(fact, rising, DEFAULT_PROTOCOL, this.rules.rising);
    const failed = data.stages.some((s) => s.outcome === 'not-met');
    const against = failed || this.standsAgainst(data, rising);
    if (against) {
      this.cleared.clear();
      this.foundLess.add(fact.id);
    }
    this.remarks.push({
      rule: 'tier/protocol-not-found',
      fact,
      words:
        `Protocol ${data.protocol.id} version ${data.protocol.version} is not known here: ` +
        (failed
          ? 'it has a stage not met, so nothing stays cleared'
          : against
            ? 'what was found in it stands against moving, so nothing stays cleared'
            : 'the check does not count'),
    });
  }

  /** Of a check whose stages cannot be read: a symptom, a part not met, a sign or a pressure that stops. */
  private standsAgainst(data: Assessment, rising: RisingVerdict): boolean {
    const began = Math.min(...data.stages.map((s) => toEpoch(s.at)));
    const start = judgeStart({
      readings: readingsAtStart(data.readings, began),
      cooperation: data.cooperation,
      oxygenTarget: this.orders.oxygenTarget,
      oxygenFlowBefore: this.oxygenFlow,
      rules: this.rules.start,
    });
    return (
      start.word === 'not-now' ||
      rising.standNotCleared.length > 0 ||
      data.stages.some((s) => s.symptom || s.findings.some((f) => f.result === 'not-met'))
    );
  }

  private met(fact: Fact, record: JudgedRecord, protocol: Protocol): void {
    const { index, stage } = record;
    if (!this.cleared.mayClear(fact, record, protocol)) return;
    if (this.cleared.onOneLegBefore(index, protocol) && fact.author.role !== 'therapist') {
      this.remarks.push({
        rule: 'tier/one-leg-needs-therapist',
        fact,
        words: `On one leg ${named(stage)} is cleared only by a therapist`,
      });
      return;
    }
    if (stage.shows === 'walk') this.everWalked = true;
    this.cleared.met(fact, record, protocol);
  }

  private findings(
    fact: Fact,
    said: ReadonlyMap<string, boolean>,
    protocol: Protocol,
    qualified: boolean,
  ): void {
    for (const [key, met] of said) {
      const against = this.partNotMet.get(key);
      if (met && (!qualified || (against && sameTime(against, fact, protocol)))) continue;
      if (!met) this.partNotMet.set(key, fact);
      this.parts.set(key, { met, fact });
    }
  }
}

/** `after` is told how things stood after each assessment; the same object goes on changing. */
export function seenSoFar(
  facts: readonly Fact[],
  t: EpochMs,
  rules: RulesDocument,
  protocols: ProtocolLookup,
  after: (assessment: Fact, seen: Seen) => void = () => undefined,
): Seen {
  const fold = new Fold(rules, protocols);
  for (const fact of facts) {
    if (fact.occurred > t) continue;
    if (fact.type === 'assessment-recorded') {
      fold.assess(fact);
      after(fact, fold);
    } else if (fact.type === 'order-changed') fold.orders.take(fact);
    else if (fact.type === 'session-recorded') fold.session(fact);
  }
  return fold;
}
