/** Who is booked when: the visits of everybody on the ward, read for a decision about one of them. */
import { goes, visitAt } from '@footboard/shared/capabilities/dayplan/rules/visits';
import type { Visit } from '@footboard/shared/capabilities/dayplan/rules/visits';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId, StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { occupantOf } from '../../commanding/context.ts';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext, Decider } from '../../commanding/decider.ts';
import { factsBy, sayAt } from '../stays/standing.ts';

interface Times {
  readonly from: EpochMs;
  readonly until: EpochMs;
}

/** Who lies in the ward's beds, then their streams. */
export const readsBookings: NonNullable<Decider['further']> = [
  (_data, ward, read) =>
    (read.ward(ward).state?.beds ?? []).map(({ bed }) => ({ ward, stream: streamKey('bed', bed) })),
  (_data, ward, read) =>
    (read.ward(ward).state?.beds ?? []).flatMap(({ bed }) => {
      const stay = occupantOf(read.slice(ward, streamKey('bed', bed)).events);
      return stay ? [{ ward, stream: streamKey('stay', stay) }] : [];
    }),
];

/** Visits of everybody else on the ward in which this person goes, first or second, by their beginning. */
export function visitsOf(context: DecideContext, staff: StaffId, besides: StayId): readonly Visit[] {
  return context
    .ward!.beds.flatMap(({ bed }) => {
      const stay = context.occupant(bed);
      if (stay === null || stay === besides) return [];
      const visit = visitAt(factsBy(context.stay(stay), context.now), context.now);
      return visit && goes(visit, staff) ? [visit] : [];
    })
    .toSorted((a, b) => a.from - b.from);
}

export const overlaps = (a: Times, b: Times): boolean => a.from < b.until && b.from < a.until;

/** The refusal for somebody who is booked elsewhere; `field` is the JSON pointer of who or when. */
export const bookedThen = (context: DecideContext, { from, until }: Times, field: string): Refusal =>
  refuse(
    'booked-then',
    `there is another visit ${sayAt(context, from)} to ${sayAt(context, until)}`,
    'Choose another time or another person, or give the other visit back first.',
    field,
  );
