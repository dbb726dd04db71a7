/** Where the parts of a stay's course are drawn: pure geometry from what the server answered. */
import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { StayCourse } from '@footboard/shared/wire/pictures';
import { timeTicks, type Tick } from './ticks.ts';

export const ROW = 22;
const LEFT = 92;
const RIGHT = 14;
const TOP = 10;
const BAR = 22;
const LANE_GAP = 14;
const AXIS = 26;
/** About as wide as a letter of the picture's text. */
const LETTER = 7;

export interface Box {
  readonly x: number;
  readonly width: number;
}
export interface CourseShapes {
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly words: readonly { readonly word: string; readonly y: number }[];
  readonly tier: { readonly top: number; readonly bottom: number };
  readonly lines: readonly { readonly d: string; readonly broken: boolean }[];
  readonly tierGaps: readonly (Box & { readonly known: 'not-known' | 'no-tier'; readonly fits: boolean })[];
  readonly away: readonly Box[];
  readonly holds: readonly (Box & {
    readonly y: number;
    readonly open: boolean;
    readonly of: StayCourse['holds'][number];
    readonly room: number;
  })[];
  readonly holdsLane: { readonly top: number; readonly height: number };
  readonly triggers: readonly {
    x: number;
    of: StayCourse['triggers'][number];
    room: number;
    ends: boolean;
  }[];
  readonly triggersY: number;
  readonly sessions: readonly { readonly x: number; readonly of: StayCourse['sessions'][number] }[];
  readonly dayGaps: readonly (Box & { readonly fits: boolean })[];
  readonly sessionsY: number;
  /** The goal of each ward day on which one applied. */
  readonly goals: readonly (Box & {
    readonly is: GoalIs;
    readonly day: StayCourse['days'][number];
    readonly room: number;
  })[];
  readonly goalsY: number;
  readonly ticks: readonly (Tick & { readonly x: number })[];
  readonly axisY: number;
}

type Standing = StayCourse['standing'][number];
export type GoalIs = 'met' | 'not-met' | 'not-recorded';
/** What cannot be said of a goal is a gap, never "not met". */
export const goalIs = ({ met }: { readonly met: boolean | null }): GoalIs =>
  met === null ? 'not-recorded' : met ? 'met' : 'not-met';

type X = ScaleLinear<number, number>;

