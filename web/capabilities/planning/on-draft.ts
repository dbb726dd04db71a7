/** Who is on, before it is sent: times of day on the ward's clock become instants of the ward day. Pure. */
import { localDate, resolveLocal } from '@footboard/shared/capabilities/wards/rules/calendar';
import { HOUR, MINUTE, toIso } from '@footboard/shared/kernel/times';
import type { PeopleOnPage } from '@footboard/shared/wire/planning';

export type OnPage = Pick<PeopleOnPage, 'day' | 'from' | 'to'>;
type Resolved = ReturnType<typeof resolveLocal>;

/** The first instant at or after `after` at which the ward's clock shows `time` ("21:00"). */
export function nextAt(zone: string, time: string, after: number): Resolved {
  const read = (at: number) => resolveLocal(zone, `${localDate(zone, at)}T${time}`, 'first');
  const today = read(after);
  if (!('at' in today) || today.at >= after) return today;
  return read(after + 24 * HOUR);
}

export interface Draft {
  readonly from: string;
  readonly until: string;
  /** When the break begins; empty for none. */
  readonly pause: string;
  readonly minutes: number;
}
export type Times = { from: string; until: string; breaks: { from: string; until: string }[] };

/** What is sent for each of the people chosen, or which field cannot be read and why. */
export function timesOf(
  zone: string,
  page: OnPage,
  draft: Draft,
): { ok: Times } | { field: 'from' | 'until' | 'pause'; detail: string; remedy: string } {
  const from = nextAt(zone, draft.from, page.from);
  if (!('at' in from)) return { field: 'from', detail: from.detail, remedy: from.remedy };
  const until = nextAt(zone, draft.until, from.at + MINUTE);
  if (!('at' in until)) return { field: 'until', detail: until.detail, remedy: until.remedy };
  const times = { from: toIso(from.at), until: toIso(until.at) };
  if (draft.pause === '') return { ok: { ...times, breaks: [] } };
  const pause = nextAt(zone, draft.pause, from.at);
  if (!('at' in pause)) return { field: 'pause', detail: pause.detail, remedy: pause.remedy };
  const ends = pause.at + draft.minutes * MINUTE;
  return { ok: { ...times, breaks: [{ from: toIso(pause.at), until: toIso(ends) }] } };
}

/** Quarter hours in a row that say the same, as one stretch. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly said: 'named' | 'usual';
  readonly nurses: number;
  readonly aides: number;
  readonly therapists: number;
}
export function stretchesOf(slots: PeopleOnPage['slots']): readonly Stretch[] {
  const all: Stretch[] = [];
  for (const { people: _people, ...slot } of slots) {
    const last = all.at(-1);
    const same =
      last?.said === slot.said &&
      last.nurses === slot.nurses &&
      last.aides === slot.aides &&
      last.therapists === slot.therapists;
    if (same) all[all.length - 1] = { ...last, to: slot.to };
    else all.push(slot);
  }
  return all;
}
