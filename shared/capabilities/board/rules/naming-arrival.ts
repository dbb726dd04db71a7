/**
 * Before an arrival, as it would stand with an entry not counted, the arrival is not among the facts:
 * what was never seen then names the arrival as told, so that no reason is left without an entry.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { TO_ALL } from '../../handling/rules/plan.ts';
import type { StayView } from '../view.ts';

/** The same view, with the arrival named by each reason that names no entry and does not apply to all. */
export const namingArrival = (view: StayView, arrival: EventId): StayView => named(view, arrival) as StayView;

function named(value: unknown, arrival: EventId): unknown {
  if (Array.isArray(value)) return value.map((one) => named(one, arrival));
  if (typeof value !== 'object' || value === null) return value;
  const all = Object.entries(value).map(([key, one]) => [key, named(one, arrival)]);
  return { ...Object.fromEntries(all), ...(isBare(value) ? { facts: [arrival] } : {}) };
}

function isBare(value: object): boolean {
  const { facts, words, rule } = value as { facts?: unknown; words?: unknown; rule?: unknown };
  return (
    Array.isArray(facts) && facts.length === 0 && typeof words === 'string' && !TO_ALL.has(rule as string)
  );
}
