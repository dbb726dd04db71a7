import type { Names } from '../../../kernel/event-type.ts';
import type { TimelineEntry } from '../../../wire/http.ts';
import type { StayRecord } from '../../corrections/facts.ts';

/** Every entry of a stay in plain words, oldest first by when it occurred. */
export function timelineOf(_record: StayRecord, _names: Names): TimelineEntry[] {
  throw new Error('signature only');
}
