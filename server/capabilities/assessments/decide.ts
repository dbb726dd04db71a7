/** Staged checks, a nurse's confirm, and "seen walking" on arrival. */
import { checkAssessment } from '@footboard/shared/capabilities/assessments/rules/check-record';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { protocolLookup } from '@footboard/shared/capabilities/assessments/rules/protocol';
import * as commands from '@footboard/shared/capabilities/assessments/commands';
import * as events from '@footboard/shared/capabilities/assessments/events';
import { earlyWarningRises } from '@footboard/shared/capabilities/assessments/rules/early-warning';
import { CONFIRM_ANSWERS, triggerOf } from '@footboard/shared/capabilities/orders/rules/triggers';
import type { Fact } from '@footboard/shared/capabilities/corrections/facts';
import { sessionsBeyondStop } from '@footboard/shared/capabilities/sessions/rules/what-went-wrong';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { DataOf, Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import type { EventId } from '@footboard/shared/kernel/ids';
import { HOUR, toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { tierAt, viewAt } from '../stays/judged.ts';
import {
  AHEAD_TAKEN_AS_NOW,
  factsBy,
  isRefusal,
  readsStay,
  sayAt,
  stayAt,
  stayStream,
} from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';
import { signDeciders } from './decide-signs.ts';

type Check = DataOf<typeof commands.recordAssessment>;

/** What a check says against its protocol, its stay and the clock. `at` is the JSON pointer of the check. */
export function checkFaults(
  context: DecideContext,
  standing: Standing,
  check: Check,
  at: string,
): Refusal | null {
  const { id, version } = check.protocol;
  const protocol = protocolLookup(context.ward!.protocols)(id, version);
  if (!protocol) {
    const newest = context.ward!.protocols.at(-1) ?? DEFAULT_PROTOCOL;
    return refuse(
      'protocol-unknown',
      `this ward has no protocol ${id} version ${version}`,
      `Load the page again and use ${newest.id} version ${newest.version}.`,
      `${at}/protocol`,
    );
  }
  const faulty = checkAssessment(protocol, check, rulesOf(context.ward!).rising);
  if (faulty) return faulty.field === undefined ? faulty : { ...faulty, field: at + faulty.field };
  const timed = [
    ...check.stages.map((s, i) => ({ at: toEpoch(s.at), field: `/stages/${i}/at`, what: s.stage })),
    ...check.readings.map((r, i) => ({ at: toEpoch(r.at), field: `/readings/${i}/at`, what: r.kind })),
  ];
  for (const one of timed) {
    const outside =
      one.at > context.now + AHEAD_TAKEN_AS_NOW
        ? `it is ${sayAt(context, context.now)}`
        : one.at < standing.began
          ? `the person arrived ${sayAt(context, standing.began)}`
          : standing.ended !== null && one.at >= standing.ended
            ? `the stay ended ${sayAt(context, standing.ended)}`
            : null;
    if (outside === null) continue;
    return refuse(
      'stage-time-outside-stay',
      `${one.what} is timed ${sayAt(context, one.at)}; ${outside}`,
      'Correct the time; check the clock of this device.',
      at + one.field,
    );
  }
  return null;
}

const notStaged = (view: StayView): Refusal | null =>
  view.scope.kind === 'staged'
    ? null
    : refuse(
        'no-staged-check',
        view.scope.kind === 'comfort'
          ? 'a comfort plan stands: no staged check is done'
          : `the clinician's own plan stands (${(view.scope.fence ?? 'as written').replaceAll('-', ' ')})`,
        'Follow the plan as written. If it no longer applies, a nurse or therapist sets "the staged check applies" first.',
        '/stay',
      );

/** Each answer names a trigger of this stay that came before the check. One answered already may be named again. */
function answersFaults(
  context: DecideContext,
  standing: Standing,
  view: StayView,
  answers: readonly EventId[],
): Refusal | null {
  for (const [i, answer] of answers.entries()) {
    if (view.trust.openTriggers.some((open) => open.event === answer)) continue;
    const named = standing.record.events.find((e) => e.id === answer);
    if (!named || !(triggerOf(asFact(named)) || byTheLimits(context, standing).has(answer))) {
      return refuse(
        'answer-not-a-trigger',
        'the entry answered is not a trigger of this stay',
        'Choose from the triggers shown as open on the stay page.',
        `/answers/${i}`,
      );
    }
    if (named.occurred > context.occurred) {
      return refuse(
        'answer-before-trigger',
        `the trigger came ${sayAt(context, named.occurred)}, after this check`,
        'Leave it out: the trigger stays open until a check after it.',
        `/answers/${i}`,
      );
    }
  }
  return null;
}

const asFact = (event: LoggedEvent): Fact => ({ ...event, data: event.payload }) as unknown as Fact;

/** Entries that only the ward's limits make triggers: early-warning scores, sessions beyond a stop limit. */
function byTheLimits(context: DecideContext, { record }: Standing): ReadonlySet<EventId> {
  const rules = rulesOf(context.ward!);
  const facts = factsBy(record, Infinity);
  return new Set([...earlyWarningRises(facts, rules).keys(), ...sessionsBeyondStop(facts, rules).keys()]);
}

const recordAssessment = decider({
  command: commands.recordAssessment,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const view = viewAt(context, standing, context.occurred);
    const faults =
      notStaged(view) ??
      checkFaults(context, standing, data, '') ??
      answersFaults(context, standing, view, data.answers);
    if (faults) return faults;
    const { stay, note, ...check } = data;
    return accept(
      newEvent(events.assessmentRecorded, stayStream(stay), {
        ...check,
        answers: [...new Set(check.answers)],
        ...(note === undefined ? {} : { note: context.keep(`stay/${stay}`, note) }),
      }),
    );
  },
});

const confirmPlan = decider({
  command: commands.confirmPlan,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const view = viewAt(context, standing, context.occurred);
    const outOfScope = notStaged(view);
    if (outOfScope) return outOfScope;
    const { assessment } = tierAt(context, standing, context.occurred);
    if (!assessment || view.trust.state === 'not-known') {
      return refuse(
        'nothing-to-confirm',
        'no staged check of this stay stands behind a plan',
        'Do a staged check; until then the plan asks for a check before moving.',
        '/stay',
      );
    }
    const serious = view.trust.openTriggers.find((open) => !CONFIRM_ANSWERS.has(open.kind));
    if (serious) {
      return refuse(
        'trigger-needs-check',
        `${serious.words} (${sayAt(context, serious.at)}) is not answered by watching one move`,
        'Do a staged check that answers it.',
        '/stay',
      );
    }
    const watched = view.plan?.[context.calendar!.night(context.occurred).is ? 'night' : 'day'].find(
      (p) => p.task === data.task,
    );
    if (watched?.hold) {
      return refuse(
        'task-on-hold',
        `the plan says hold for this move (${data.task.replaceAll('-', ' ')})`,
        'Review the hold first. If the person was moved all the same, record it as a session.',
        '/task',
      );
    }
    return accept(
      newEvent(events.planConfirmed, stayStream(data.stay), {
        task: data.task,
        assessment: assessment.id,
      }),
    );
  },
});

