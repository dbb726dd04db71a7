/**
 * Who goes to see the person next: taken, handed over, given back. Two people never have the same
 * visit; the second is told who has it and until when, and what to do.
 */
import * as commands from '@footboard/shared/capabilities/dayplan/commands';
import { visitGivenBack, visitHandedOver, visitTaken } from '@footboard/shared/capabilities/dayplan/events';
import { goes, visitAt } from '@footboard/shared/capabilities/dayplan/rules/visits';
import type { Visit } from '@footboard/shared/capabilities/dayplan/rules/visits';
import { isQualified } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { StaffId, StayId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE, toEpoch, toIso } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { mayUse, roleWords, underPolicy } from '../people/policy.ts';
import { actedOn } from './acted.ts';
import { bookedThen, overlaps, readsBookings, visitsOf } from './bookings.ts';
import { factsBy, isRefusal, readsStay, sayAt, stayAt, stayStream } from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';

/** How long a visit is somebody's when no end was given, how long at most, and how far ahead one may be taken. */
const USUAL = 30 * MINUTE;
const LONGEST = 4 * HOUR;
const AHEAD = 18 * HOUR;
/** Less than this before the next booking is no time for a visit. */
const SHORTEST = 5 * MINUTE;

interface Times {
  readonly from: EpochMs;
  readonly until: EpochMs;
}

/** What a visit's times may be, said at `now`. `at` is the JSON pointer of what holds them. */
export function visitTimes(context: DecideContext, { from, until }: Times, at = ''): Refusal | null {
  const wrong = (detail: string, remedy: string, field: string): Refusal =>
    refuse('visit-times', detail, remedy, `${at}/${field}`);
  if (until <= from) {
    return wrong(
      `the visit ends ${sayAt(context, until)}, not after it begins ${sayAt(context, from)}`,
      'Give an end after the beginning, or leave both out to go now.',
      'until',
    );
  }
  if (until - from > LONGEST) {
    return wrong(
      'a visit is 4 hours at most',
      'Give an earlier end; take it again if you need longer.',
      'until',
    );
  }
  if (from > context.now + AHEAD) {
    return wrong(
      `the visit begins ${sayAt(context, from)}, more than 18 hours ahead`,
      'Take it closer to its time.',
      'from',
    );
  }
  return null;
}

/** Whoever is asked to go must be on the list and of a role that goes to the bedside. */
export function canGo(context: DecideContext, staff: StaffId, field: string): Refusal | null {
  const member = context.ward!.staff.get(staff);
  if (member?.active && mayUse(commands.takeVisit.name, member.role)) return null;
  const detail = member?.active
    ? `a visit is not for the role ${roleWords(member.role)}`
    : 'that person is not on the staff list, or no longer active';
  return refuse('staff-unknown', detail, 'Choose somebody from the list who goes to the bedside.', field);
}

function onTheList(context: DecideContext, staff: StaffId, field: string): Refusal | null {
  if (context.ward!.staff.get(staff)?.active) return null;
  const detail = 'that person is not on the staff list, or no longer active';
  return refuse('staff-unknown', detail, 'Choose somebody from the list.', field);
}

/** Nobody is visited whose stay is over, even by an entry of before its end. */
export function openStay(context: DecideContext, stay: Parameters<typeof stayAt>[1]): Standing | Refusal {
  const standing = stayAt(context, stay);
  if (isRefusal(standing) || standing.ended === null) return standing;
  return refuse(
    'stay-ended',
    `the stay ended ${sayAt(context, standing.ended)}`,
    'Nothing to do: nobody is to be visited. Choose the next person from the list.',
    '/stay',
  );
}

const whoHasIt = (context: DecideContext, { by, until }: Visit): string => {
  const role = context.ward!.staff.get(by)?.role;
  return `${role ? `${anOf(role)} ${roleWords(role)}` : 'somebody'} has it until ${sayAt(context, until)}`;
};
const anOf = (word: string): string => (/^[aeiou]/.test(word) ? 'an' : 'a');

/** Whoever goes at once keeps the time until their next booking; one that begins sooner comes first. */
function ownTimes(
  context: DecideContext,
  { stay, from: given, until }: { stay: StayId; from?: string | undefined; until?: string | undefined },
  { from, until: usual }: Times,
): Times | Refusal {
  const own = visitsOf(context, context.author.staff, stay);
  if (given !== undefined || until !== undefined) {
    const clash = own.find(
      (v) => (given !== undefined || v.from > context.now) && overlaps(v, { from, until: usual }),
    );
    return clash
      ? bookedThen(context, clash, given === undefined ? '/until' : '/from')
      : { from, until: usual };
  }
  const next = own.find((v) => v.from > from && v.from < usual);
  if (!next) return { from, until: usual };
  return next.from - from < SHORTEST ? bookedThen(context, next, '/from') : { from, until: next.from };
}

