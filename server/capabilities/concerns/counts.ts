/** How often, of what kind and why: nothing that points at a person. Pure. */
import { concernAbout, concernKind } from '@footboard/shared/wire/concerns';
import type { ConcernCounts } from '@footboard/shared/wire/concerns';
import { ELAPSED_DAY, type EpochMs } from '@footboard/shared/kernel/times';
import type { Concern } from './concerns.ts';

export const COUNTED_DAYS = 90;
/** Fewer than this of one reason could be one person's. Common practice for small counts, no source. */
export const FEWEST = 3;

export function countsOf(
  concerns: readonly Concern[],
  now: EpochMs,
): Pick<ConcernCounts, 'days' | 'kinds' | 'fewest'> {
  const counted = concerns.filter(({ at }) => at > now - COUNTED_DAYS * ELAPSED_DAY);
  return {
    days: COUNTED_DAYS,
    fewest: FEWEST,
    kinds: concernKind.options.map((kind) => {
      const of = counted.filter((one) => one.kind === kind);
      return {
        kind,
        count: of.length,
        about: concernAbout.options
          .map((about) => ({ about, count: of.filter((one) => one.about.includes(about)).length }))
          .filter(({ count }) => count >= FEWEST),
      };
    }),
  };
}
