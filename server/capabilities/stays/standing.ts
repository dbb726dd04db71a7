/**
 * Where a stay stands: when it began and ended, and in which bed the person is. Placement facts are
 * never corrected or retracted, so the stream's own order says it. Every command about a stay asks
 * here first.
 */
import type { StayRecord } from '@footboard/shared/capabilities/corrections/facts';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import type { Fact } from '@footboard/shared/capabilities/corrections/facts';
import { sayDayTime } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { stayBegun, stayEnded, stayMoved } from '@footboard/shared/capabilities/stays/events';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { PayloadOf } from '@footboard/shared/kernel/event-type';
import type { BedId, PersonId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext, StreamNeed } from '../../commanding/decider.ts';

export interface Standing {
  readonly record: StayRecord;
  readonly person: PersonId;
  readonly began: EpochMs;
  readonly ended: EpochMs | null;
  readonly bed: BedId;
  /** When the person came into this bed. */
  readonly placedAt: EpochMs;
}

export const stayStream = (stay: StayId) => streamKey('stay', stay);
/** What a command about one stay reads. */
export const readsStay = (data: { readonly stay: StayId }, ward: WardId): readonly StreamNeed[] => [
  { ward, stream: stayStream(data.stay) },
];

export function standingOf(record: StayRecord): Standing | null {
  let standing = null as Standing | null;
  for (const event of record.events.toSorted((a, b) => a.version - b.version)) {
    if (event.type === 'stay-begun') {
      const { bed, person } = event.payload as PayloadOf<typeof stayBegun>;
      standing = { record, person, began: event.occurred, ended: null, bed, placedAt: event.occurred };
    } else if (standing && event.type === 'stay-moved') {
      const { to } = event.payload as PayloadOf<typeof stayMoved>;
      standing = { ...standing, bed: to, placedAt: event.occurred };
    } else if (standing && event.type === 'stay-ended') {
      const { bed } = event.payload as PayloadOf<typeof stayEnded>;
      standing = { ...standing, bed, ended: event.occurred };
    }
  }
  return standing;
}

export const isRefusal = (answer: object): answer is Refusal => 'refused' in answer;

/** The ward's clock in words, for details of refusals. */
export const sayAt = (context: DecideContext, at: EpochMs): string =>
  context.calendar ? sayDayTime(context.calendar.zone, at) : new Date(at).toISOString();

/** The stay, open or closed. */
export function knownStay(context: DecideContext, stay: StayId, field = '/stay'): Standing | Refusal {
  return (
    standingOf(context.stay(stay)) ??
    refuse(
      'stay-unknown',
      `this ward has no stay with the id ${stay}`,
      'Open the person from the board again, and enter it there.',
      field,
    )
  );
}

/**
 * The stay that a fact is entered for: it must have been running when the fact occurred. A late entry
 * for a closed stay is taken when it occurred before the end; it never touches the next occupant.
 */
export function stayAt(context: DecideContext, stay: StayId, field = '/stay'): Standing | Refusal {
  const standing = knownStay(context, stay, field);
  if (isRefusal(standing)) return standing;
  if (context.occurred < standing.began) {
    return refuse(
      'before-stay',
      `the person arrived ${sayAt(context, standing.began)}, this is said to have happened ${sayAt(context, context.occurred)}`,
      'Check the time. What happened before belongs to the earlier stay.',
      field,
    );
  }
  if (standing.ended !== null && context.occurred >= standing.ended) {
    return refuse(
      'stay-ended',
      `the stay ended ${sayAt(context, standing.ended)}`,
      'Nothing was put on the next person in that bed. If it happened before the end, enter it again with that time.',
      field,
    );
  }
  return standing;
}

/** Facts in force that had occurred by `t`, corrections applied. */
export const factsBy = (record: StayRecord, t: EpochMs): readonly Fact[] =>
  effectiveFacts(record).facts.filter((f) => f.occurred <= t);

/** As design's "time from devices": up to 2 min ahead is a clock that runs ahead, not a future. */
export const AHEAD_TAKEN_AS_NOW = 2 * MINUTE;
