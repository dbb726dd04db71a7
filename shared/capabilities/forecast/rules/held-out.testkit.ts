/** The forecast on an invented ward: taught on some weeks, asked about later ones. */
import { daySpread, posteriorOf, type Posterior, type Prior } from './rates.ts';
import type { Scenario, Source } from './scenario.ts';
import type { Told } from './scoring.testkit.ts';
import { DAY_SLOTS, MEALS, NIGHT, recordOf, trueDay, type Truth } from './synthetic.testkit.ts';
import { tallyOf } from './tally.ts';

const DAYS_TAUGHT = 28;
const slots = <T>(of: (slot: number) => T): T[] => Array.from({ length: DAY_SLOTS }, (_, slot) => of(slot));
const isNight = (slot: number) => slot * 15 >= NIGHT;

/** The flat start of the rules document. */
const nightSlots = slots(isNight).filter(Boolean).length;
export const FLAT: Prior = {
  perSlot: slots((slot) => (isNight(slot) ? 1 / nightSlots : 5 / (DAY_SLOTS - nightSlots))),
  days: 7,
};

const scenarioOf = ({ people, lifts, useMinutes }: Truth, mealChance: number): Scenario => {
  const need = {
    group: 'lift',
    items: slots((i) => i).slice(0, lifts),
    hands: 1,
    minutes: useMinutes,
  } as const;
  const source = (i: number): Source => ({
    bed: `${i}`,
    type: 0,
    scale: 1,
    care: { day: need, night: need },
    from: 0,
    to: Infinity,
    due: MEALS.map((at) => ({
      kind: 'meal',
      at: at - 15,
      spread: 15,
      chance: mealChance,
      need,
      follows: { after: 75, need },
    })),
  });
  return {
    slots: DAY_SLOTS,
    items: need.items.map((i) => ({
      item: `${i}`,
      group: 'lift',
      sure: 1,
      freeFrom: 0,
      from: 0,
      to: Infinity,
      minutes: useMinutes,
      handMinutes: useMinutes / 2,
    })),
    sources: Array.from({ length: people }, (_, i) => source(i)),
    hands: slots(() => Infinity),
    on: slots(() => Infinity),
    night: slots(isNight),
    lateAfter: 10,
    holdStages: 4,
  };
};

function chances(scenario: Scenario, posterior: Posterior, spread: number, runs: number): number[] {
  const tally = tallyOf(
    scenario,
    { posteriors: [posterior], daySpread: spread },
    { seed: 5, runs, blocks: 20 },
  );
  const total = (of: readonly Float64Array[], slot: number) =>
    of.reduce((sum, block) => sum + block[slot]!, 0);
  return slots((slot) => {
    const asked = total(tally.asked.lift, slot);
    return asked === 0 ? 0 : total(tally.late.lift, slot) / asked;
  });
}

export interface HeldOut {
  readonly told: readonly Told[];
  /** The same machine with nothing recorded: the flat start. */
  readonly flat: readonly Told[];
  /** One chance for every request: how often it happened in the weeks that were taught. */
  readonly everyDay: readonly Told[];
}

export function heldOut(truth: Truth, { days, runs }: { days: number; runs: number }): HeldOut {
  const taught = Array.from({ length: DAYS_TAUGHT }, (_, day) => trueDay(truth, day));
  const { seen, byDay, mealChance } = recordOf(truth, taught);
  const posterior = posteriorOf(FLAT, seen);
  const perStay = posterior.shape.reduce((sum, a, i) => sum + a / posterior.days[i]!, 0);
  const spread = daySpread(
    byDay.map(({ moves }) => moves),
    byDay.map(({ stays }) => stays * perStay),
  );
  const learnt = chances(scenarioOf(truth, mealChance), posterior, spread, runs);
  const guessed = chances(scenarioOf(truth, 0.5), posteriorOf(FLAT, null), Infinity, runs);
  const before = taught.flatMap(({ outcomes }) => outcomes);
  const base = before.filter(({ late }) => late).length / before.length;
  const after = Array.from({ length: days }, (_, day) => trueDay(truth, DAYS_TAUGHT + day)).flatMap(
    ({ outcomes }) => outcomes,
  );
  const by = (of: (slot: number) => number): Told[] =>
    after.map(({ slot, late }) => ({ chance: of(slot), happened: late }));
  return { told: by((slot) => learnt[slot]!), flat: by((slot) => guessed[slot]!), everyDay: by(() => base) };
}
