/** "On own": set by a nurse or therapist, never derived, and only where nothing stands against it. */
import { NOT_KNOWN } from '../../assessments/rules/tier.ts';
import type { Because } from '../../board/because.ts';
import type { Task } from '../values.ts';
import type { Demand } from './demand.ts';
import type { Help } from './help.ts';
import { cooperates } from './transfer-help.ts';
import type { PlanInput } from './types.ts';

/** Whether what was set still stands for the person as a whole. */
export function onOwnStands(input: PlanInput): boolean {
  const c = input.capability;
  return (
    input.onOwn !== null &&
    cooperates(c) &&
    c.clearedFree.has('walk') &&
    input.pressureDrop === null &&
    input.firstTimeUpPending === null &&
    input.holds.length === 0 &&
    input.trust.openTriggers.length === 0 &&
    input.trust.state !== 'not-known' &&
    input.tier.word !== NOT_KNOWN
  );
}

const PLACES: Readonly<Partial<Record<Task, readonly ('room' | 'toilet' | 'ward')[]>>> = {
  'in-bed': ['room', 'ward'],
  'edge-of-bed': ['room', 'ward'],
  'bed-chair': ['room', 'ward'],
  stand: ['room', 'ward'],
  toilet: ['toilet'],
  walk: ['ward'],
  'in-chair': ['room', 'ward'],
};

/** The reason when "on own" covers this task at this time of day and the help is nobody and no more than a walking support. */
export function onOwnReaches(
  task: Task,
  when: 'day' | 'night',
  help: Help,
  input: PlanInput,
): Because | null {
  const own = input.onOwn;
  if (!own || !own.value.when.includes(when)) return null;
  if (!help.aids.every((a) => a === 'walking-support')) return null;
  const place = PLACES[task]?.find((p) => own.value.where.includes(p));
  if (!place) return null;
  return { rule: 'on-own', facts: [own.fact], words: `On own set: ${place}, ${when}` };
}

/** Over the feet: nobody does these alone while standing or walking is stopped. */
const OVER_FEET: ReadonlySet<Task> = new Set(['bed-chair', 'toilet', 'stand', 'walk']);

/**
 * Why "on own", though set, does not count for this task: a hold is on, or the day plan stops standing
 * or walking. Null where nothing holds it back, and where it was never set for such a place.
 */
export function onOwnHeldBack(task: Task, input: PlanInput, onFeet: readonly Demand[]): Because | null {
  const own = input.onOwn;
  if (!own || !PLACES[task]?.some((p) => own.value.where.includes(p))) return null;
  const held = input.holds.length > 0;
  const stops = onFeet.filter((d) => d.help.hold).flatMap((d) => d.because.facts);
  if (!held && (stops.length === 0 || !OVER_FEET.has(task))) return null;
  return {
    rule: 'on-own/held-back',
    facts: [...new Set([own.fact, ...(held ? input.holds.map((h) => h.event) : stops)])],
    words: held
      ? 'On own does not count while a hold is on'
      : 'On own does not count while standing or walking is stopped',
  };
}
