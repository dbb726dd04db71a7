/**
 * Decides the seeded week in memory, entry by entry, with the same deciders the server uses, so that
 * only what a ward would have accepted gets into the log. Holds every stream; writes nothing.
 */
import type { Role } from '@footboard/shared/kernel/author';
import { COMMAND_TYPES, eventTypeNamed } from '@footboard/shared/capabilities/registry';
import { foldWard } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { streamKey, type LoggedEvent, type StreamKey } from '@footboard/shared/kernel/event-type';
import type { BedId, EventId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { DECIDERS } from '@footboard/server/capabilities/deciders';
import type { DecideContext } from '@footboard/server/commanding/decider';
import type { EventToAppend, StreamSlice, TextToKeep } from '@footboard/server/log/log';
import { STAFF } from './cast.ts';
import type { Entry, Find } from './entry.ts';

export interface Decided {
  readonly events: readonly EventToAppend[];
  readonly texts: readonly TextToKeep[];
}

interface WardPart {
  state: WardState | null;
  calendar: WardCalendar | null;
  position: number;
}

const roleOf = new Map<string, Role>(STAFF.map((one) => [one.staff, one.role]));
const NO_EVENTS: readonly LoggedEvent[] = [];

export class Ledger {
  private readonly streams = new Map<string, { version: number; events: LoggedEvent[] }>();
  private readonly wards = new Map<WardId, WardPart>();
  private ids = 0;

  readonly find: Find = (stay, type, occurred) => {
    for (const [key, stream] of this.streams) {
      if (!key.endsWith(`|${streamKey('stay', stay)}`)) continue;
      return (
        stream.events.findLast((event) => event.type === type && event.occurred === occurred)?.id ?? null
      );
    }
    return null;
  };

  /** What the entry comes to; null when it has nothing to enter. */
  decide(entry: Entry): Decided | Refusal | null {
    const type = COMMAND_TYPES.get(entry.command);
    const decider = DECIDERS.get(entry.command);
    if (!type || !decider) throw new Error(`the demo enters an unknown command ${entry.command}`);
    const raw = typeof entry.data === 'function' ? entry.data(this.find) : entry.data;
    if (raw === null) return null;
    const parsed = type.data.safeParse(raw);
    if (!parsed.success) {
      throw new Error(`the demo's ${entry.command} does not fit its schema: ${parsed.error.message}`);
    }
    const texts: TextToKeep[] = [];
    const part = this.part(entry.ward);
    const author = { staff: entry.by as StaffId, role: roleOf.get(entry.by) ?? ('administrator' as Role) };
    const context: DecideContext = {
      wardId: entry.ward,
      ward: part.state,
      calendar: part.calendar,
      slice: (stream, ward = entry.ward) => this.slice(ward, stream),
      stay: (id) => {
        const { version, events } = this.slice(entry.ward, streamKey('stay', id));
        return { stay: id, version, events };
      },
      occupant: (bed, ward = entry.ward) => this.occupant(ward, bed),
      otherWard: (id) => this.wards.get(id)?.state ?? null,
      now: entry.at,
      occurred: entry.at,
      precision: 'exact',
      fromOutbox: false,
      author,
      entitled: author.role,
      newId: () => this.newId('e'),
      keep: (subject, text) => {
        const ref = this.newId('t');
        texts.push({ ref, subject, text });
        return { ref };
      },
    };
    const decision = decider.decide(parsed.data as never, context);
    if ('refused' in decision) return decision;
    const events = decision.accept.map((wanted): EventToAppend => {
      const ward = wanted.ward ?? entry.ward;
      const event = {
        ward,
        stream: wanted.stream,
        version: this.slice(ward, wanted.stream).version + 1,
        id: this.newId('e') as EventId,
        type: wanted.type,
        schemaVersion: eventTypeNamed(wanted.type).version,
        payload: wanted.payload,
        occurred: wanted.occurred ?? entry.at,
        precision: 'exact' as const,
        entered: entry.at,
        enteredOffsetMinutes: 0,
        author,
        source: { kind: 'demo' as const },
      };
      this.take(event);
      return event;
    });
    return { events, texts };
  }

  private take(event: EventToAppend): void {
    const part = this.part(event.ward);
    part.position += 1;
    const logged: LoggedEvent = { ...event, position: part.position, recorded: event.entered };
    const key = `${event.ward}|${event.stream}`;
    const stream = this.streams.get(key) ?? { version: 0, events: [] };
    stream.version = event.version;
    stream.events.push(logged);
    this.streams.set(key, stream);
    if (event.stream.startsWith('ward/')) {
      part.state = foldWard(event.ward, [logged], part.state);
      part.calendar = part.state ? wardCalendar(part.state) : null;
    }
  }

  private part(ward: WardId): WardPart {
    const known = this.wards.get(ward);
    if (known) return known;
    const fresh: WardPart = { state: null, calendar: null, position: 0 };
    this.wards.set(ward, fresh);
    return fresh;
  }

  private slice(ward: WardId, stream: StreamKey): StreamSlice {
    const found = this.streams.get(`${ward}|${stream}`);
    return { stream, version: found?.version ?? 0, events: found?.events ?? NO_EVENTS };
  }

  private occupant(ward: WardId, bed: BedId): StayId | null {
    const last = this.slice(ward, streamKey('bed', bed)).events.at(-1);
    return last?.type === 'bed-taken' ? (last.payload as { stay: StayId }).stay : null;
  }

  private newId(kind: string): string {
    this.ids += 1;
    return `demo-${kind}${this.ids}`;
  }
}
