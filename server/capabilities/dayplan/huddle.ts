/** The huddle's own entries: held, agreed, closed; who looks after which bed; who is expected. */
import * as commands from '@footboard/shared/capabilities/dayplan/commands';
import * as events from '@footboard/shared/capabilities/dayplan/events';
import { foldHuddle } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import type { HuddleState } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import type { Role } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { toEpoch, toIso } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext, StreamNeed } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { isRefusal, readsStay, sayAt, standingOf, stayAt, stayStream } from '../stays/standing.ts';
import { knownBed } from '../wards/beds.ts';

const wardStream = (ward: WardId) => streamKey('ward', ward);
const readsWard = (_data: unknown, ward: WardId): readonly StreamNeed[] => [
  { ward, stream: wardStream(ward) },
];
const huddleIn = (context: DecideContext): HuddleState =>
  foldHuddle(context.slice(wardStream(context.wardId)).events);

/** @param whom "the owner" */
function unknownStaff(context: DecideContext, staff: StaffId, whom: string, field: string): Refusal | null {
  if (context.ward!.staff.get(staff)?.active) return null;
  return refuse(
    'staff-unknown',
    `${whom} is not on the staff list, or no longer active`,
    'Choose somebody from the staff list.',
    field,
  );
}

/** A time that is agreed lies after the moment it is agreed at; a late entry's may have passed by now. */
function notAhead(context: DecideContext, at: string, remedy: string, field: string): Refusal | null {
  if (toEpoch(at) > context.occurred) return null;
  return refuse(
    'time-not-ahead',
    `${sayAt(context, toEpoch(at))} is not after ${sayAt(context, context.occurred)}`,
    remedy,
    field,
  );
}

const holdHuddle = decider({
  command: commands.holdHuddle,
  reads: readsWard,
  decide: (_data, context) => accept(newEvent(events.huddleHeld, wardStream(context.wardId), {})),
});

const agreeAction = decider({
  command: commands.agreeAction,
  reads: (data, ward) => [
    ...(data.stay === undefined ? [] : readsStay({ stay: data.stay }, ward)),
    ...readsWard(data, ward),
  ],
  decide: ({ note, ...data }, context) => {
    if (data.stay !== undefined) {
      const standing = stayAt(context, data.stay);
      if (isRefusal(standing)) return standing;
    }
    if (huddleIn(context).closed.has(data.action)) {
      return refuse(
        'action-closed',
        'this action was closed, so it gets no new owner or time',
        'Agree a new action if it is needed again.',
        '/action',
      );
    }
    const subject =
      data.stay === undefined ? (`staff/${data.owner}` as const) : (`stay/${data.stay}` as const);
    return (
      unknownStaff(context, data.owner, 'the owner', '/owner') ??
      notAhead(context, data.by, 'Give a later time to do it by.', '/by') ??
      accept(
        newEvent(events.actionAgreed, wardStream(context.wardId), {
          ...data,
          ...(note === undefined ? {} : { note: context.keep(subject, note) }),
        }),
      )
    );
  },
});

const closeAction = decider({
  command: commands.closeAction,
  reads: readsWard,
  decide: (data, context) => {
    const { actions, closed } = huddleIn(context);
    if (closed.has(data.action)) {
      return refuse(
        'action-closed',
        'somebody has closed this action already',
        'Nothing to do. Agree a new action if it is needed again.',
        '/action',
      );
    }
    if (!actions.has(data.action)) {
      return refuse(
        'action-unknown',
        'nothing was agreed here under that id',
        'Open the huddle again and choose one of the actions shown.',
        '/action',
      );
    }
    return accept(newEvent(events.actionClosed, wardStream(context.wardId), data));
  },
});

const NURSES: ReadonlySet<Role> = new Set(['nurse', 'charge-nurse', 'manager']);

const nameCarers = decider({
  command: commands.nameCarers,
  reads: readsWard,
  decide: (data, context) => {
    const ward = context.ward!;
    const seen = new Set<string>();
    for (const [i, { bed, nurse, aide }] of data.beds.entries()) {
      const known = knownBed(ward, bed, `/beds/${i}/bed`);
      if ('refused' in known) return known;
      if (seen.has(bed)) {
        return refuse(
          'bed-named-twice',
          `bed ${known.label} stands twice in the list`,
          'Name each bed once, with its nurse and its aide together.',
          `/beds/${i}/bed`,
        );
      }
      seen.add(bed);
      const nobody =
        (nurse && unknownStaff(context, nurse, `the nurse of bed ${known.label}`, `/beds/${i}/nurse`)) ||
        (aide && unknownStaff(context, aide, `the aide of bed ${known.label}`, `/beds/${i}/aide`));
      if (nobody) return nobody;
      // Who is named decides nobody's rights; but a bed that reads as having a nurse must have one.
      if (nurse && !NURSES.has(ward.staff.get(nurse)!.role)) {
        return refuse(
          'carer-no-nurse',
          `whoever is named as the nurse of bed ${known.label} is no nurse on the staff list`,
          'Name a nurse, or name this person as the aide.',
          `/beds/${i}/nurse`,
        );
      }
    }
    const passed =
      data.until === undefined
        ? null
        : notAhead(
            context,
            data.until,
            'Give a later time, or leave it out for the end of the shift.',
            '/until',
          );
    return (
      passed ??
      accept(
        newEvent(events.carersNamed, wardStream(context.wardId), {
          until: data.until ?? toIso(context.calendar!.shift(context.occurred).to),
          beds: data.beds,
        }),
      )
    );
  },
});

const expectArrival = decider({
  command: commands.expectArrival,
  reads: (data, ward) => [
    ...readsWard(data, ward),
    ...(data.previous === undefined
      ? []
      : [{ ward: data.previous.ward, stream: stayStream(data.previous.stay) }]),
  ],
  decide: (data, context) => {
    const { expectedIds } = huddleIn(context);
    if (expectedIds.has(data.expected)) {
      return refuse(
        'expected-known',
        'an expected arrival with that id was entered before',
        'Give it a new id; close the earlier one if it does not hold any more.',
        '/expected',
      );
    }
    const bed = data.bed === undefined ? null : knownBed(context.ward!, data.bed, '/bed');
    if (bed && 'refused' in bed) return bed;
    const late = notAhead(
      context,
      data.at,
      'Give the time the person is expected now; if they are here, record the arrival at the bed.',
      '/at',
    );
    if (late) return late;
    if (data.previous !== undefined) {
      const { ward, stay } = data.previous;
      const { events: before, version } = context.slice(stayStream(stay), ward);
      if (!standingOf({ stay, version, events: before })) {
        return refuse(
          'stay-unknown',
          `ward ${ward} has no stay with the id ${stay}`,
          'Choose the person from the board of the ward they come from, or leave it out.',
          '/previous/stay',
        );
      }
    }
    return accept(newEvent(events.arrivalExpected, wardStream(context.wardId), data));
  },
});

const closeExpectedArrival = decider({
  command: commands.closeExpectedArrival,
  reads: readsWard,
  decide: (data, context) =>
    huddleIn(context).expected.has(data.expected)
      ? accept(newEvent(events.expectedArrivalClosed, wardStream(context.wardId), data))
      : refuse(
          'expected-unknown',
          'nobody is expected under that id, or it is closed',
          'Open the page again and choose one of those who are expected.',
          '/expected',
        ),
});

export const huddleDeciders = underPolicy([
  holdHuddle,
  agreeAction,
  closeAction,
  nameCarers,
  expectArrival,
  closeExpectedArrival,
]);