export function courseShapes(
  course: StayCourse,
  { from, to, width, zone }: { from: number; to: number; width: number; zone: string },
): CourseShapes {
  const left = LEFT;
  const right = Math.max(left + 80, width - RIGHT);
  const x = scaleLinear([from, Math.max(to, from + 60_000)], [left, right]);
  const tierTop = TOP;
  const tierBottom = tierTop + ROW * course.tiers.length;
  const y = scaleLinear([0, 1], [tierBottom - ROW / 2, tierTop + ROW / 2]);
  const within = <T extends { from: number; to: number | null }>(spans: readonly T[]) =>
    spans.filter((one) => one.from < to && (one.to ?? Infinity) > from);
  const box = (one: { from: number; to: number | null }): Box => {
    const start = x(Math.max(from, one.from));
    return { x: start, width: Math.max(1, x(Math.min(to, one.to ?? to)) - start) };
  };

  const standing = within(course.standing);
  const gaps = runs(standing, (a, b) => a.notch === null && b.notch === null && a.tier === b.tier);
  const stacked = stack(within(course.holds));
  const holdsTop = tierBottom + LANE_GAP;
  const holdsHeight = BAR * Math.max(1, stacked.rows);
  const triggersY = holdsTop + holdsHeight + LANE_GAP + BAR / 2;
  const sessionsY = triggersY + BAR + LANE_GAP;
  const goalsY = sessionsY + BAR + 4;
  const axisY = goalsY + BAR - 4;
  const triggers = course.triggers.filter((one) => one.at >= from && one.at <= to);
  return {
    height: axisY + AXIS,
    left,
    right,
    words: course.tiers.map(({ word, notch }) => ({ word, y: y(notch) })),
    tier: { top: tierTop, bottom: tierBottom },
    lines: tierLines(standing, { from, to }, x, y),
    tierGaps: gaps
      .filter((one) => one.first.notch === null)
      .map(({ first, from: start, to: end }) => {
        const at = box({ from: start, to: end });
        const known = first.tier === null ? ('no-tier' as const) : ('not-known' as const);
        return { ...at, known, fits: at.width > 14 * LETTER };
      }),
    away: runs(standing, (a, b) => a.away && b.away)
      .filter((one) => one.first.away)
      .map(box),
    holds: stacked.spans.map(({ of, row, room }) => {
      const at = box(of);
      return {
        ...at,
        y: holdsTop + row * BAR,
        open: of.to === null,
        of,
        room: (x(Math.min(to, room)) - at.x) / LETTER,
      };
    }),
    holdsLane: { top: holdsTop, height: holdsHeight },
    triggers: triggers.map((of, i) => {
      const at = x(of.at);
      const next = triggers[i + 1];
      const before = triggers[i - 1];
      const after = ((next ? x(next.at) : right) - at - 10) / LETTER;
      const behind = (at - (before ? x(before.at) : left) - 10) / LETTER;
      // The last one's word may stand before its mark, where there is more room.
      const ends = !next && behind > after;
      return { x: at, of, room: ends ? behind : after, ends };
    }),
    triggersY,
    sessions: course.sessions
      .filter((one) => one.at >= from && one.at <= to)
      .map((of) => ({ x: x(of.at), of })),
    dayGaps: within(course.days.filter((day) => !day.recorded)).map((day) => {
      const at = box(day);
      return { ...at, fits: at.width > 13 * LETTER };
    }),
    sessionsY,
    goals: within(course.days).flatMap((day) => {
      if (!day.goal) return [];
      const at = box(day);
      return {
        x: at.x + 1,
        width: Math.max(1, at.width - 2),
        is: goalIs(day.goal),
        day,
        room: at.width / LETTER - 1,
      };
    }),
    goalsY,
    ticks: timeTicks(from, to, zone, Math.max(2, Math.floor((right - left) / 84))).map((tick) => ({
      ...tick,
      x: x(tick.at),
    })),
    axisY,
  };
}

/** Neighbouring spans that belong together, as one. */
function runs(spans: readonly Standing[], alike: (a: Standing, b: Standing) => boolean) {
  const found: { first: Standing; from: number; to: number }[] = [];
  let last: Standing | null = null;
  for (const span of spans) {
    const run = found.at(-1);
    if (run && last && alike(last, span)) run.to = span.to;
    else found.push({ first: span, from: span.from, to: span.to });
    last = span;
  }
  return found;
}

/** One path for each stretch in which the line is whole or broken; where no tier is known there is none. */
function tierLines(spans: readonly Standing[], shown: { from: number; to: number }, x: X, y: X) {
  const path = line<readonly [number, number]>().curve(curveStepAfter);
  const lines: { d: string; broken: boolean }[] = [];
  let points: [number, number][] = [];
  let broken = false;
  const end = () => {
    if (points.length > 0) lines.push({ d: path(points)!, broken });
    points = [];
  };
  let before: Standing | null = null;
  for (const span of spans) {
    const from = x(Math.max(span.from, shown.from));
    const to = x(Math.min(span.to, shown.to));
    if (span.notch === null) end();
    else {
      const breaks = span.trust !== 'current';
      if (points.length > 0 && breaks !== broken) end();
      broken = breaks;
      // The step itself belongs to the new stretch.
      if (points.length === 0 && before?.notch != null) points.push([from, y(before.notch)]);
      points.push([from, y(span.notch)], [to, y(span.notch)]);
    }
    before = span;
  }
  end();
  return lines;
}

/** Holds that stood at once are drawn one under the other. */
function stack(holds: StayCourse['holds']) {
  const ends: { until: number; index: number }[] = [];
  const spans: { of: StayCourse['holds'][number]; row: number; room: number }[] = [];
  for (const of of holds) {
    const free = ends.findIndex((one) => one.until <= of.from);
    const row = free === -1 ? ends.length : free;
    if (free !== -1) spans[ends[free]!.index]!.room = of.from;
    ends[row] = { until: of.to ?? Infinity, index: spans.length };
    spans.push({ of, row, room: Infinity });
  }
  return { spans, rows: ends.length };
}
