/**
 * The course of one stay: what the board showed of tier, trust and holds from arrival until now, by
 * what is known now, and what was done and what happened meanwhile. A picture is drawn from it. Where
 * nothing is known there is a gap: a ward day without an entry is "not recorded", never zero.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayCourse } from '../../../wire/pictures.ts';
import type { Fact, StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts, type Effective } from '../../corrections/rules/effective.ts';
import type { triggerRecorded } from '../../orders/events.ts';
import { sessionsOf } from '../../sessions/rules/activity.ts';
import { mostDemanding } from '../../sessions/rules/activities.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import { protocolInForce } from '../../assessments/rules/protocol.ts';
import type { StayView } from '../view.ts';
import { evaluateFacts } from './evaluate-stay.ts';

type Course = Omit<StayCourse, 'ward' | 'stay' | 'position'>;

/** A stay that changes more often than this is drawn up to there and says so. */
const MOST_LOOKS = 2_000;

export function courseOf(
  record: StayRecord,
  ward: WardState,
  calendar: WardCalendar,
  now: EpochMs,
): Course | null {
  const effective = effectiveFacts(record);
  const { facts } = effective;
  const began = facts.find((f) => f.type === 'stay-begun')?.occurred;
  if (began === undefined || began > now) return null;
  const ended = facts.findLast((f) => f.type === 'stay-ended')?.occurred ?? null;
  const until = Math.min(ended ?? now, now);

  const { standing, to, looked } = standingThrough(record, effective, ward, calendar, began, until);
  const sessions = sessionsOf(facts, until)
    .filter((s) => s.from >= began)
    .toSorted((a, b) => a.from - b.from);
  return {
    from: began,
    to,
    whole: looked,
    ended: ended !== null && ended <= now,
    tiers: tierAxis(ward),
    standing: standing.map(({ view, from, to: end }) => ({
      from,
      to: end,
      tier: view.tier.word,
      notch: view.tier.notch,
      trust: view.trust.state,
      away: view.away !== null,
      facts: reasonsBehind(view, facts, from),
    })),
    holds: holdSpans(standing),
    sessions: sessions.map(({ fact, session, from }) => ({
      event: fact.id,
      at: from,
      outcome: session.outcome,
      activity: mostDemanding(session),
      group: session.notDone?.group ?? null,
    })),
    triggers: facts
      .filter((f) => f.type === 'trigger-recorded' && f.occurred >= began && f.occurred <= until)
      .map((f) => ({
        event: f.id,
        at: f.occurred,
        kind: (f.data as PayloadOf<typeof triggerRecorded>).kind,
      })),
    days: daysBetween(calendar, began, to).map((day) => {
      const ofDay = sessions.filter((s) => s.from >= day.from && s.from < day.to);
      // The first instant of the next ward day is not of this one.
      const at = Math.min(calendar.wardDay(day.from).to - 1, to);
      const { today } = evaluateFacts(record, effective, ward, calendar, at).view;
      const ids = [...today.because.flatMap((b) => b.facts), ...ofDay.map((s) => s.fact.id)];
      return {
        ...day,
        recorded: ofDay.length > 0,
        goal: today.goal && { met: today.met, proposed: today.goalProposed },
        facts: [...new Set(ids)],
      };
    }),
  };
}

interface Standing {
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly view: StayView;
}

/** The board's own answer at each instant at which it could change; equal neighbours are one span. */
function standingThrough(
  record: StayRecord,
  effective: Effective,
  ward: WardState,
  calendar: WardCalendar,
  from: EpochMs,
  until: EpochMs,
): { standing: Standing[]; to: EpochMs; looked: boolean } {
  const standing: Standing[] = [];
  let t = from;
  for (let looks = 0; t < until; looks++) {
    if (looks === MOST_LOOKS) return { standing, to: t, looked: false };
    const { view, nextChange } = evaluateFacts(record, effective, ward, calendar, t);
    const to = Math.min(nextChange ?? Infinity, until);
    const last = standing.at(-1);
    if (last && drawnAlike(last.view, view)) standing[standing.length - 1] = { ...last, to };
    else standing.push({ from: t, to, view });
    t = to;
  }
  return { standing, to: until, looked: true };
}

/** The facts that the board named when a span began; going off the ward names its own. */
function reasonsBehind(view: StayView, facts: readonly Fact[], from: EpochMs): EventId[] {
  const named = [...view.tier.because, ...view.trust.because].flatMap((b) => b.facts);
  const left = view.away && facts.findLast((f) => f.type === 'went-off-ward' && f.occurred <= from);
  return [...new Set(left ? [...named, left.id] : named)];
}

const drawnAlike = (a: StayView, b: StayView): boolean =>
  a.tier.word === b.tier.word &&
  a.tier.notch === b.tier.notch &&
  a.trust.state === b.trust.state &&
  (a.away === null) === (b.away === null) &&
  holdsKey(a) === holdsKey(b);
const holdsKey = (view: StayView): string => view.holds.map((h) => `${h.hold} ${h.scope}`).join('|');

/** One span for each time a hold stood, with the widest scope it had meanwhile; `to` null: it stands. */
function holdSpans(standing: readonly Standing[]): Course['holds'] {
  const spans: Course['holds'] = [];
  const open = new Map<string, Course['holds'][number]>();
  for (const { from, view } of standing) {
    const now = new Map(view.holds.map((h) => [h.hold as string, h]));
    for (const [id, span] of open) {
      if (now.get(id)?.scope === span.scope) continue;
      span.to = from;
      open.delete(id);
    }
    for (const [id, { scope, reason, event }] of now) {
      if (open.has(id)) continue;
      const span = { hold: id, scope, reason, from, to: null, facts: [event] };
      open.set(id, span);
      spans.push(span);
    }
  }
  return spans;
}

/** The words of the tier in the protocol in force, lowest first, each where its notch stands. */
function tierAxis(ward: WardState): Course['tiers'] {
  const protocol = protocolInForce(ward.protocols);
  const words = [protocol.lowestWord, ...protocol.stages.flatMap((s) => s.word ?? [])];
  return words.map((word, i) => ({ word, notch: i / (words.length - 1) }));
}

/** The ward days that hold any of [from, to), each cut to it. */
export function daysBetween(calendar: WardCalendar, from: EpochMs, to: EpochMs) {
  const days: { from: EpochMs; to: EpochMs }[] = [];
  for (let t = from; t < to;) {
    const end = calendar.wardDay(t).to;
    days.push({ from: t, to: Math.min(end, to) });
    t = end;
  }
  return days;
}
