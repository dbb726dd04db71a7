/**
 * A board in memory for tests of decisions: wards, streams and a clock given in. It holds decisions to
 * what the server holds them to: only streams named by `reads` are read or written, and every payload
 * fits its schema.
 */
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent, NewEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import type { Author, Role, Source } from '@footboard/shared/kernel/author';
import type { BedId, EventId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import { foldWard } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { Decider, DecideContext, Decision, ReadSoFar } from '../commanding/decider.ts';
import { DECIDERS } from './deciders.ts';

export const staff = (role: Role, id: string = role): Author => ({ staff: id as StaffId, role });

/** An event as a test writes it down: everything but what it says has a default. */
export interface Step extends NewEvent {
  readonly by?: Author;
  readonly id?: string;
  readonly source?: Source;
}

export interface Entering {
  readonly ward: WardId;
  readonly by: Author;
  readonly occurred: EpochMs;
  /** When the entry is decided; the occurred time by default. */
  readonly now?: EpochMs;
  /** The role whose rights apply; the author's by default. */
  readonly entitled?: Role;
  /** Where it came from; a person by default. */
  readonly source?: Source;
}

export class World {
  readonly kept: { subject: string; text: string; ref: string }[] = [];
  readonly #streams = new Map<string, LoggedEvent[]>();
  readonly #wards = new Map<WardId, LoggedEvent[]>();
  readonly #folded = new Map<
    WardId,
    { at: number; state: WardState | null; calendar: WardCalendar | null }
  >();
  #ids = 0;

  events(ward: WardId, stream: StreamKey): readonly LoggedEvent[] {
    return this.#streams.get(`${ward} ${stream}`) ?? [];
  }

  /** Every event of a ward, in the order of its log. */
  log(ward: WardId): readonly LoggedEvent[] {
    return this.#wards.get(ward) ?? [];
  }

  ward(id: WardId): { state: WardState | null; calendar: WardCalendar | null } {
    const events = this.log(id);
    const known = this.#folded.get(id);
    if (known?.at === events.length) return known;
    const state = foldWard(id, events);
    const folded = { at: events.length, state, calendar: state && wardCalendar(state) };
    this.#folded.set(id, folded);
    return folded;
  }

  add(
    step: Step,
    defaults: { ward: WardId; by: Author; occurred: EpochMs; recorded?: EpochMs; source?: Source },
  ): LoggedEvent {
    const type = eventTypeNamed(step.type);
    if (!step.stream.startsWith(`${type.stream}/`)) {
      throw new Error(`${step.type} belongs to a ${type.stream}'s stream, not to ${step.stream}`);
    }
    const ward = step.ward ?? defaults.ward;
    const key = `${ward} ${step.stream}`;
    const stream = this.#streams.get(key) ?? [];
    const log = this.#wards.get(ward) ?? [];
    const occurred = step.occurred ?? defaults.occurred;
    const recorded = defaults.recorded ?? occurred;
    const event: LoggedEvent = {
      ward,
      position: log.length + 1,
      stream: step.stream,
      version: stream.length + 1,
      id: (step.id ?? this.#id('event')) as EventId,
      type: step.type,
      payload: type.schema.parse(step.payload),
      occurred,
      precision: 'exact',
      entered: recorded,
      enteredOffsetMinutes: 0,
      recorded,
      author: step.by ?? defaults.by,
      source: step.source ?? defaults.source ?? { kind: 'person' },
    };
    this.#streams.set(key, [...stream, event]);
    this.#wards.set(ward, [...log, event]);
    return event;
  }

  /** Decides only; nothing is added. */
  decide(command: CommandType, input: unknown, entering: Entering): Decision {
    const decider = DECIDERS.get(command.name)!;
    const data = command.data.parse(input) as never;
    const decision = decider.decide(data, this.#context(decider, data, entering));
    if ('accept' in decision) {
      const read = this.#reads(decider, data, entering.ward);
      for (const event of decision.accept) {
        if (!read.has(`${event.ward ?? entering.ward} ${event.stream}`)) {
          throw new Error(`${command.name} writes to ${event.stream}, which it did not read`);
        }
        eventTypeNamed(event.type).schema.parse(event.payload);
      }
    }
    return decision;
  }

  /** Decides, and adds what was accepted. */
  enter(command: CommandType, input: unknown, entering: Entering): Decision {
    const decision = this.decide(command, input, entering);
    if ('accept' in decision) this.append(decision.accept, entering);
    return decision;
  }

  append(events: readonly NewEvent[], entering: Entering): void {
    for (const event of events) {
      this.add(event, { ...entering, recorded: entering.now ?? entering.occurred });
    }
  }

  occupant(ward: WardId, bed: BedId): StayId | null {
    const last = this.events(ward, streamKey('bed', bed)).at(-1);
    return last?.type === 'bed-taken' ? (last.payload as { stay: StayId }).stay : null;
  }

  #reads(decider: Decider, data: never, ward: WardId): ReadonlySet<string> {
    const needs = [{ ward, stream: streamKey('ward', ward) }, ...decider.reads(data, ward)];
    for (const more of decider.further ?? []) {
      const read = new Set(needs.map((need) => `${need.ward} ${need.stream}`));
      const soFar: ReadSoFar = {
        ward: (id) => this.ward(id),
        slice: (of, stream) => {
          if (!read.has(`${of} ${stream}`)) throw new Error(`${stream} of ${of} was not read before`);
          const events = this.events(of, stream);
          return { stream, version: events.length, events };
        },
      };
      needs.push(...more(data, ward, soFar));
    }
    return new Set(needs.map((need) => `${need.ward} ${need.stream}`));
  }

  #context(decider: Decider, data: never, entering: Entering): DecideContext {
    const read = this.#reads(decider, data, entering.ward);
    const slice = (stream: StreamKey, ward: WardId = entering.ward) => {
      if (!read.has(`${ward} ${stream}`)) throw new Error(`${stream} of ${ward} was not named by reads`);
      const events = this.events(ward, stream);
      return { stream, version: events.length, events };
    };
    return {
      wardId: entering.ward,
      ward: this.ward(entering.ward).state,
      calendar: this.ward(entering.ward).calendar,
      slice,
      stay: (id) => {
        const { version, events } = slice(streamKey('stay', id));
        return { stay: id, version, events };
      },
      occupant: (bed, ward = entering.ward) => {
        slice(streamKey('bed', bed), ward);
        return this.occupant(ward, bed);
      },
      otherWard: (id) => {
        slice(streamKey('ward', id), id);
        return this.ward(id).state;
      },
      now: entering.now ?? entering.occurred,
      occurred: entering.occurred,
      precision: 'exact',
      fromOutbox: false,
      author: entering.by,
      entitled: entering.entitled ?? entering.by.role,
      newId: () => this.#id('new'),
      keep: (subject, text) => {
        const ref = this.#id('text');
        this.kept.push({ subject, text, ref });
        return { ref };
      },
    };
  }

  #id(kind: string): string {
    this.#ids += 1;
    return `${kind}-${this.#ids}`;
  }
}
