/** Where the parts of a tile are and how wide, in pixels from its inner edge: the same for every bed. */
import { EDGE, FAR_LINE, GAP, NEAR_LINE, PAD, PEOPLE_WIDE, firstRow, type TilePlan } from './legible.ts';

export const BAR_WIDE = 1.7;
const SIGN_WIDE = 1.15;
const TIER_SHARE = 0.455;
const INITIALS_WIDE = 2.4;
/** A word that stops leaves room for what applies if it cannot wait. */
const STOP_WIDE = 4.1;

export interface Places {
  readonly label: number;
  readonly trust: number;
  readonly stack: number;
  readonly initials: number;
  readonly people: number;
  readonly aid: number;
  readonly across: number;
  readonly stop: number;
  readonly wait: number;
  readonly tier: number;
  readonly goal: number;
  readonly lastUp: number;
  readonly next: number;
  readonly line: number;
}

const kept = new WeakMap<TilePlan, Map<boolean, Places>>();

export function placesOf(plan: TilePlan, withInitials: boolean): Places {
  const known = kept.get(plan) ?? new Map<boolean, Places>();
  kept.set(plan, known);
  const places = known.get(withInitials) ?? work(plan, withInitials);
  known.set(withInitials, places);
  return places;
}

function work({ far, near, width, label }: TilePlan, withInitials: boolean): Places {
  const gap = GAP * far;
  const line = width - 2 * EDGE * near - 2;
  const stack = line - label - far - 2 * gap;
  const initials = withInitials ? INITIALS_WIDE * near : 0;
  const across = line - far - gap;
  const people = PEOPLE_WIDE * far;
  const stop = Math.min(STOP_WIDE * far, across - gap);
  const small = 0.3 * near;
  const bar = BAR_WIDE * near;
  const tier = (line - bar) * TIER_SHARE;
  const sign = SIGN_WIDE * near + small;
  const lastUp = (line - 2 * sign) * 0.51;
  return {
    label,
    stack,
    trust: stack - initials,
    initials,
    people,
    aid: across - people - gap,
    across,
    stop,
    wait: across - stop - 2 * gap,
    tier,
    goal: line - tier - bar - 2 * small,
    lastUp,
    next: line - 2 * sign - lastUp - small,
    line,
  };
}

const px = (n: number) => `${n.toFixed(2)}px`;

/** The same as CSS variables of the grid. */
export function placeVariables(plan: TilePlan): Readonly<Record<string, string>> {
  const { far, near, leading } = plan;
  const places = placesOf(plan, false);
  return {
    '--far': px(far),
    '--near': px(near),
    '--first-row': px(firstRow(far, near) * leading),
    '--far-row': px(FAR_LINE * far * leading),
    '--near-row': px(NEAR_LINE * near * leading),
    '--edge': px(EDGE * near),
    '--pad': px(PAD * near),
    '--gap': px(GAP * far),
    '--small': px(0.3 * near),
    '--sign': px(SIGN_WIDE * near),
    '--bar': px(BAR_WIDE * near),
    '--label': px(places.label),
    '--people': px(places.people),
    '--stop': px(places.stop),
    '--tier': px(places.tier),
    '--last-up': px(places.lastUp),
  };
}
