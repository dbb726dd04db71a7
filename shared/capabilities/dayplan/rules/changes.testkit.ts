/** A ward told twice, for tests of what changed between two boards: once as it was at the huddle, once later. */
import type { StayId } from '../../../kernel/ids.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import {
  begun,
  calendar,
  hours,
  setUpWard,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { BoardView } from '../../board/view.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import { changesBetween, type Change, type Happened } from './changes.ts';

/** The board before, and the one of now. */
export const HUDDLE = 2;
export const LATER = 4;

const say = (at: number): string => sayDayTime(calendar.zone, at);
export const stayIn = (bed: number): StayId => `stay-${bed}` as StayId;

/** By the bed: what was told of whoever is in it. */
type ByBed = Readonly<Record<number, readonly Told[]>>;

export function arrive(log: WardLog, bed: number, at: number, told: readonly Told[] = []): void {
  const stay = stayIn(bed);
  log.add(`stay/${stay}`, { ...begun(stay, `bed-${bed}`), at });
  log.add(`bed/bed-${bed}`, { type: 'bed-taken', at, payload: { bed: `bed-${bed}`, stay } });
  tell(log, bed, told);
}
export function leave(log: WardLog, bed: number, at: number): void {
  tell(log, bed, [{ type: 'stay-ended', at, payload: { bed: `bed-${bed}`, to: 'home' } }]);
  log.add(`bed/bed-${bed}`, { type: 'bed-freed', at, payload: { bed: `bed-${bed}`, stay: stayIn(bed) } });
}
export function move(log: WardLog, bed: number, to: number, at: number): void {
  const stay = stayIn(bed);
  tell(log, bed, [{ type: 'stay-moved', at, payload: { from: `bed-${bed}`, to: `bed-${to}` } }]);
  log.add(`bed/bed-${bed}`, { type: 'bed-freed', at, payload: { bed: `bed-${bed}`, stay } });
  log.add(`bed/bed-${to}`, { type: 'bed-taken', at, payload: { bed: `bed-${to}`, stay } });
}
export function tell(log: WardLog, bed: number, told: readonly Told[]): void {
  for (const one of told) log.add(`stay/${stayIn(bed)}`, one);
}

export function wardOf(byBed: ByBed): WardLog {
  const log = new WardLog();
  setUpWard(log);
  for (const [bed, told] of Object.entries(byBed)) arrive(log, Number(bed), 0, told);
  return log;
}
export function boardOf(log: WardLog, t: number): BoardView {
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return viewBoard(state, hours(t)).board;
}
export const between = (before: BoardView, now: BoardView, happened: readonly Happened[] = []): Change[] =>
  changesBetween(before, now, happened, say);

/** What changed from the huddle until later in a ward in which this was told until then, and this after it. */
export function changed(until: ByBed, after: (log: WardLog) => void): Change[] {
  const log = wardOf(until);
  const before = boardOf(log, HUDDLE);
  after(log);
  return between(before, boardOf(log, LATER));
}
/** The same for one person alone, in bed 1. */
export const changedFor = (until: readonly Told[], after: readonly Told[]): Change[] =>
  changed({ 1: until }, (log) => tell(log, 1, after));

export const lines = (changes: readonly Change[]): string[] =>
  changes.map(({ label, kind, words }) => `${label} ${kind}: ${words}`);
export const ofKind = (changes: readonly Change[], kind: Change['kind']): Change[] =>
  changes.filter((one) => one.kind === kind);
