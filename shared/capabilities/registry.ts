import type { CommandType } from '../kernel/command-type.ts';
import type { EventType } from '../kernel/event-type.ts';
import { aidCommands } from './aids/commands.ts';
import { aidEvents } from './aids/events.ts';
import { assessmentCommands } from './assessments/commands.ts';
import { assessmentEvents } from './assessments/events.ts';
import { correctionCommands } from './corrections/commands.ts';
import { correctionEvents } from './corrections/events.ts';
import { dayplanCommands } from './dayplan/commands.ts';
import { dayplanEvents } from './dayplan/events.ts';
import { handlingCommands } from './handling/commands.ts';
import { handlingEvents } from './handling/events.ts';
import { measureCommands } from './measures/commands.ts';
import { measureEvents } from './measures/events.ts';
import { orderCommands } from './orders/commands.ts';
import { orderEvents } from './orders/events.ts';
import { planningCommands } from './planning/commands.ts';
import { planningEvents } from './planning/events.ts';
import { peopleCommands } from './people/commands.ts';
import { peopleEvents } from './people/events.ts';
import { sessionCommands } from './sessions/commands.ts';
import { sessionEvents } from './sessions/events.ts';
import { stayCommands } from './stays/commands.ts';
import { stayEvents } from './stays/events.ts';
import { wardCommands } from './wards/commands.ts';
import { wardEvents } from './wards/events.ts';

function byName<T extends { readonly name: string }>(
  kind: string,
  all: readonly T[],
): ReadonlyMap<string, T> {
  const map = new Map<string, T>();
  for (const one of all) {
    if (map.has(one.name)) throw new Error(`${kind} ${one.name} is defined twice`);
    map.set(one.name, one);
  }
  return map;
}

/** Every event type there is. A type that is not here cannot be appended or read. */
export const EVENT_TYPES: ReadonlyMap<string, EventType> = byName<EventType>('event type', [
  ...wardEvents,
  ...peopleEvents,
  ...stayEvents,
  ...assessmentEvents,
  ...orderEvents,
  ...handlingEvents,
  ...sessionEvents,
  ...measureEvents,
  ...dayplanEvents,
  ...planningEvents,
  ...aidEvents,
  ...correctionEvents,
] as unknown as readonly EventType[]);

export const COMMAND_TYPES: ReadonlyMap<string, CommandType> = byName<CommandType>('command', [
  ...wardCommands,
  ...peopleCommands,
  ...stayCommands,
  ...assessmentCommands,
  ...orderCommands,
  ...handlingCommands,
  ...sessionCommands,
  ...measureCommands,
  ...dayplanCommands,
  ...planningCommands,
  ...aidCommands,
  ...correctionCommands,
]);

export function eventTypeNamed(name: string): EventType {
  const type = EVENT_TYPES.get(name);
  if (!type) throw new Error(`no event type is called ${name}: this program may be older than the log`);
  return type;
}
