/**
 * How much would be in use at once if nobody ever had to wait: the demand that is drawn against the
 * supply. The most of each slot, in pieces of equipment or in people.
 */
import type { Candidate } from './arrivals.ts';
import { GROUPS, SLOT_MINUTES, type Group, type Scenario } from './scenario.ts';

const LIFT_OR_MORE = 2;
/** A move of one person with no equipment asks for no second pair of hands. */
export const asksForHands = (hands: number): boolean => hands >= LIFT_OR_MORE;

/** @returns by group, by slot, the most that was in use at once */
export function wantedOf(scenario: Scenario, candidates: readonly Candidate[]): Record<Group, number[]> {
  const { slots, items } = scenario;
  const steps: Record<Group, [at: number, by: number][]> = {
    lift: [],
    'standing-aid': [],
    'lateral-aid': [],
    hands: [],
  };
  const busyUntil = scenario.sources.map(() => 0);
  for (const { at, source, need, planned, hold } of candidates) {
    if (!planned && at < busyUntil[source]!) continue;
    const from = Math.max(at, busyUntil[source]!);
    const item = need.group === null ? undefined : items[need.items[0]!];
    const atBed = hold * (item ? item.handMinutes : need.minutes);
    busyUntil[source] = from + atBed;
    if (need.group !== null && item) {
      steps[need.group].push([from, 1], [from + hold * item.minutes, -1]);
    }
    if (asksForHands(need.hands)) steps.hands.push([from, need.hands], [from + atBed, -need.hands]);
  }
  const most = {} as Record<Group, number[]>;
  for (const group of GROUPS) most[group] = mostBySlot(steps[group], slots);
  return most;
}

function mostBySlot(steps: [at: number, by: number][], slots: number): number[] {
  // At one instant what ends comes first.
  steps.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const most: number[] = [];
  let now = 0;
  let next = 0;
  for (let slot = 0; slot < slots; slot++) {
    let peak = now;
    while (next < steps.length && steps[next]![0] < (slot + 1) * SLOT_MINUTES) {
      now += steps[next++]![1];
      peak = Math.max(peak, now);
    }
    most.push(peak);
  }
  return most;
}
