/** Every decider of every room, by the name of its command. */
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import type { Decider } from '../commanding/decider.ts';
import { deciders as aids } from './aids/decide.ts';
import { deciders as assessments } from './assessments/decide.ts';
import { deciders as corrections } from './corrections/decide.ts';
import { huddleDeciders } from './dayplan/huddle.ts';
import { deciders as seconds } from './dayplan/seconds.ts';
import { deciders as visits } from './dayplan/visits.ts';
import { deciders as handling } from './handling/decide.ts';
import { deciders as measures } from './measures/decide.ts';
import { deciders as orders } from './orders/decide.ts';
import { deciders as people } from './people/decide.ts';
import { dayPlanDeciders } from './planning/accept.ts';
import { peopleOnDeciders } from './planning/people-on.ts';
import { deciders as sessions } from './sessions/decide.ts';
import { deciders as stays } from './stays/decide.ts';
import { deciders as wards } from './wards/decide.ts';

/** @throws Error when a command has no decider or two: the program must not start. */
function byCommand(all: readonly Decider[]): ReadonlyMap<string, Decider> {
  const map = new Map<string, Decider>();
  for (const one of all) {
    if (map.has(one.command.name)) throw new Error(`command ${one.command.name} has two deciders`);
    map.set(one.command.name, one);
  }
  for (const name of COMMAND_TYPES.keys()) {
    if (!map.has(name)) throw new Error(`command ${name} has no decider`);
  }
  return map;
}

export const DECIDERS: ReadonlyMap<string, Decider> = byCommand([
  ...wards,
  ...people,
  ...stays,
  ...assessments,
  ...orders,
  ...handling,
  ...sessions,
  ...measures,
  ...corrections,
  ...aids,
  ...huddleDeciders,
  ...visits,
  ...peopleOnDeciders,
  ...dayPlanDeciders,
  ...seconds,
]);
