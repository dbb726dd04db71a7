/** From the ward as it stands to what the simulator takes, and from its answer to the page. Pure. */
import { MINUTE } from '../../../kernel/times.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { ForecastPage } from '../../../wire/forecast.ts';
import type { ItemKind } from '../../aids/values.ts';
import type { BedView, BoardView } from '../../board/view.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { demandOf, type Demand, type Fits } from './demand.ts';
import { horizonOf, quarterOf, slotStart, stretchesIn, SLOTS_OF_DAY, type Horizon } from './horizon.ts';
import { STAY_TYPES, type History } from './history.ts';
import { daySpread, posteriorOf, type Posterior, type Prior } from './rates.ts';
import { GROUPS, SLOT_MINUTES, type AidGroup, type Group, type Scenario, type Source } from './scenario.ts';
import { GROUP_OF_KIND, handsOf, holdTimeOf, itemsOf, type Measured, type SeenItem } from './supply.ts';
import type { Change, Forecast, ForecastInput } from './types.ts';

/** People on in a quarter hour who can move somebody. */
export interface OnSlot {
  readonly n: number;
  readonly said: 'named' | 'usual';
}
export interface Ward {
  readonly board: BoardView;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly now: EpochMs;
  readonly items: readonly SeenItem[];
  /** By stay: what suits each task, as the ward stands. */
  readonly fits: ReadonlyMap<string, Fits>;
  /** What would suit somebody in another bed. */
  readonly fitsIn: (stay: string, bed: BedView) => Fits;
  readonly history: History;
  readonly measured: Measured;
  readonly visits: ReadonlyMap<string, readonly EpochMs[]>;
  /** For each quarter hour of the horizon. */
  readonly on: (horizon: Horizon) => readonly OnSlot[];
}

export interface Composed {
  readonly horizon: Horizon;
  readonly demand: Demand;
  readonly on: readonly OnSlot[];
  readonly listed: ReadonlySet<AidGroup>;
  readonly input: ForecastInput;
}

/** Erlang stages of a hold time: a use of a lift is less spread than an exponential (practice). */
const HOLD_STAGES = 4;
/** Sets of rates that the runs are shared out over. */
const BLOCKS = 20;

/** @param seed the same for the same ward and quarter hour, so that asking twice answers the same */
export function composed(ward: Ward, seed: number): Composed {
  const { board, calendar, rules, now, items, fits, history, measured } = ward;
  const horizon = horizonOf(calendar, now);
  const slots = Array.from({ length: horizon.slots }, (_, slot) => slotStart(horizon, slot));
  const listed = new Set(items.flatMap(({ is }) => GROUP_OF_KIND[is.kind] ?? []));
  const sims = itemsOf(items, horizon.from, rules.forecast, measured);
  const asking = {
    items: sims,
    listed,
    horizon,
    meals: stretchesIn(calendar.zone, rules.planning.meals.value, horizon),
    mealChance: (history.meals.taken + 1) / (history.meals.stayDays * rules.planning.meals.value.length + 2),
    visits: ward.visits,
    chairSpellMinutes: rules.activity.chairSpellHours.value * 60,
    rules: rules.forecast,
  };
  const demand = demandOf({ ...asking, beds: board.beds, fits });
  const on = ward.on(horizon);
  const people = on.map(({ n }) => n);
  const scenario: Scenario = {
    slots: horizon.slots,
    items: sims,
    sources: demand.sources,
    hands: handsOf(people, rules.forecast.handsShare.value),
    on: people,
    night: slots.map((at) => calendar.night(at).is),
    lateAfter: rules.forecast.lateMinutes.value,
    holdStages: HOLD_STAGES,
  };
  const belief = beliefOf(ward, slots);
  const sourceIn = (place: number, bed: BedView): Source | null => {
    const { stay } = demand.of[place]!;
    const there = { ...bed, stay, state: 'occupied' as const };
    const moved = demandOf({
      ...asking,
      beds: [there],
      fits: new Map([[stay.stay, ward.fitsIn(stay.stay, bed)]]),
    });
    return moved.sources[0] ?? null;
  };
  return {
    horizon,
    demand,
    on,
    listed,
    input: {
      scenario,
      belief,
      runs: { seed, runs: rules.forecast.runs.value, blocks: BLOCKS },
      sayFrom: rules.forecast.sayFrom.value,
      changes: [...changesOf(ward, scenario, demand), ...swapsOf(board, demand, sourceIn)],
    },
  };
}

