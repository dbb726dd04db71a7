/**
 * How each stage stands after the checks so far: cleared, not met, or taken back. A stage not met takes back what was
 * cleared beyond it; of two findings of the same time the safer stands and the dispute is kept.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import type { TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { StageRecord } from '../values.ts';
import type { JudgedStage } from './judge-stage.ts';
import type { Protocol, ProtocolStage } from './protocol.ts';
import { STAGE_MEANINGS } from './protocol.ts';
import type { StageStanding } from './stage-standing.ts';
import { heldMost, holdsMore, sameTime, stageKey, stageTime } from './stage-standing.ts';
import type { JudgedRecord } from './work-out.ts';

export const named = (stage: ProtocolStage): string => stage.word ?? stage.id;

export class StagesSeen {
  /** By stage key. */
  readonly standing = new Map<string, StageStanding>();
  readonly #lastNotMet = new Map<string, Fact>();
  readonly #disputes = new Map<string, TrustView['conflicts']>();

  get conflicts(): TrustView['conflicts'] {
    return [...this.#disputes.values()].flat();
  }

  /** Nothing stays cleared; what was found not met stays so. */
  clear(): void {
    for (const [key, { outcome }] of this.standing) if (outcome !== 'not-met') this.standing.delete(key);
  }

  /** Whether a stage before this one is cleared on one leg. */
  onOneLegBefore(index: number, protocol: Protocol): boolean {
    return protocol.stages.slice(0, index).some((before) => {
      const standing = this.standing.get(stageKey(protocol, before));
      return standing?.outcome === 'met' && standing.oneLeg !== null;
    });
  }

  /** False where a finding of the same time, on it or below it, stands against it: only how it was held counts then. */
  mayClear(fact: Fact, { index, stage, record, at, judged }: JudgedRecord, protocol: Protocol): boolean {
    if (this.#lastNotMet.size === 0) return true;
    const key = stageKey(protocol, stage);
    for (let i = 0; i <= index; i++) {
      const beforeKey = stageKey(protocol, protocol.stages[i]!);
      const safer = this.#lastNotMet.get(beforeKey);
      if (safer && safer.id !== fact.id && sameTime(safer, fact, protocol)) {
        if (beforeKey === key) this.#dispute(key, stage, safer, fact);
        const why = `to be cleared again: ${named(protocol.stages[i]!)} was not met since`;
        this.#rememberHold(key, standingOf('taken-back', fact, record, at, judged), why);
        return false;
      }
    }
    return true;
  }

  met(fact: Fact, { index, stage, record, at, judged }: JudgedRecord, protocol: Protocol): void {
    const key = stageKey(protocol, stage);
    const now = standingOf('met', fact, record, at, judged);
    const was = this.standing.get(key);
    const twice = was?.outcome === 'met' && was.fact.id !== fact.id && sameTime(was.fact, fact, protocol);
    const stands = twice ? heldMost(was, now) : now;
    this.standing.set(key, stands);
    if (!twice) this.#disputes.delete(key);
    if (stands.oneLeg !== null && was?.oneLeg !== stands.oneLeg) {
      this.#takeBackBeyond(index, stage, protocol, `${named(stage)} is on one leg since`);
    }
  }

  /** Met in a check in which an earlier stage was not: it is taken back at once, how it was held is not. */
  metBeyond(fact: Fact, { stage, record, at, judged }: JudgedRecord, protocol: Protocol, why: string): void {
    this.#rememberHold(
      stageKey(protocol, stage),
      standingOf('taken-back', fact, record, at, judged),
      `to be cleared again: ${why}`,
    );
  }

  notMet(fact: Fact, { index, stage, record, at, judged }: JudgedRecord, protocol: Protocol): void {
    const key = stageKey(protocol, stage);
    const before = this.#lastNotMet.get(key);
    if (before && before.id !== fact.id && !sameTime(before, fact, protocol)) this.#disputes.delete(key);
    const stood = this.standing.get(key);
    if (stood?.outcome === 'met' && stood.fact.id !== fact.id && sameTime(stood.fact, fact, protocol)) {
      this.#dispute(key, stage, fact, stood.fact);
    }
    this.#lastNotMet.set(key, fact);
    const now = standingOf('not-met', fact, record, at, judged);
    // How the person was held before is not forgotten by failing, nor put down to a lesser hold.
    this.standing.set(key, {
      ...now,
      securedWith: holdsMore(now.securedWith, stood?.securedWith ?? null),
      people: Math.max(now.people, stood?.people ?? 0),
    });
    this.#takeBackBeyond(index, stage, protocol, `${named(stage)} was not met since`);
  }

  /** A stage cleared at the time of a finding against it, or below it: it does not count, how it was held does. */
  #rememberHold(key: string, held: StageStanding, why: string): void {
    const was = this.standing.get(key);
    const more = {
      securedWith: holdsMore(held.securedWith, was?.securedWith ?? null),
      people: Math.max(held.people, was?.people ?? 0),
    };
    const how = was?.how === 'secured' ? 'secured' : held.how;
    this.standing.set(
      key,
      was?.outcome === 'not-met' ? { ...was, ...more } : { ...held, ...more, how, reasons: [why] },
    );
  }

  /** What was not met beyond it stays not met; only what was cleared is taken back. */
  #takeBackBeyond(index: number, stage: ProtocolStage, protocol: Protocol, why: string): void {
    const beyond = protocol.stages.slice(index + 1).map((later) => stageKey(protocol, later));
    if (stage.shows) beyond.push(...STAGE_MEANINGS.slice(STAGE_MEANINGS.indexOf(stage.shows) + 1));
    for (const later of beyond) {
      const was = this.standing.get(later);
      if (was?.outcome !== 'met') continue;
      this.standing.set(later, { ...was, outcome: 'taken-back', reasons: [`to be cleared again: ${why}`] });
    }
  }

  #dispute(key: string, stage: ProtocolStage, safer: Fact, other: Fact): void {
    const list = this.#disputes.get(key) ?? [];
    if (list.some((d) => d.safer === safer.id && d.other === other.id)) return;
    this.#disputes.set(key, [
      ...list,
      {
        question: `tier/${key}`,
        safer: safer.id,
        other: other.id,
        words: `Two checks of the same time disagree on ${named(stage)}: not met stands until it is checked again`,
      },
    ]);
  }
}

const standingOf = (
  outcome: StageStanding['outcome'],
  fact: Fact,
  record: StageRecord,
  at: EpochMs,
  judged: JudgedStage,
): StageStanding => ({
  outcome,
  how: record.how,
  securedWith: record.securedWith ?? null,
  people: record.people,
  oneLeg: judged.oneLeg,
  reasons: judged.reasons,
  at: stageTime(at, fact),
  fact,
});
