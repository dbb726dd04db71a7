/** Where the parts of a forecast by the quarter hour are drawn: pure geometry from what the server answered. */
import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { ForecastPage } from '@footboard/shared/wire/forecast';
import { timeTicks } from './ticks.ts';

export type ForecastGroup = ForecastPage['groups'][number];
export type ForecastSlot = ForecastGroup['slots'][number];

/** Drawn against at least this many, so that one lift does not fill the picture. */
const LEAST = 3;
const UP = 170;
const DOWN = 64;

/** @param text height of a letter's line in px: a projector's is larger */
export function forecastShapes(
  { slots }: ForecastGroup,
  { to, slotMinutes }: Pick<ForecastPage, 'to' | 'slotMinutes'>,
  { width, zone, text }: { width: number; zone: string; text: number },
) {
  const left = text * 3.2;
  const right = Math.max(left + 120, width - 8);
  const top = text;
  const from = slots[0]?.from ?? to;
  const x = scaleLinear([from, to], [left, right]);
  const most = Math.max(LEAST, ...slots.map((s) => Math.max(s.wantedTenth, Math.ceil(s.wanted), s.most)));
  const up = scaleLinear([0, most], [top + UP, top]);
  const base = up(0);
  const axis = text * 1.9;
  const downTop = base + axis + text * 1.2;
  const down = scaleLinear([0, 1], [downTop + DOWN, downTop]);
  const end = slotMinutes * 60_000;
  const step = line<readonly [at: number, n: number]>()
    .x(([at]) => x(at))
    .y(([, n]) => up(n))
    .curve(curveStepAfter);
  const stepped = (of: (slot: ForecastSlot) => number): string => {
    const last = slots.at(-1);
    if (!last) return '';
    return step([...slots.map((slot) => [slot.from, of(slot)] as const), [last.from + end, of(last)]]) ?? '';
  };
  return {
    height: downTop + DOWN + text * 0.6,
    left,
    right,
    base,
    downTop,
    downBase: down(0),
    levels: up
      .ticks(Math.min(4, most))
      .filter((n) => Number.isInteger(n))
      .map((n) => ({ n, y: up(n) })),
    shares: [0.5, 1].map((share) => ({ share, y: down(share) })),
    ticks: timeTicks(from, to, zone, Math.floor((right - left) / (text * 4.5))).map((tick) => ({
      ...tick,
      x: x(tick.at),
    })),
    columns: slots.map((slot) => {
      const wide = x(slot.from + end) - x(slot.from);
      const gap = wide > 5 ? 1 : 0;
      const within = Math.min(slot.wanted, slot.sure);
      return {
        slot,
        x: x(slot.from) + gap / 2,
        width: wide - gap,
        /** What there is enough for, and what is above it. */
        within: { y: up(within), height: base - up(within) },
        above: { y: up(slot.wanted), height: up(within) - up(slot.wanted) },
        tenth: slot.wantedTenth > slot.wanted ? up(slot.wantedTenth) : null,
        late:
          slot.late === null
            ? null
            : {
                y: down(slot.late.chance),
                height: down(0) - down(slot.late.chance),
                low: down(slot.late.low),
                high: down(slot.late.high),
              },
      };
    }),
    sure: stepped((slot) => slot.sure),
    /** Null where every piece was spoken of: then it would hide the other line. */
    most: slots.some((slot) => slot.most > slot.sure) ? stepped((slot) => slot.most) : null,
  };
}
