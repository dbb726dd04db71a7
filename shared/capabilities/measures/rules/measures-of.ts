/** The walking measures of a stay for which a therapist turned them on. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { MeasuresView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';

/** Facts up to the instant asked about, in order. Null while they are off. */
export function measuresOf(_facts: readonly Fact[], _t: EpochMs): MeasuresView | null {
  return null;
}
