/** Sessions as they were, and the day's goal. A fact is a fact; a goal never asks for more than is cleared. */
import { isCleared } from '@footboard/shared/capabilities/sessions/rules/activities';
import * as commands from '@footboard/shared/capabilities/sessions/commands';
import { goalSet, sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Goal, Session } from '@footboard/shared/capabilities/sessions/values';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { EventId } from '@footboard/shared/kernel/ids';
import { toEpoch } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { actedOn } from '../dayplan/acted.ts';
import { underPolicy } from '../people/policy.ts';
import { judgedAt, tierAt, viewAt } from '../stays/judged.ts';
import { AHEAD_TAKEN_AS_NOW, isRefusal, readsStay, sayAt, stayAt, stayStream } from '../stays/standing.ts';
import type { Standing } from '../stays/standing.ts';

/** The times inside a session against its stay and the clock. `at` is the JSON pointer of the session. */
export function sessionTimes(
  context: DecideContext,
  standing: Standing,
  session: Session,
  at: string,
): Refusal | null {
  const started = toEpoch(session.startedAt);
  const latest = toEpoch(session.endedAt ?? session.startedAt);
  if (latest > context.now + AHEAD_TAKEN_AS_NOW) {
    return refuse(
      'time-in-future',
      session.endedAt
        ? `the session ends ${sayAt(context, latest)}; it is ${sayAt(context, context.now)}`
        : `the session starts ${sayAt(context, latest)}; it is ${sayAt(context, context.now)}`,
      'Enter a session once it is over; check the clock of this device.',
      session.endedAt ? `${at}/endedAt` : `${at}/startedAt`,
    );
  }
  if (started < standing.began) {
    return refuse(
      'session-before-stay',
      `the person arrived ${sayAt(context, standing.began)}, the session started ${sayAt(context, started)}`,
      'Check the time. What happened before belongs to the earlier stay.',
      `${at}/startedAt`,
    );
  }
  if (standing.ended !== null && started >= standing.ended) {
    return refuse(
      'session-after-stay',
      `the stay ended ${sayAt(context, standing.ended)}, the session started ${sayAt(context, started)}`,
      'Check the time, and that this is the right person.',
      `${at}/startedAt`,
    );
  }
  if (session.backToBedBy !== undefined && toEpoch(session.backToBedBy) <= started) {
    return refuse(
      'back-to-bed-before-start',
      `back to bed by ${sayAt(context, toEpoch(session.backToBedBy))} is not after the start ${sayAt(context, started)}`,
      'Give a later time, or leave it out.',
      `${at}/backToBedBy`,
    );
  }
  return readingTimes(context, standing, session, at);
}

/** A reading is timed within the stay and not ahead: a later one counts before an earlier one. */
function readingTimes(
  context: DecideContext,
  standing: Standing,
  session: Session,
  at: string,
): Refusal | null {
  for (const [i, reading] of (session.readings ?? []).entries()) {
    const taken = toEpoch(reading.at);
    const outside =
      taken > context.now + AHEAD_TAKEN_AS_NOW
        ? `it is ${sayAt(context, context.now)}`
        : taken < standing.began
          ? `the person arrived ${sayAt(context, standing.began)}`
          : standing.ended !== null && taken >= standing.ended
            ? `the stay ended ${sayAt(context, standing.ended)}`
            : null;
    if (outside === null) continue;
    return refuse(
      'reading-time-outside-stay',
      `${reading.kind.replaceAll('-', ' ')} is timed ${sayAt(context, taken)}; ${outside}`,
      'Correct the time; check the clock of this device.',
      `${at}/readings/${i}/at`,
    );
  }
  return null;
}

const recordSession = decider({
  command: commands.recordSession,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return (
      sessionTimes(context, standing, data.session, '/session') ??
      accept(
        newEvent(sessionRecorded, stayStream(data.stay), {
          session: data.session,
          ...(data.said === undefined ? {} : { said: context.keep(`stay/${data.stay}`, data.said) }),
        }),
        ...(data.session.outcome === 'not-done' ? actedOn('not-now', data) : []),
      )
    );
  },
});

/** The goal's activity against what is cleared. `at` is the JSON pointer of the goal. */
export function goalWithinCleared(
  context: DecideContext,
  standing: Standing,
  goal: Goal,
  at: string,
): Refusal | null {
  for (const t of judgedAt(context, standing)) {
    const { cleared, view } = tierAt(context, standing, t);
    if (isCleared(goal.activity, cleared)) continue;
    return refuse(
      'goal-above-cleared',
      `the stage that "${goal.activity.replaceAll('-', ' ')}" needs is not cleared; the tier is ${view.word ?? 'none: the staged check does not apply'}`,
      'Choose an activity within what is cleared, or check the person again first.',
      `${at}/activity`,
    );
  }
  return null;
}

/**
 * A proposal that is accepted must still stand, then and now: the same goal, on the same sessions.
 * One more session, a hold or another goal since may have made it another proposal, or none.
 */
function proposalStands(
  context: DecideContext,
  standing: Standing,
  goal: Goal,
  accepts: readonly EventId[],
): Refusal | null {
  for (const t of judgedAt(context, standing)) {
    const { proposal } = viewAt(context, standing, t);
    if (proposal && sameGoal(proposal.goal, goal) && sameSessions(proposal.sessions, accepts)) continue;
    return refuse(
      'proposal-gone',
      proposal
        ? 'the proposal that stands now asks for something else, or stands on other sessions'
        : 'no step of the goal is proposed any more',
      'Look at the goal and its proposal again; accept what stands there now, or set the goal yourself.',
      '/accepts',
    );
  }
  return null;
}
const sameGoal = (a: Goal, b: Goal): boolean =>
  a.activity === b.activity &&
  a.timesUp === b.timesUp &&
  a.minutesOutOfBed === b.minutesOutOfBed &&
  a.metres === b.metres;
const sameSessions = (a: readonly EventId[], b: readonly EventId[]): boolean =>
  new Set(a).size === new Set(b).size && a.every((one) => b.includes(one));

const setGoal = decider({
  command: commands.setGoal,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return (
      goalWithinCleared(context, standing, data.goal, '/goal') ??
      (data.accepts?.length ? proposalStands(context, standing, data.goal, data.accepts) : null) ??
      accept(
        newEvent(goalSet, stayStream(data.stay), {
          goal: data.goal,
          ...(data.accepts?.length ? { accepts: data.accepts } : {}),
          ...(data.wish === undefined ? {} : { wish: context.keep(`stay/${data.stay}`, data.wish) }),
        }),
      )
    );
  },
});

export const deciders = underPolicy([recordSession, setGoal]);