const recordSeenWalking = decider({
  command: commands.recordSeenWalking,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const view = viewAt(context, standing, context.occurred);
    const outOfScope = notStaged(view);
    if (outOfScope) return outOfScope;
    const hours = rulesOf(context.ward!).handling.seenWalkingHours.value;
    if (context.occurred >= standing.began + hours * HOUR) {
      return refuse(
        'seen-walking-too-late',
        `the person arrived ${sayAt(context, standing.began)}, more than ${hours} h before`,
        'Do a staged check now.',
        '/stay',
      );
    }
    const checked = factsBy(standing.record, Infinity).find((f) => f.type === 'assessment-recorded');
    if (checked) {
      return refuse(
        'already-checked',
        `a staged check was recorded ${sayAt(context, checked.occurred)}; it decides the plan`,
        'Confirm its plan, or check again.',
        '/stay',
      );
    }
    const trigger = view.trust.openTriggers.find((open) => open.kind !== 'arrival');
    if (trigger) {
      return refuse(
        'seen-walking-with-trigger',
        `${trigger.words} (${sayAt(context, trigger.at)}) has not been looked at`,
        'Do a staged check that answers it.',
        '/stay',
      );
    }
    const hold = view.holds[0];
    if (hold) {
      return refuse(
        'seen-walking-with-hold',
        `there is a hold on ${hold.scope.replaceAll('-', ' ')}`,
        'Review the hold first.',
        '/stay',
      );
    }
    return accept(
      newEvent(events.seenWalking, stayStream(data.stay), { walkingSupport: data.walkingSupport }),
    );
  },
});

export const deciders = underPolicy([recordAssessment, confirmPlan, recordSeenWalking, ...signDeciders]);