/** The flat start by quarter of the day, then the ward's own record, then as the slots of the horizon have it. */
function beliefOf(
  { board, calendar, rules, history, now }: Ward,
  slots: readonly EpochMs[],
): ForecastInput['belief'] {
  const { movesByDay, movesByNight, startDays } = rules.forecast;
  const { from, to } = calendar.wardDay(now);
  // By an accepted plan the day's planned moves have their times: they are not guessed as well.
  const byPlan = Boolean(board.dayPlan) && slots.at(-1)! < to;
  const seen = byPlan ? history.besidePlan : history.seen;
  const quarters = Array.from({ length: SLOTS_OF_DAY }, (_, i) => from + i * SLOT_MINUTES * MINUTE);
  const isNight = Array.from({ length: SLOTS_OF_DAY }, () => false);
  for (const at of quarters) isNight[quarterOf(calendar.zone, at)] = calendar.night(at).is;
  const nights = Math.max(1, isNight.filter(Boolean).length);
  const days = Math.max(1, SLOTS_OF_DAY - nights);
  const prior: Prior = {
    perSlot: isNight.map((night) => (night ? movesByNight.value / nights : movesByDay.value / days)),
    days: startDays.value,
  };
  const posteriors = STAY_TYPES.map((type) => posteriorOf(prior, seen[type]));
  const perDay = posteriors.map(({ shape, days: n }) => shape.reduce((sum, a, i) => sum + a / n[i]!, 0));
  const spread = daySpread(
    history.days.map(({ moves, planned }) => (byPlan ? moves - planned : moves)),
    history.days.map(({ stays }) => STAY_TYPES.reduce((sum, type, i) => sum + stays[type] * perDay[i]!, 0)),
  );
  const places = slots.map((at) => quarterOf(calendar.zone, at));
  const mapped = ({ shape, days: n }: Posterior): Posterior => ({
    shape: places.map((i) => shape[i]!),
    days: places.map((i) => n[i]!),
  });
  return { posteriors: posteriors.map(mapped), daySpread: spread };
}

/** How far a planned move is moved to try it out (minutes). */
const MOVE_BY = [-60, 60] as const;
/** What is borrowed is of the kind that any room takes. */
const KIND_OF_GROUP = {
  lift: 'floor-lift',
  'standing-aid': 'standing-aid',
  'lateral-aid': 'lateral-aid',
} as const satisfies Record<AidGroup, ItemKind>;

function changesOf({ rules, measured }: Ward, scenario: Scenario, demand: Demand): Change[] {
  const wanted = new Set(
    demand.sources.flatMap(({ care, due }) =>
      [care.day, ...due.map(({ need }) => need)].flatMap((need) => need?.group ?? []),
    ),
  );
  const borrowed = [...wanted].map((group): Change => {
    const { minutes, handMinutes } = holdTimeOf(KIND_OF_GROUP[group], rules.forecast, measured);
    const when = { sure: 1, freeFrom: 0, from: 0, to: 0 } as const;
    return { kind: 'borrow', item: { item: 'borrowed', group, ...when, minutes, handMinutes } };
  });
  const moves = demand.sources.flatMap(({ due }, source) =>
    due.flatMap(({ kind, at }, place): Change[] =>
      kind === 'turn' || kind === 'back-to-bed'
        ? []
        : MOVE_BY.filter((by) => at + by >= 0).map((by) => ({
            kind: 'move-session',
            source,
            due: place,
            by,
          })),
    ),
  );
  // Booked visits first: a meal can be brought later only within limits.
  const order = (change: Change) =>
    change.kind === 'move-session' && scenario.sources[change.source]!.due[change.due]!.kind === 'visit'
      ? 0
      : 1;
  const { handsShare } = rules.forecast;
  // Two who do nothing else add what they would otherwise have spent on their own people.
  const more = Math.max(1, Math.round(2 * (1 - handsShare.value)));
  return [
    ...borrowed,
    { kind: 'pair-of-aides', hands: more },
    ...moves.toSorted((a, b) => order(a) - order(b)),
  ];
}

/** So many people are tried under the track at most. */
const MOST_SWAPS = 4;

