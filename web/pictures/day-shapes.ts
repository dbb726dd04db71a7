/** Where the parts of a ward day by the hour are drawn: pure geometry from what the server answered. */
import { scaleBand, scaleLinear } from 'd3-scale';
import { stack } from 'd3-shape';
import type { WardHours } from '@footboard/shared/wire/pictures';
import { wardTime } from '../board/clock.ts';

export const KINDS = ['done', 'part', 'stopped', 'notDone'] as const;
export type Kind = (typeof KINDS)[number];
type Hour = WardHours['hours'][number];

export const notDoneIn = (hour: Hour): number => Object.values(hour.notDone).reduce((sum, n) => sum + n, 0);
export const countIn = (hour: Hour, kind: Kind): number =>
  kind === 'notDone' ? notDoneIn(hour) : hour[kind];
export const allIn = (hour: Hour): number => KINDS.reduce((sum, kind) => sum + countIn(hour, kind), 0);

const LEFT = 30;
const RIGHT = 6;
const TOP = 22;
const UP = 190;
const AXIS = 26;
const DOWN = 90;
/** A column is drawn against at least this many, so that one entry does not fill the picture. */
const LEAST = 4;

export function dayShapes({ hours }: WardHours, width: number, zone: string) {
  const band = scaleBand(
    hours.map((hour) => hour.from),
    [LEFT, Math.max(LEFT + 120, width - RIGHT)],
  ).paddingInner(0.18);
  const most = Math.max(LEAST, ...hours.map(allIn));
  const up = scaleLinear([0, most], [TOP + UP, TOP]);
  const downTop = TOP + UP + AXIS;
  const silent = Math.max(LEAST, ...hours.map((hour) => hour.nothingYet ?? 0));
  const down = scaleLinear([0, silent], [downTop, downTop + DOWN]);
  const layers = stack<Hour, Kind>().keys(KINDS).value(countIn)([...hours]);
  const every = Math.ceil(34 / band.step());
  return {
    height: downTop + DOWN + 20,
    left: LEFT,
    right: Math.max(LEFT + 120, width - RIGHT),
    width: band.bandwidth(),
    base: up(0),
    downTop,
    levels: up
      .ticks(4)
      .filter((n) => Number.isInteger(n))
      .map((n) => ({ n, y: up(n) })),
    columns: hours.map((hour, i) => ({
      hour,
      x: band(hour.from)!,
      total: allIn(hour),
      totalY: up(allIn(hour)) - 6,
      parts: layers.flatMap((layer) => {
        const [low, high] = layer[i]!;
        return high > low
          ? [{ kind: layer.key, y: up(high), height: up(low) - up(high), count: high - low }]
          : [];
      }),
      silent:
        hour.nothingYet === null ? null : { height: down(hour.nothingYet) - downTop, n: hour.nothingYet },
      label: i % every === 0 ? wardTime(hour.from, zone).slice(0, 2) : '',
    })),
    /** Where the hours to come begin; null when the day is over. */
    toCome: hours.some((hour) => !hour.begun)
      ? band(hours.find((hour) => !hour.begun)!.from)! - (band.step() - band.bandwidth()) / 2
      : null,
  };
}
