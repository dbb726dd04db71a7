/** When requests would come on one simulated day, whatever becomes of them: the common random numbers of every what-if. */
import { exponential, holdOf, randomOf } from '../../../kernel/random.ts';
import { SLOT_MINUTES, type Need, type Rates, type Scenario, type Source } from './scenario.ts';

export interface Candidate {
  readonly at: number;
  readonly source: number;
  readonly need: Need;
  /** A planned one waits for its turn at the same bed; a care request of a busy bed does not arise. */
  readonly planned: boolean;
  /** Hold time as a multiple of its mean. */
  readonly hold: number;
}

export function candidatesOf(
  scenario: Scenario,
  rates: Rates,
  seed: number,
  run: number,
  dayFactor = 1,
): Candidate[] {
  const all: Candidate[] = [];
  scenario.sources.forEach((source, i) => {
    ofCare(all, scenario, source, i, rates, dayFactor, seed, run);
    source.due.forEach((due, j) => {
      const random = randomOf(seed, run, i, 1000 + j);
      const here = random.next() < due.chance;
      const at = Math.max(0, due.at + (2 * random.next() - 1) * due.spread);
      const hold = holdOf(random, scenario.holdStages);
      const back = holdOf(random, scenario.holdStages);
      if (!here) return;
      add(all, scenario, source, { at, source: i, need: due.need, planned: true, hold });
      if (due.follows) {
        const then = {
          at: at + due.follows.after,
          source: i,
          need: due.follows.need,
          planned: true,
          hold: back,
        };
        add(all, scenario, source, then);
      }
    });
  });
  return all.toSorted((a, b) => a.at - b.at);
}

const add = (all: Candidate[], { slots }: Scenario, { from, to }: Source, one: Candidate): void => {
  if (one.at >= from && one.at < Math.min(to, slots * SLOT_MINUTES)) all.push(one);
};

/** A Poisson process whose rate changes by slot: steps of mean 1 in the summed rate, read back as times. */
function ofCare(
  all: Candidate[],
  scenario: Scenario,
  of: Source,
  source: number,
  rates: Rates,
  dayFactor: number,
  seed: number,
  run: number,
): void {
  const { slots, night, holdStages } = scenario;
  const { type, scale, care } = of;
  const bySlot = rates[type]!;
  const random = randomOf(seed, run, source);
  let slot = 0;
  let from = 0;
  let left = exponential(random);
  while (slot < slots) {
    const rate = bySlot[slot]! * scale * dayFactor;
    const inSlot = rate * ((slot + 1) * SLOT_MINUTES - from);
    if (inSlot < left) {
      left -= inSlot;
      slot++;
      from = slot * SLOT_MINUTES;
      continue;
    }
    from += left / rate;
    const hold = holdOf(random, holdStages);
    const need = night[slot] ? care.night : care.day;
    if (need) add(all, scenario, of, { at: from, source, need, planned: false, hold });
    left = exponential(random);
  }
}
