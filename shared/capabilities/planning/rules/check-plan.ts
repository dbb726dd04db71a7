/**
 * Whether a plan keeps every rule, judged from the problem alone: it shares no code with what makes
 * plans, so that a fault there shows here. Names each breach. Pure.
 */
import type { DayProblem, NeededVisit, Placement, PlannedStaff, Slots } from '../problem.ts';
import type { Breach } from '../proposal.ts';

type Use = { readonly p: Placement; readonly visit: NeededVisit; readonly end: number };

/** No breach: an empty list. `placed` may be what a person edited. */
export function checkPlan(problem: DayProblem, placed: readonly Placement[]): Breach[] {
  const breaches = keeps(problem, placed);
  return [...breaches, ...pins(problem, placed)];
}

function keeps(problem: DayProblem, placed: readonly Placement[]): Breach[] {
  const breaches: Breach[] = [];
  const uses: Use[] = [];
  const seen = new Set<string>();
  for (const p of placed) {
    const visit = problem.visits.find((v) => v.visit === p.visit);
    if (seen.has(p.visit)) breaches.push({ rule: 'twice', visit: p.visit });
    seen.add(p.visit);
    if (!visit) {
      breaches.push({ rule: 'unknown', visit: p.visit });
      continue;
    }
    const use = { p, visit, end: p.start + visit.length };
    uses.push(use);
    breaches.push(...time(problem, use), ...crew(problem, use), ...kit(problem, use));
  }
  for (const [i, a] of uses.entries()) {
    for (const b of uses.slice(i + 1)) breaches.push(...between(problem, a, b));
    breaches.push(...following(uses, a));
  }
  return breaches;
}

const slotsOf = ({ p, end }: Use): number[] => Array.from({ length: end - p.start }, (_, i) => p.start + i);
const inAny = (slot: number, all: readonly Slots[]): boolean =>
  all.some(({ from, until }) => slot >= from && slot < until);
/** Whole in one of them: a gap between two that touch is none. */
const whole = ({ p, end }: Use, all: readonly Slots[]): boolean =>
  all.some(({ from, until }) => p.start >= from && end <= until);

function time({ grid, blocked }: DayProblem, use: Use): Breach[] {
  const { visit } = use;
  const found: Breach[] = [];
  if (use.end > grid.slots || !whole(use, visit.windows)) found.push({ rule: 'window', visit: visit.visit });
  for (const stop of blocked) {
    const meant = stop.stay === visit.stay && (stop.visits?.includes(visit.visit) ?? true);
    if (meant && slotsOf(use).some((slot) => inAny(slot, [stop.at]))) {
      found.push({ rule: stop.why, visit: visit.visit });
    }
  }
  return found;
}

function crew(problem: DayProblem, use: Use): Breach[] {
  const { p, visit } = use;
  const found: Breach[] = [];
  const named = new Set(p.crew);
  if (named.size !== visit.people || p.crew.length !== named.size) {
    found.push({ rule: 'number-of-people', visit: visit.visit });
  }
  const people: PlannedStaff[] = [];
  for (const staff of named) {
    const who = problem.staff.find((one) => one.staff === staff);
    if (!who) {
      found.push({ rule: 'not-on', visit: visit.visit, staff });
      continue;
    }
    people.push(who);
    if (!visit.crew.includes(who.role)) found.push({ rule: 'role', visit: visit.visit, staff });
    if (!whole(use, who.on)) found.push({ rule: 'not-on', visit: visit.visit, staff });
    if (slotsOf(use).some((slot) => inAny(slot, who.breaks)))
      found.push({ rule: 'break', visit: visit.visit, staff });
    if (slotsOf(use).some((slot) => inAny(slot, who.taken)))
      found.push({ rule: 'taken', visit: visit.visit, staff });
  }
  if (!people.some(({ role }) => visit.lead.includes(role))) found.push({ rule: 'role', visit: visit.visit });
  return found;
}

function kit(problem: DayProblem, use: Use): Breach[] {
  const { p, visit } = use;
  const set = p.items.toSorted().join(' ');
  const fits = visit.sets === null ? set === '' : visit.sets.some((s) => s.toSorted().join(' ') === set);
  const found: Breach[] = fits ? [] : [{ rule: 'item-fit', visit: visit.visit }];
  for (const item of p.items) {
    const is = problem.items.find((one) => one.item === item);
    if (!is || !whole(use, is.free)) found.push({ rule: 'item-free', visit: visit.visit, item });
  }
  return found;
}

/** What two visits owe each other. */
function between(problem: DayProblem, a: Use, b: Use): Breach[] {
  const [first, then] = a.p.start <= b.p.start ? [a, b] : [b, a];
  const found: Breach[] = [];
  const pair = { visit: then.visit.visit, other: first.visit.visit };
  const atOnce = then.p.start < first.end;
  const sameStay = first.visit.stay === then.visit.stay;
  if (sameStay && atOnce) found.push({ rule: 'one-visit-at-once', ...pair });
  const rest = Math.max(first.visit.restAfter, then.visit.restBefore);
  if (sameStay && !atOnce && then.p.start - first.end < rest) found.push({ rule: 'rest-interval', ...pair });
  for (const staff of first.p.crew) {
    if (atOnce && then.p.crew.includes(staff)) found.push({ rule: 'one-place-at-once', ...pair, staff });
  }
  for (const item of first.p.items) {
    if (!then.p.items.includes(item)) continue;
    const is = problem.items.find((one) => one.item === item);
    const cleaning = (first.visit.isolation ? is?.cleaningAfterIsolation : is?.cleaning) ?? 0;
    if (atOnce) found.push({ rule: 'item-at-once', ...pair, item });
    else if (!sameStay && then.p.start - first.end < cleaning)
      found.push({ rule: 'item-cleaning', ...pair, item });
  }
  return found;
}

function following(uses: readonly Use[], { p, visit }: Use): Breach[] {
  return visit.after.flatMap((id): Breach[] => {
    const first = uses.find((u) => u.visit.visit === id);
    return first && first.end <= p.start ? [] : [{ rule: 'after', visit: visit.visit, other: id }];
  });
}

/** What is pinned stands as it is, unless the pins by themselves cannot be kept any more. */
function pins(problem: DayProblem, placed: readonly Placement[]): Breach[] {
  return keepable(problem).flatMap((pin): Breach[] => {
    const now = placed.find(({ visit }) => visit === pin.visit);
    const same =
      now?.start === pin.start &&
      now.crew.toSorted().join(' ') === pin.crew.toSorted().join(' ') &&
      now.items.toSorted().join(' ') === pin.items.toSorted().join(' ');
    return same ? [] : [{ rule: 'pinned', visit: pin.visit }];
  });
}

/** The pins that can still be kept: not a rule broken among them. Earlier in the day comes first. */
export function keepable(problem: DayProblem): Placement[] {
  const kept: Placement[] = [];
  const pinned = problem.previous.filter(({ pinned: is }) => is).toSorted((a, b) => a.start - b.start);
  for (const { pinned: _pinned, ...pin } of pinned) {
    if (keeps(problem, [...kept, pin]).length === 0) kept.push(pin);
  }
  return kept;
}