/** Who is lifted from the floor and would be lifted by a track in the bed of somebody who is not lifted. */
function swapsOf(
  board: BoardView,
  demand: Demand,
  sourceIn: (place: number, bed: BedView) => Source | null,
): Change[] {
  const lifted = new Set(demand.of.filter(({ type }) => type === 'lifted').map(({ bed }) => bed.bed));
  const track = board.beds.find(
    (bed) => bed.ceilingTrack && !lifted.has(bed.bed) && bed.stay?.isolation !== true,
  );
  if (!track) return [];
  return demand.of
    .flatMap(({ bed, stay, type }, place): Change[] => {
      if (type !== 'lifted' || bed.ceilingTrack || stay.isolation) return [];
      const becomes = sourceIn(place, track);
      return becomes ? [{ kind: 'swap-to-track', source: place, becomes, track: track.bed }] : [];
    })
    .slice(0, MOST_SWAPS);
}

/** The answer of the simulator as the page that screens read. */
export function pageOf(
  { board, rules, items, history, measured }: Ward,
  { horizon, demand, on, listed, input }: Composed,
  answer: Forecast,
): Omit<ForecastPage, 'ward' | 'position'> {
  const { scenario } = input;
  const at = (slot: number) => slotStart(horizon, slot);
  const atMinute = (minutes: number) => horizon.from + minutes * MINUTE;
  const labels = new Map(board.beds.map(({ bed, label }) => [bed as string, label]));
  const named = (bed: string) => ({ bed: bed as BedView['bed'], label: labels.get(bed) ?? bed });
  const who = (place: number) => named(demand.of[place]!.bed.bed);
  const asked = new Set<Group>(
    GROUPS.filter((group) => answer.groups[group].some((slot) => slot.wanted > 0)),
  );
  const said = new Set(on.map((slot) => slot.said));
  const there = (group: Group, slot: number): { sure: number; most: number } => {
    if (group === 'hands') return { sure: scenario.hands[slot]!, most: scenario.hands[slot]! };
    const here = scenario.items.filter(
      (one) => one.group === group && one.freeFrom < (slot + 1) * SLOT_MINUTES,
    );
    return { sure: here.filter(({ sure }) => sure === 1).length, most: here.length };
  };
  return {
    from: horizon.from,
    to: horizon.to,
    slotMinutes: SLOT_MINUTES,
    lateMinutes: scenario.lateAfter,
    record: {
      days: history.days.length,
      moves: history.days.reduce((sum, { moves }) => sum + moves, 0),
      fewDays: rules.forecast.fewDays.value,
      uses: items
        .map(({ is }) => holdTimeOf(is.kind, rules.forecast, measured).uses)
        .reduce((a, b) => Math.max(a, b), 0),
    },
    runs: input.runs.runs,
    people: said.size > 1 ? 'partly' : said.has('named') ? 'named' : 'usual',
    groups: GROUPS.filter((group) => asked.has(group)).map((group) => ({
      group,
      listed: group === 'hands' || listed.has(group),
      slots: answer.groups[group].map((slot, i) => ({ from: at(i), ...slot, ...there(group, i) })),
    })),
    clashes: answer.clashes.map(({ from, to, lateADay, ...rest }) => ({
      ...rest,
      from: at(from),
      to: at(to),
      late: lateADay,
    })),
    waits: answer.waits.map(({ source, chance, slot }) => ({
      ...who(source),
      stay: demand.of[source]!.stay.stay,
      chance,
      about: at(slot),
    })),
    helps: answer.helps.map(({ change, from, to, before, after }) => {
      const tried = { from: at(from), to: at(to), before, after };
      switch (change.kind) {
        case 'swap-to-track':
          return { kind: change.kind, ...tried, who: who(change.source), with: named(change.track) };
        case 'move-session': {
          const due = scenario.sources[change.source]!.due[change.due]!;
          return {
            kind: change.kind,
            ...tried,
            who: who(change.source),
            what: due.kind,
            was: atMinute(due.at),
            becomes: atMinute(due.at + change.by),
          };
        }
        case 'borrow':
          return { kind: change.kind, ...tried, group: change.item.group };
        default:
          return { kind: change.kind, ...tried };
      }
    }),
    asked: answer.askedADay,
    late: answer.lateADay,
    leftOut: demand.leftOut.map(({ bed, why }) => ({ ...named(bed), why })),
  };
}
