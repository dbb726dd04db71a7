/** What a correction starts from and what can be put right in a form: the main fields of the main entries. */
import type { TimelineEntry } from '@footboard/shared/wire/http';
import { resolveLocal } from '@footboard/shared/capabilities/wards/rules/calendar';
import { toEpoch, toIso } from '@footboard/shared/kernel/times';
import type { Fault } from '../entry/check.ts';

export type Payload = Readonly<Record<string, unknown>>;

/** Kinds whose main fields have a form. Others are withdrawn and entered anew. */
const WITH_FORM: ReadonlySet<string> = new Set([
  'session-recorded',
  'weight-recorded',
  'assessment-recorded',
  'usual-way-recorded',
  'goal-set',
]);
const isVerb = (entry: TimelineEntry): boolean => entry.target !== null;

export const mayCorrect = (entry: TimelineEntry): boolean =>
  entry.counts && entry.data !== undefined && WITH_FORM.has(entry.type);

/** Where a person was is put right by moving them, not by rewriting. */
const PLACEMENT: ReadonlySet<string> = new Set(['stay-begun', 'stay-moved', 'stay-ended']);
export const mayRetract = (entry: TimelineEntry): boolean =>
  entry.counts && !PLACEMENT.has(entry.type) && (!isVerb(entry) || entry.type === 'correction-made');
export const mayAnnotate = (entry: TimelineEntry): boolean => !isVerb(entry);

/** The entry as it counts now: its own payload, or the newest correction's that still counts. */
export function payloadNow(entry: TimelineEntry, timeline: readonly TimelineEntry[]): Payload {
  const corrections = timeline
    .filter((e) => e.type === 'correction-made' && e.target === entry.event && e.counts)
    .toSorted((a, b) => a.recorded - b.recorded);
  const newest = corrections.at(-1)?.data as { replacement?: Payload } | undefined;
  return newest?.replacement ?? (entry.data as Payload);
}

/** A payload with one field set; null leaves the field out. `path` are object keys and array indexes. */
export function withField(payload: Payload, path: readonly (string | number)[], value: unknown): Payload {
  const [key, ...rest] = path;
  if (key === undefined) return payload;
  const next = rest.length
    ? withField((payload as Record<string | number, Payload>)[key] ?? {}, rest, value)
    : value;
  if (Array.isArray(payload))
    return payload.map((item, i) => (i === key ? next : item)) as unknown as Payload;
  const copy: Record<string, unknown> = { ...payload };
  if (next === null) delete copy[key];
  else copy[key] = next;
  return copy;
}

export const fieldOf = (payload: unknown, path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[key] : undefined,
    payload,
  );

/** The ward's clock as typed, as an instant; or what is wrong with it (a skipped or repeated hour). */
export function occurredAt(
  zone: string,
  local: string,
  repeated: 'first' | 'second' | null,
): { readonly at: string } | { readonly faults: readonly Fault[]; readonly asksWhich: boolean } {
  const resolved = resolveLocal(zone, local, repeated ?? undefined);
  if ('at' in resolved) return { at: toIso(resolved.at) };
  return {
    faults: [{ pointer: '/occurredAt', detail: resolved.detail, remedy: resolved.remedy }],
    asksWhich: resolved.refused === 'repeated-hour',
  };
}

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,3})?Z$/;

/** A payload with every instant in it moved by `byMs`: when an entry was placed at the wrong time, so were its parts. */
export function movedInTime<T>(payload: T, byMs: number): T {
  if (typeof payload === 'string') {
    return (INSTANT.test(payload) ? toIso(toEpoch(payload) + byMs) : payload) as T;
  }
  if (Array.isArray(payload)) return payload.map((item) => movedInTime(item, byMs)) as T;
  if (typeof payload !== 'object' || payload === null) return payload;
  return Object.fromEntries(
    Object.entries(payload).map(([key, value]) => [key, movedInTime(value, byMs)]),
  ) as T;
}
