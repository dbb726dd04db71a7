/** What was said of equipment, hour by hour, as the log of an invented ward holds it. Ours, practice. */
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { EventId, StaffId, WardId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import { wardSetUp } from '../../wards/events.ts';
import { aidEvents } from '../events.ts';
import { foldItem, NOTHING_SEEN, type ItemState } from './item-state.ts';

/** Eight in the morning. */
const T0 = Date.UTC(2026, 2, 3, 8);
export const WARD = 'ward-1' as WardId;
export const AIDE = 'aide' as StaffId;
/** So many hours after eight in the morning. */
export const hour = (h: number): EpochMs => T0 + h * HOUR;
export const hourOf = (at: EpochMs): number => (at - T0) / HOUR;
/** An instant as the tests say it: '10:00'. */
export const clock = (at: EpochMs): string => new Date(at).toISOString().slice(11, 16);

const TYPES = new Map<string, (typeof aidEvents)[number] | typeof wardSetUp>(
  [...aidEvents, wardSetUp].map((type) => [type.name, type]),
);

/** One entry, its payload checked as a command's would be. */
export function entry(h: number, type: string, payload: object = {}): LoggedEvent {
  const { stream, schema } = TYPES.get(type)!;
  const said = schema.parse(stream === 'item' ? { item: 'lift-1', ...payload } : payload);
  return {
    ward: WARD,
    position: 1,
    stream: stream === 'item' ? 'item/lift-1' : `ward/${WARD}`,
    version: 1,
    id: `${type}-${h}` as EventId,
    type,
    payload: said,
    occurred: hour(h),
    precision: 'exact',
    entered: hour(h),
    enteredOffsetMinutes: 0,
    recorded: hour(h),
    author: { staff: AIDE, role: 'aide' },
    source: { kind: 'person' },
  } as unknown as LoggedEvent;
}

/** What is known after these entries, in the order they were written down. */
export const after = (...entries: readonly LoggedEvent[]): ItemState =>
  entries.reduce(foldItem, NOTHING_SEEN);

/** Found, wiped and charged at eight. */
export const READY: readonly LoggedEvent[] = [
  entry(0, 'item-seen', { place: 'Store room' }),
  entry(0, 'item-cleaning', { clean: true }),
  entry(0, 'battery-read', { band: 'full' }),
];
