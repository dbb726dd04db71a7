import type { LoggedEvent, Names, PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { TimelineEntry } from '../../../wire/http.ts';
import type { correctionMade } from '../../corrections/events.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { EVENT_TYPES } from '../../registry.ts';

/** Recorded this long after it occurred, an entry is marked late. Common practice, no source. */
const LATE_AFTER = HOUR;
const VERBS: ReadonlySet<string> = new Set([
  'addendum-made',
  'amendment-made',
  'correction-made',
  'retraction-made',
]);

/**
 * Every entry of a stay in plain words, oldest first by when it occurred, then in the order of the
 * log. Nothing is left out: a withdrawn entry stays readable and says that it no longer counts.
 */
export function timelineOf(record: StayRecord, names: Names): TimelineEntry[] {
  const { changes, retracted } = effectiveFacts(record);
  return record.events
    .toSorted((a, b) => a.occurred - b.occurred || a.position - b.position)
    .map((event) => ({
      event: event.id,
      type: event.type,
      occurred: event.occurred,
      precision: event.precision,
      recorded: event.recorded,
      late: isLate(event),
      author: { ...event.author, name: names.staff(event.author.staff) },
      source: event.source,
      words: wordsOf(event, names),
      changedBy: [...(changes.get(event.id) ?? [])],
      target: VERBS.has(event.type) ? (event.payload as { target: EventId }).target : null,
      counts: !retracted.has(event.id),
      data: event.payload as NonNullable<TimelineEntry['data']>,
    }));
}

/** Imported and played entries are recorded long after by their nature. */
const isLate = ({ source, recorded, occurred }: LoggedEvent): boolean =>
  source.kind !== 'import' && source.kind !== 'demo' && recorded - occurred > LATE_AFTER;

function wordsOf(event: LoggedEvent, names: Names): string {
  const type = EVENT_TYPES.get(event.type);
  if (!type) return `An entry of a kind this program does not know (${event.type})`;
  const words = type.words(event.payload, names);
  if (event.type !== 'correction-made') return words;
  const { type: of, replacement } = event.payload as PayloadOf<typeof correctionMade>;
  const now = EVENT_TYPES.get(of);
  return now ? `${words}. It now reads: ${now.words(replacement, names)}` : words;
}