const takeVisit = decider({
  command: commands.takeVisit,
  reads: readsStay,
  further: readsBookings,
  restsOnAll: true,
  decide: (data, context) => {
    const standing = openStay(context, data.stay);
    if (isRefusal(standing)) return standing;
    const { author, now, occurred, fromOutbox } = context;
    const known = standing.record.events.some(
      (e) => e.type === visitTaken.name && (e.payload as { visit: string }).visit === data.visit,
    );
    if (known) {
      return refuse(
        'visit-known',
        'this stay already has a visit with that id',
        'Give a new visit a new id.',
        '/visit',
      );
    }
    if (data.second === author.staff) {
      return refuse(
        'second-is-first',
        'you go yourself; the second person is somebody else',
        'Choose somebody else as the second person, or leave it out.',
        '/second',
      );
    }
    const second = data.second === undefined ? null : canGo(context, data.second, '/second');
    const asked = data.asked === undefined ? null : onTheList(context, data.asked, '/asked');
    if (second ?? asked) return (second ?? asked)!;
    // What waited on a device began when it was tapped; what is sent at once begins by the server's clock.
    const from = data.from === undefined ? (fromOutbox ? occurred : now) : toEpoch(data.from);
    const said = data.until === undefined ? from + USUAL : toEpoch(data.until);
    const faulty = visitTimes(context, { from, until: said });
    if (faulty) return faulty;
    if (said <= now) {
      return refuse(
        'visit-times',
        `the visit would be over: it ends ${sayAt(context, said)}, it is ${sayAt(context, now)}`,
        'Take it again if you still go.',
        '/until',
      );
    }
    const taken = visitNow(context, standing);
    if (taken && taken.by !== author.staff) {
      return refuse(
        'visit-taken',
        whoHasIt(context, taken),
        'Choose the next person on the list, or ask them to hand it over to you.',
        '/stay',
      );
    }
    const times = ownTimes(context, data, { from, until: said });
    if (isRefusal(times)) return times;
    const busy = data.second && visitsOf(context, data.second, data.stay).find((v) => overlaps(v, times));
    if (busy) return bookedThen(context, busy, '/second');
    return accept(
      newEvent(visitTaken, stayStream(data.stay), {
        visit: data.visit,
        by: author.staff,
        ...(data.second === undefined ? {} : { second: data.second }),
        from: toIso(times.from),
        until: toIso(times.until),
        ...(data.asked === undefined ? {} : { asked: data.asked }),
      }),
      ...actedOn('taken', data),
    );
  },
});

const visitNow = (context: DecideContext, { record }: Standing): Visit | null =>
  visitAt(factsBy(record, context.now), context.now);

/** The visit by its id, while somebody has it. */
export function visitThen(context: DecideContext, standing: Standing, id: string): Visit | Refusal {
  const visit = visitNow(context, standing);
  if (visit && visit.visit === id && visit.since <= context.occurred) return visit;
  return refuse(
    'visit-unknown',
    visit ? whoHasIt(context, visit) : 'nobody has it now: it ended, or was given back',
    'Look at the list again; take it if you go.',
    '/visit',
  );
}

/** The same for those who may give it away: who goes, or a qualified person. */
export function ownVisit(context: DecideContext, standing: Standing, id: string): Visit | Refusal {
  const visit = visitThen(context, standing, id);
  if (isRefusal(visit)) return visit;
  if (goes(visit, context.author.staff) || isQualified(context.author)) return visit;
  return refuse(
    'visit-taken',
    whoHasIt(context, visit),
    'Ask them to hand it over, or ask the charge nurse.',
    '/visit',
  );
}

const handOverVisit = decider({
  command: commands.handOverVisit,
  reads: readsStay,
  further: readsBookings,
  restsOnAll: true,
  decide: (data, context) => {
    const standing = openStay(context, data.stay);
    if (isRefusal(standing)) return standing;
    const visit = ownVisit(context, standing, data.visit);
    if (isRefusal(visit)) return visit;
    if (visit.by === data.to) return accept();
    const cannot = canGo(context, data.to, '/to');
    if (cannot) return cannot;
    // Somebody at another bed now may take over what they reach next; two bookings cannot be kept.
    const { now } = context;
    const clash = visitsOf(context, data.to, data.stay).find(
      (v) => (visit.from > now || v.from > now) && overlaps(v, visit),
    );
    if (clash) return bookedThen(context, clash, '/to');
    return accept(
      newEvent(visitHandedOver, stayStream(data.stay), { visit: data.visit, to: data.to }),
      ...actedOn('handed-over', data),
    );
  },
});

const giveBackVisit = decider({
  command: commands.giveBackVisit,
  reads: readsStay,
  decide: (data, context) => {
    const standing = openStay(context, data.stay);
    if (isRefusal(standing)) return standing;
    const visit = ownVisit(context, standing, data.visit);
    if (isRefusal(visit)) return visit;
    return accept(
      newEvent(visitGivenBack, stayStream(data.stay), { visit: data.visit, reason: data.reason }),
      ...actedOn('given-back', data),
    );
  },
});

export const deciders = underPolicy([takeVisit, handOverVisit, giveBackVisit]);
