/**
 * Two sessions that may be one: written on paper or kept on a device, and entered by somebody else as
 * well (users-job hazard 12). They are only pointed out: which of the two is withdrawn, if any, a
 * person decides (decision 0012). Pure.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Session } from '../../sessions/values.ts';

/** Common practice, no source: times on paper are rounded. */
const WITHIN_MS = 30 * MINUTE;

export interface TwinLine {
  readonly event: EventId;
  readonly type: string;
  readonly occurred: EpochMs;
  readonly counts: boolean;
  readonly author: { readonly staff: string };
  readonly source: {
    readonly kind: string;
    readonly serial?: string | undefined;
    readonly device?: string | undefined;
  };
  readonly data?: unknown;
}

const same = (a: Session, b: Session): boolean =>
  (a.outcome === 'not-done') === (b.outcome === 'not-done') &&
  (a.outcome === 'not-done'
    ? a.notDone?.group === b.notDone?.group
    : a.activities.some((one) => b.activities.includes(one)));

/** From one hand on one device or one sheet they are two sessions, however near. */
const otherWay = (a: TwinLine, b: TwinLine): boolean =>
  a.source.kind !== b.source.kind ||
  a.source.serial !== b.source.serial ||
  a.source.device !== b.source.device;

const sessionOf = ({ data }: TwinLine): Session | null =>
  (data as { session?: Session } | undefined)?.session ?? null;

/** Pairs of one stay's timeline, the earlier first. Withdrawn entries are nobody's twin. */
export function likelyTwins(timeline: readonly TwinLine[]): readonly (readonly [EventId, EventId])[] {
  const sessions = timeline
    .filter(({ type, counts }) => type === 'session-recorded' && counts)
    .toSorted((a, b) => a.occurred - b.occurred || (a.event < b.event ? -1 : 1));
  return sessions.flatMap((one, i) =>
    sessions.slice(i + 1).flatMap((other): (readonly [EventId, EventId])[] => {
      const [a, b] = [sessionOf(one), sessionOf(other)];
      if (!a || !b || other.occurred - one.occurred > WITHIN_MS) return [];
      return same(a, b) && otherWay(one, other) ? [[one.event, other.event]] : [];
    }),
  );
}
