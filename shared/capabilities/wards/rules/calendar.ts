import type { EpochMs } from '../../../kernel/times.ts';
import type { WardCalendar, WardState } from '../context.ts';

export type ResolvedLocal =
  | { at: EpochMs }
  | { refused: 'skipped-hour' | 'repeated-hour' | 'no-such-time'; detail: string; remedy: string };

export function wardCalendar(
  _ward: Pick<WardState, 'zone' | 'wardDayFrom' | 'nightFrom' | 'nightTo'>,
): WardCalendar {
  throw new Error('signature only');
}
export function resolveLocal(_zone: string, _local: string, _repeated?: 'first' | 'second'): ResolvedLocal {
  throw new Error('signature only');
}
export function sayTime(_zone: string, _at: EpochMs): string {
  throw new Error('signature only');
}
export function sayDayTime(_zone: string, _at: EpochMs): string {
  throw new Error('signature only');
}
/** The date on the ward's clock, '2026-10-25'. */
export function localDate(_zone: string, _at: EpochMs): string {
  throw new Error('signature only');
}
