/** How one stage stands, and how two findings on it are told apart and put together. */
import type { EpochMs } from '../../../kernel/times.ts';
import { MINUTE } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Side, StageRecord } from '../values.ts';
import type { Protocol, ProtocolStage } from './protocol.ts';

/** How a stage stands after the latest finding on it. */
export interface StageStanding {
  /** `taken-back`: it was met, and a stage before it has not been met since. */
  readonly outcome: 'met' | 'not-met' | 'taken-back';
  readonly how: 'free' | 'secured';
  readonly securedWith: StageRecord['securedWith'] | null;
  readonly people: number;
  readonly oneLeg: Side | null;
  readonly reasons: readonly string[];
  readonly at: EpochMs;
  readonly fact: Fact;
}

export const stageKey = (protocol: Protocol, stage: ProtocolStage): string =>
  stage.shows ?? `${protocol.id}/${stage.id}`;

/** Whether two findings are of the same time, so that neither is the later one. */
export const sameTime = (a: Fact, b: Fact, protocol: Protocol): boolean => {
  const about = a.precision === 'about' || b.precision === 'about';
  const minutes = about ? protocol.toldApart.aboutMinutes : protocol.toldApart.exactMinutes;
  return Math.abs(a.occurred - b.occurred) < minutes * MINUTE;
};

const HELD_BY: readonly StageStanding['securedWith'][] = [
  null,
  'raised-bed',
  'two-people',
  'standing-aid',
  'sling',
];
type HeldBy = StageStanding['securedWith'];
/** Of two ways of holding the person the one that holds more. */
export const holdsMore = (a: HeldBy, b: HeldBy): HeldBy => (HELD_BY.indexOf(a) > HELD_BY.indexOf(b) ? a : b);

/** Of two checks of the same time that both cleared a stage, what held the person more in either. */
export function heldMost(a: StageStanding, b: StageStanding): StageStanding {
  const more = HELD_BY.indexOf(a.securedWith) > HELD_BY.indexOf(b.securedWith) ? a : b;
  return { ...more, people: Math.max(a.people, b.people), oneLeg: a.oneLeg ?? b.oneLeg };
}

export const stageTime = (at: EpochMs, fact: Fact): EpochMs => (at <= fact.recorded ? at : fact.occurred);
