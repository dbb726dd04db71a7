import type { LoggedEvent, Names, PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { TimelineEntry } from '../../../wire/http.ts';
import { correctionEvents, type correctionMade } from '../../corrections/events.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { isSignature } from '../../corrections/rules/signatures.ts';
import { EVENT_TYPES } from '../../registry.ts';

/** Recorded this long after it occurred, an entry is marked late. Common practice, no source. */
const LATE_AFTER = HOUR;
const VERBS: ReadonlySet<string> = new Set(correctionEvents.map((type) => type.name));

/**
 * Every entry of a stay in plain words, oldest first by when it occurred, then in the order of the
 * log. Nothing is left out: a withdrawn entry stays readable and says that it no longer counts.
 */
export function timelineOf(record: StayRecord, names: Names): TimelineEntry[] {
  const { changes, retracted, confirmed, cosigned } = effectiveFacts(record);
  const signed = (by: LoggedEvent | undefined) => ({
    by: by ? { ...by.author, name: names.staff(by.author.staff) } : null,
    at: by ? by.occurred : null,
  });
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
      confirmation: event.source.unconfirmed
        ? {
            state: confirmed.has(event.id) ? 'confirmed' : 'unconfirmed',
            ...signed(confirmed.get(event.id)),
          }
        : null,
      cosign:
        event.source.cosign && !isSignature(event)
          ? {
              kind: event.source.cosign,
              state: cosigned.has(event.id) ? 'signed' : 'waiting',
              ...signed(cosigned.get(event.id)),
            }
          : null,
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
