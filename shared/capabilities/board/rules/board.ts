/**
 * The board projection's fold. Events of a page are only pushed to the stays they speak of; facts
 * and rules are worked out when a view is asked for. A stay that has ended and holds no bed is
 * dropped, so that memory follows the beds, not the length of the log.
 */
import { stayOf, type LoggedEvent } from '../../../kernel/event-type.ts';
import type { BedId, StaffId, StayId, WardId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { effectiveFacts, type Effective } from '../../corrections/rules/effective.ts';
import { foldItem, NOTHING_SEEN, type ItemState } from '../../aids/rules/item-state.ts';
import { liftsOf } from '../../aids/rules/lifts.ts';
import type { ItemId } from '../../aids/values.ts';
import type { Bed, WardCalendar, WardState } from '../../wards/context.ts';
import { localDate, wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_PANEL, DEFAULT_UNITS } from '../../wards/values.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';
import { NOTHING_PLANNED, type PlannedOfStay } from '../../planning/rules/planned.ts';
import type { BedView, BoardView, StayView } from '../view.ts';
import { dayPlanOf, planInForce, withPlanned } from './day-plan.ts';
import { evaluateFacts } from './evaluate-stay.ts';

interface Row {
  readonly view: StayView;
  readonly planned: PlannedOfStay;
  /** The view holds for every instant in [from, until). */
  readonly from: EpochMs;
  readonly until: EpochMs;
}

interface Held {
  readonly stay: StayId;
  events: LoggedEvent[];
  version: number;
  /** False while earlier events of the stream have not been loaded. */
  whole: boolean;
  ended: boolean;
  effective: Effective | null;
  row: Row | null;
}

export interface BoardState {
  readonly ward: WardId;
  /** Last position folded; 0 for none. */
  position: number;
  wardState: WardState | null;
  calendar: WardCalendar | null;
  /** By the beds' guard streams, in position order. */
  readonly occupancy: Map<BedId, StayId>;
  readonly records: Map<StayId, Held>;
  /** By the items' own streams. */
  readonly items: Map<ItemId, ItemState>;
}

export const emptyBoard = (ward: WardId): BoardState => ({
  ward,
  position: 0,
  wardState: null,
  calendar: null,
  occupancy: new Map(),
  records: new Map(),
  items: new Map(),
});

export interface Folded {
  /** Every stay an event spoke of, also one that holds no bed any more (its totals may change). */
  readonly touched: ReadonlySet<StayId>;
  /** Stays that hold a bed and whose earlier events are not here: load their streams, then addRecord. */
  readonly missing: ReadonlySet<StayId>;
}

/** Folds events in position order; events at or before the position reached are skipped. Mutates the state. */
export function foldBoard(state: BoardState, events: readonly LoggedEvent[]): Folded {
  const touched = new Set<StayId>();
  const wardEvents: LoggedEvent[] = [];
  for (const event of events) {
    if (event.position <= state.position) continue;
    state.position = event.position;
    const stay = stayOf(event.stream);
    if (stay !== null) {
      foldStayEvent(state, stay, event);
      touched.add(stay);
    } else if (event.stream.startsWith('item/')) {
      const item = event.stream.slice('item/'.length) as ItemId;
      state.items.set(item, foldItem(state.items.get(item) ?? NOTHING_SEEN, event));
      forgetPlanned(state, item);
    } else if (event.type === 'bed-taken') {
      const p = event.payload as { bed: BedId; stay: StayId };
      state.occupancy.set(p.bed, p.stay);
      touched.add(p.stay);
    } else if (event.type === 'bed-freed') {
      const p = event.payload as { bed: BedId; stay: StayId };
      if (state.occupancy.get(p.bed) === p.stay) state.occupancy.delete(p.bed);
      touched.add(p.stay);
    } else wardEvents.push(event);
  }
  if (wardEvents.length > 0) foldWardEvents(state, wardEvents);

  const holding = new Set(state.occupancy.values());
  for (const stay of touched) {
    const held = state.records.get(stay);
    if (held && !holding.has(stay) && (held.ended || !held.whole)) state.records.delete(stay);
  }
  const missing = new Set<StayId>();
  for (const stay of holding) if (!state.records.get(stay)?.whole) missing.add(stay);
  return { touched, missing };
}

function foldStayEvent(state: BoardState, stay: StayId, event: LoggedEvent): void {
  let held = state.records.get(stay);
  if (!held) {
    held = heldOf(stay);
    held.whole = event.version === 1;
    state.records.set(stay, held);
  }
  if (event.version <= held.version) return;
  if (event.version > held.version + 1) held.whole = false;
  held.events.push(event);
  held.version = event.version;
  held.ended ||= event.type === 'stay-ended';
  held.effective = null;
  held.row = null;
}

/** Rows of the accepted plan that speak of a piece are worked out anew when something was said of it. */
function forgetPlanned({ wardState, records }: BoardState, item: ItemId): void {
  for (const { stay, items } of wardState?.dayPlan?.placements ?? []) {
    if (!items.includes(item)) continue;
    // What was planned while the person was expected stands under that name.
    const held = records.get(wardState!.notExpected.get(stay) ?? stay);
    if (held) held.row = null;
  }
}

const heldOf = (stay: StayId): Held => ({
  stay,
  events: [],
  version: 0,
  whole: false,
  ended: false,
  effective: null,
  row: null,
});

function foldWardEvents(state: BoardState, events: readonly LoggedEvent[]): void {
  const before = state.wardState;
  state.wardState = foldWard(state.ward, events, before);
  if (state.wardState === before) return;
  state.calendar = state.wardState && wardCalendar(state.wardState);
  for (const held of state.records.values()) held.row = null;
}

/** Takes a stay's whole stream as read. Ignored for a stay that holds no bed, or a reading older than what is here. */
export function addRecord(state: BoardState, record: StayRecord): void {
  if (![...state.occupancy.values()].includes(record.stay)) return;
  const known = state.records.get(record.stay);
  if (known?.whole && known.version >= record.version) return;
  const held = heldOf(record.stay);
  held.events = record.events.toSorted((a, b) => a.version - b.version);
  held.version = record.version;
  for (const event of known?.events ?? []) {
    if (event.version <= held.version) continue;
    held.events.push(event);
    held.version = event.version;
  }
  held.whole = true;
  held.ended = held.events.some((e) => e.type === 'stay-ended');
  state.records.set(record.stay, held);
}

/**
 * The board at `t`, and the next instant at which it can change by time alone. Rows that hold at `t`
 * are kept, except of the stays in `only`, which are worked out anew.
 */
export function viewBoard(
  state: BoardState,
  t: EpochMs,
  only?: ReadonlySet<StayId>,
): { board: BoardView; nextChange: EpochMs | null } {
  const { wardState: ward, calendar } = state;
  if (!ward || !calendar) return { board: notSetUp(state.ward), nextChange: null };
  const night = calendar.night(t);
  let next = Math.min(night.until, calendar.wardDay(t).to);
  const note = (at: EpochMs): void => {
    next = Math.min(next, at);
  };
  const on = new Set<StaffId>();
  const carersOf = (bed: BedId): BedView['carers'] => {
    const named = ward.carers.get(bed);
    if (!named || t >= named.until) return null;
    next = Math.min(next, named.until);
    // Somebody taken off the staff list since looks after nobody.
    const here = (who: StaffId | null) => (who && ward.staff.get(who)?.active ? who : null);
    const [nurse, aide] = [here(named.who.nurse), here(named.who.aide)];
    if (nurse) on.add(nurse);
    if (aide) on.add(aide);
    if (nurse === named.who.nurse && aide === named.who.aide) return named.who;
    return nurse || aide ? { nurse, aide } : null;
  };
  const plan = planInForce(ward, calendar, t, note);
  const planned: PlannedOfStay[] = [];
  const beds = ward.beds.map((bed): BedView => {
    const carers = carersOf(bed.bed);
    const stay = state.occupancy.get(bed.bed);
    if (stay === undefined) return bedRow(bed, null, carers);
    const known = state.records.get(stay);
    // Part of a stream could hide a hold: until all of it is here, nothing is known of the person.
    const held = known?.whole ? known : heldOf(stay);
    const row = rowOf(held, { ward, calendar, items: state.items }, t, only?.has(held.stay) ?? false);
    next = Math.min(next, row.until);
    planned.push(row.planned);
    return bedRow(bed, row.view, carers);
  });
  const lifts = liftsOf(
    { ward, items: state.items, t, day: localDate(ward.zone, calendar.wardDay(t).from) },
    note,
  );
  const { name, zone, wardDayFrom, nightFrom, nightTo, panel, units, language } = ward;
  return {
    board: {
      ward: state.ward,
      name,
      zone,
      wardDayFrom,
      nightFrom,
      nightTo,
      night: night.is,
      panel,
      units,
      language,
      peopleOn: on.size === 0 ? null : on.size,
      lifts,
      ...(ward.dayPlan === null ? {} : { dayPlan: dayPlanOf(plan, planned, ward, t, note) }),
      beds,
    },
    nextChange: next === Infinity ? null : next,
  };
}

function rowOf(
  held: Held,
  { ward, calendar, items }: { ward: WardState; calendar: WardCalendar; items: BoardState['items'] },
  t: EpochMs,
  anew: boolean,
): Row {
  const { row } = held;
  if (row && !anew && t >= row.from && t < row.until) return row;
  held.effective ??= effectiveFacts(held);
  const { view, nextChange } = evaluateFacts(held, held.effective, ward, calendar, t);
  let until = nextChange ?? Infinity;
  const note = (at: EpochMs): void => {
    until = Math.min(until, at);
  };
  const plan = planInForce(ward, calendar, t, note);
  const made = plan
    ? withPlanned(view, held.effective.facts, { t, ward, items, plan, calendar }, note)
    : { view, planned: NOTHING_PLANNED };
  held.row = { ...made, from: t, until };
  return held.row;
}

const bedRow = (
  { bed, label, bay, ceilingTrack }: Bed,
  stay: StayView | null,
  carers: BedView['carers'],
): BedView => ({
  bed,
  label,
  bay,
  ceilingTrack,
  state: stay === null ? 'empty' : stay.away ? 'away' : 'occupied',
  carers,
  stay,
});

const notSetUp = (ward: WardId): BoardView => ({
  ward,
  name: '',
  zone: 'UTC',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  night: false,
  panel: DEFAULT_PANEL,
  units: DEFAULT_UNITS,
  language: 'en',
  peopleOn: null,
  lifts: null,
  beds: [],
});
