/**
 * What a board shows, as the projection computes it and the wire carries it: one row per bed. A row
 * is a pure function of the facts up to a position and of an instant; it holds instants, never ages
 * (a screen counts ages from the server's clock), and never free text, names or body weight.
 */
import { z } from 'zod';
import { bedId, eventId, opaqueId, staffId, stayId, textRef } from '../../kernel/ids.ts';
import { walkingSupport } from '../assessments/values.ts';
import { order } from '../orders/values.ts';
import { sessionEventKind } from '../sessions/values.ts';
import { fence, usualWay } from '../stays/values.ts';
import { language, panel, units } from '../wards/values.ts';
import {
  debtView,
  latelyView,
  measuresView,
  plannedView,
  proposalView,
  signView,
  todayView,
  visitView,
} from './activity-view.ts';
import { because } from './because.ts';
import {
  attachmentView,
  dueView,
  holdView,
  nextCheckView,
  startView,
  taskPlan,
  tierView,
  trustView,
} from './moving-view.ts';

const epoch = z.number().int();

export const stayView = z.strictObject({
  stay: stayId,
  /** Version of the stay's stream that this view has folded; "what I saw" for a command. */
  version: z.number().int(),
  began: epoch,
  /** Off the ward: since when, why, due back. */
  away: z.strictObject({ since: epoch, reason: z.string(), dueBack: epoch.nullable() }).nullable(),
  scope: z.strictObject({
    kind: z.enum(['staged', 'clinicians-plan', 'comfort']),
    fence: fence.nullable(),
    plan: textRef.nullable(),
  }),
  tier: tierView,
  trust: trustView,
  holds: z.array(holdView),
  orders: z.array(z.strictObject({ event: eventId, order, at: epoch })),
  /** One plan a task, in the order of the task list; null under the clinician's or comfort plan. */
  plan: z.strictObject({ day: z.array(taskPlan), night: z.array(taskPlan) }).nullable(),
  /** Shown before the plan when the tier is not known: CHECK BEFORE MOVING. */
  checkBeforeMoving: z.boolean(),
  onOwn: z.strictObject({ where: z.array(z.string()), when: z.array(z.string()), event: eventId }).nullable(),
  walkingSupport: walkingSupport.nullable(),
  cautions: z.array(z.strictObject({ words: z.string(), because: z.array(because) })),
  due: dueView,
  lastUp: z.strictObject({ at: epoch, event: eventId, activity: z.string() }).nullable(),
  /** The last thing that went wrong in a session, for the next one. */
  lastEvent: z.strictObject({ kind: sessionEventKind, at: epoch }).nullable(),
  today: todayView,
  usualWay: usualWay.nullable(),
  attachments: z.array(attachmentView),
  firstTimeUpPending: z.boolean(),
  /** Null under the clinician's or comfort plan. */
  mayStart: startView.nullable(),
  nextCheck: nextCheckView.nullable(),
  earlyWarning: z
    .strictObject({ score: z.number(), anyThree: z.boolean(), at: epoch, event: eventId })
    .nullable(),
  proposal: proposalView.nullable(),
  debt: debtView.nullable(),
  signs: z.array(signView),
  /** Null while walking measures are off for this stay. */
  measures: measuresView.nullable(),
  /** In the chair since, as the last session left it, and back in bed by; null when in bed or not recorded. */
  chair: z.strictObject({ since: epoch, backBy: epoch.nullable(), event: eventId }).nullable(),
  /** When the toilet was reached on this ward day, oldest first. */
  toilet: z.array(epoch),
  /** Infection steps apply in the room. */
  isolation: z.boolean(),
  leaving: z.strictObject({ at: epoch, event: eventId }).nullable(),
  /** Text by reference: only the page of a stay and the bedside read it. */
  therapistLine: z.strictObject({ line: textRef, by: staffId, at: epoch, event: eventId }).nullable(),
  visit: visitView.nullable(),
  /** Of the accepted plan of this ward day, the earliest first; left out where there is none. On walls the next alone. */
  planned: z.array(plannedView).optional(),
  /** Null on walls. */
  lately: latelyView.nullable(),
  /** What walls may say of this stay: as much as the ward's walls say of everybody, or nothing. */
  wall: z.enum(['as-ward', 'nothing']),
  /**
   * How much this row tells: all of it, what a wall may say within the ward (`bed-only`) or where
   * visitors pass, or only that the answer is at the bedside. What is left out is empty here, which
   * says nothing about the person. Made by rules/for-wall.ts; the projection knows only `whole`.
   */
  shown: z.enum(['whole', 'bed-only', 'visitors', 'ask-at-the-bedside']),
});
export type StayView = z.infer<typeof stayView>;

export const bedView = z.strictObject({
  bed: bedId,
  label: z.string(),
  bay: z.string(),
  ceilingTrack: z.boolean(),
  state: z.enum(['empty', 'occupied', 'away']),
  /** Who looks after whoever is in this bed in this shift; null when nobody is named. */
  carers: z.strictObject({ nurse: staffId.nullable(), aide: staffId.nullable() }).nullable(),
  stay: stayView.nullable(),
});
export type BedView = z.infer<typeof bedView>;

export const boardView = z.strictObject({
  ward: z.string(),
  name: z.string(),
  zone: z.string(),
  wardDayFrom: z.string(),
  nightFrom: z.string(),
  nightTo: z.string(),
  /** True between nightFrom and nightTo on the ward's clock: the night plan applies. */
  night: z.boolean(),
  panel,
  units,
  language,
  /** How many people are named for beds in this shift; null when nobody is. */
  peopleOn: z.number().int().nullable(),
  /** Lifts that can be used now, of those the ward has; null when the ward keeps no list of lifts. */
  lifts: z
    .strictObject({
      usable: z.number().int(),
      /** Somebody has it. */
      inUse: z.number().int(),
      /** Nobody has said lately how it is: not counted as usable. */
      unknown: z.number().int(),
      all: z.number().int(),
    })
    .nullable(),
  /**
   * The accepted plan of this ward day in numbers; null or left out where there is none, and on walls.
   * `unplaced` is null where it was not said.
   */
  dayPlan: z
    .strictObject({
      at: epoch,
      by: staffId,
      /** Still ahead, with those that somebody has taken, and of these held by now. */
      ahead: z.number().int(),
      held: z.number().int(),
      /** Their time is over and nothing was recorded. */
      passed: z.number().int(),
      /** First checks of people who are expected and have no stay yet, the earliest first; left out where there are none. */
      arrivals: z
        .array(
          z.strictObject({
            visit: opaqueId,
            expected: opaqueId,
            from: epoch,
            until: epoch,
            crew: z.array(staffId),
          }),
        )
        .optional(),
      unplaced: z.number().int().nullable(),
    })
    .nullable()
    .optional(),
  beds: z.array(bedView),
});
export type BoardView = z.infer<typeof boardView>;
