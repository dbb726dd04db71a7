/** How many lifts of the ward can be used now: the number at the top of the wall. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { BoardView } from '../../board/view.ts';
import type { WardState } from '../../wards/context.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import { isLift, type ItemId } from '../values.ts';
import { NOTHING_SEEN, type ItemState } from './item-state.ts';
import { usableAt } from './usable.ts';

export interface LiftsInput {
  readonly ward: WardState;
  readonly items: ReadonlyMap<ItemId, ItemState>;
  readonly t: EpochMs;
  /** Date the ward day began on, at `t`. */
  readonly day: string;
}

/** Null when the ward keeps no list of lifts. A lift that somebody has counts as usable by nobody else; one not known counts apart. */
export function liftsOf(
  { ward, items, t, day }: LiftsInput,
  note: (at: EpochMs) => void,
): BoardView['lifts'] {
  const lifts = [...ward.items].filter(([, is]) => isLift(is));
  if (lifts.length === 0) return null;
  const words = lifts.map(
    ([id, is]) => usableAt(is, items.get(id) ?? NOTHING_SEEN, t, day, rulesOf(ward).aids, note).word,
  );
  const count = (word: string) => words.filter((one) => one === word).length;
  return { usable: count('usable'), inUse: count('in-use'), unknown: count('unknown'), all: lifts.length };
}
