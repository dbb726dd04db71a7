/**
 * One ward day by the hour: what was recorded in each, and of how many people nothing was recorded
 * up to its end. Hours are elapsed hours from the start of the ward day, so that a day with a clock
 * change has 23 or 25 of them.
 */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { WardHours } from '../../../wire/pictures.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { sessionsOf } from '../../sessions/rules/activity.ts';
import type { Session } from '../../sessions/values.ts';
import type { Period } from '../../wards/context.ts';

type Hour = WardHours['hours'][number];
interface OfStay {
  readonly began: EpochMs;
  readonly ended: EpochMs;
  readonly sessions: readonly { readonly at: EpochMs; readonly session: Session }[];
}

export function hoursOf(
  records: readonly StayRecord[],
  day: Period,
  t: EpochMs,
): Pick<WardHours, 'stays' | 'hours'> {
  const stays = records.flatMap((record) => ofStay(record, day, t) ?? []);
  const hours: Hour[] = [];
  for (let from = day.from; from < day.to; from += HOUR) {
    hours.push(hourOf(stays, { from, to: Math.min(from + HOUR, day.to) }, t));
  }
  return { stays: stays.length, hours };
}

function ofStay(record: StayRecord, day: Period, t: EpochMs): OfStay | null {
  const { facts } = effectiveFacts(record);
  const began = facts.find((f) => f.type === 'stay-begun')?.occurred;
  const ended = facts.findLast((f) => f.type === 'stay-ended')?.occurred ?? Infinity;
  if (began === undefined || began > Math.min(day.to, t) || ended <= day.from) return null;
  const sessions = sessionsOf(
    facts.filter((f) => f.occurred <= t),
    t,
  )
    .filter(({ from }) => from >= day.from && from < day.to)
    .map(({ from, session }) => ({ at: from, session }));
  return { began, ended, sessions };
}

function hourOf(stays: readonly OfStay[], { from, to }: Period, t: EpochMs): Hour {
  const begun = from <= t;
  const hour = { from, to, begun, done: 0, part: 0, stopped: 0 };
  const notDone: Record<string, number> = {};
  for (const { sessions } of stays) {
    for (const { at, session } of sessions) {
      if (at < from || at >= to) continue;
      if (session.outcome === 'not-done') {
        const group = session.notDone?.group ?? 'no-reason';
        notDone[group] = (notDone[group] ?? 0) + 1;
      } else hour[session.outcome]++;
    }
  }
  // The last instant of the hour, so that who comes or leaves at its very end counts in the right one.
  const end = Math.min(to - 1, t);
  const silent = stays.filter(
    (s) => s.began <= end && s.ended > end && s.sessions.every(({ at }) => at > end),
  );
  return { ...hour, notDone, nothingYet: begun ? silent.length : null };
}
