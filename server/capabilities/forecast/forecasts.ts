/**
 * The forecast of a ward: what it stands on is read here, worked out in another thread, and kept for
 * the position of the log and the quarter hour it was made for. Reads only.
 */
import { NOTHING_SEEN, foldItem } from '@footboard/shared/capabilities/aids/rules/item-state';
import { fitOf } from '@footboard/shared/capabilities/aids/rules/fit';
import { usableAt } from '@footboard/shared/capabilities/aids/rules/usable';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import type { BedView, BoardView, StayView } from '@footboard/shared/capabilities/board/view';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { composed, pageOf, type Ward } from '@footboard/shared/capabilities/forecast/rules/compose';
import { timesSet } from '@footboard/shared/capabilities/forecast/rules/demand';
import type { Fits } from '@footboard/shared/capabilities/forecast/rules/demand';
import type { Forecast, ForecastInput } from '@footboard/shared/capabilities/forecast/rules/types';
import { historyOf, measuredOf, type History } from '@footboard/shared/capabilities/forecast/rules/history';
import { horizonOf, type Horizon } from '@footboard/shared/capabilities/forecast/rules/horizon';
import type { SeenItem } from '@footboard/shared/capabilities/forecast/rules/supply';
import { peopleOnAt } from '@footboard/shared/capabilities/planning/rules/people-on';
import { standingOf } from '@footboard/shared/capabilities/stays/rules/standing';
import type { Weight } from '@footboard/shared/capabilities/stays/values';
import type { Period, WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import type { ForecastPage } from '@footboard/shared/wire/forecast';
import type { Streams, StreamsRead } from '../../commanding/streams.ts';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';
import type { TotalsStore } from '../dayplan/queries.ts';

/** Runs the simulator somewhere where it keeps nobody waiting. */
export type Simulate = (input: ForecastInput) => Promise<Forecast>;
export const FORECASTS = Symbol('Forecasts');

interface Ports {
  readonly streams: Streams;
  readonly boards: Boards;
  readonly totals: TotalsStore;
  readonly simulate: Simulate;
}
interface Known {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly now: EpochMs;
}

export class Forecasts {
  readonly #pages = new Map<WardId, { readonly key: string; readonly page: Promise<ForecastPage> }>();
  readonly #histories = new Map<WardId, { readonly key: string; readonly history: Promise<History> }>();

  constructor(private readonly ports: Ports) {}

  /** Whoever asks while it is being worked out gets the same answer. */
  async page(known: Known): Promise<ForecastPage> {
    const { ward, calendar, now } = known;
    const snapshot = boardNow(this.ports.boards, ward.ward);
    const { from } = horizonOf(calendar, now);
    const key = `${snapshot.p} ${from}`;
    const kept = this.#pages.get(ward.ward);
    if (kept?.key === key) return kept.page;
    const page = this.#make(known, snapshot.board, snapshot.p, from);
    this.#pages.set(ward.ward, { key, page });
    // A failed one is not kept: the next to ask tries again.
    page.catch(() => {
      if (this.#pages.get(ward.ward)?.page === page) this.#pages.delete(ward.ward);
    });
    return page;
  }

  async #make(known: Known, board: BoardView, position: number, from: EpochMs): Promise<ForecastPage> {
    const { ward, calendar, now } = known;
    const rules = rulesOf(ward);
    const stays = board.beds.flatMap(({ stay }) => (stay ? [stay] : []));
    const [read, history] = await Promise.all([
      this.ports.streams.read([
        ...[...ward.items.keys()].map((item) => ({ ward: ward.ward, stream: streamKey('item', item) })),
        ...stays.map(({ stay }) => ({ ward: ward.ward, stream: streamKey('stay', stay) })),
      ]),
      this.#history(known),
    ]);
    const items = itemsOf(ward, calendar, read, now);
    const weights = new Map(stays.map(({ stay }) => [stay, weightOf(stay, read, ward, now)]));
    const fitsIn = (stay: StayView, bed: Pick<BedView, 'bay'>): Fits =>
      new Map(
        (stay.plan?.day ?? []).map((plan) => {
          const fit = fitOf({ plan, stay, bed, weight: weights.get(stay.stay) ?? null, items, rules });
          return [plan.task, [...new Set(fit.sets.map(({ item }) => item as string))]];
        }),
      );
    const byId = new Map(stays.map((stay) => [stay.stay as string, stay]));
    const standing: Ward = {
      board,
      calendar,
      rules,
      now,
      items,
      fits: new Map(
        board.beds.flatMap((bed) => (bed.stay ? [[bed.stay.stay, fitsIn(bed.stay, bed)] as const] : [])),
      ),
      fitsIn: (stay, bed) => fitsIn(byId.get(stay)!, bed),
      history,
      measured: measuredOf(
        new Map([...ward.items.keys()].map((item) => [item, eventsOf(read, ward.ward, item)])),
        ward.items,
        { from: now - rules.forecast.historyDays.value * 24 * HOUR, to: now },
      ),
      visits: new Map(stays.map((stay) => [stay.stay as string, timesSet(stay)])),
      on: (horizon) => peopleIn(ward, horizon),
    };
    const made = composed(standing, seedOf(ward.ward, from));
    const answer = await this.ports.simulate(made.input);
    return { ward: ward.ward, position, ...pageOf(standing, made, answer) };
  }

  /** Whole ward days before this one: they change only by late entries, and are read anew once an hour. */
  async #history({ ward, calendar, now }: Known): Promise<History> {
    const key = `${calendar.wardDay(now).from} ${Math.floor(now / HOUR)}`;
    const kept = this.#histories.get(ward.ward);
    if (kept?.key === key) return kept.history;
    const history = this.#readHistory(ward, calendar, now);
    this.#histories.set(ward.ward, { key, history });
    history.catch(() => {
      if (this.#histories.get(ward.ward)?.history === history) this.#histories.delete(ward.ward);
    });
    return history;
  }

  async #readHistory(ward: WardState, calendar: WardCalendar, now: EpochMs): Promise<History> {
    const days: Period[] = [];
    for (let at = calendar.wardDay(now).from - 1; days.length < rulesOf(ward).forecast.historyDays.value;) {
      const day = calendar.wardDay(at);
      days.unshift(day);
      at = day.from - 1;
    }
    const stays = new Set<StayId>();
    for (const { from } of days)
      for (const { row } of await this.ports.totals.dayTotals(ward.ward, from))
        stays.add((JSON.parse(row) as { stay: StayId }).stay);
    if (stays.size === 0) return historyOf([], days, ward.zone);
    const needs = [...stays].map((stay) => ({ ward: ward.ward, stream: streamKey('stay', stay) }));
    const read = await this.ports.streams.read(needs);
    const records = [...stays].map((stay) => {
      const { version, events } = read.slice(ward.ward, streamKey('stay', stay));
      return { stay, version, events };
    });
    return historyOf(records, days, ward.zone);
  }
}

const eventsOf = (read: StreamsRead, ward: WardId, item: ItemId) =>
  read.slice(ward, streamKey('item', item)).events;

function itemsOf(ward: WardState, calendar: WardCalendar, read: StreamsRead, now: EpochMs): SeenItem[] {
  const today = localDate(ward.zone, calendar.wardDay(now).from);
  return [...ward.items].map(([item, is]) => {
    const state = eventsOf(read, ward.ward, item).reduce(foldItem, NOTHING_SEEN);
    return { item, is, state, now: usableAt(is, state, now, today, rulesOf(ward).aids, () => undefined) };
  });
}

function weightOf(stay: StayId, read: StreamsRead, ward: WardState, now: EpochMs): Weight | null {
  const { version, events } = read.slice(ward.ward, streamKey('stay', stay));
  const { facts } = effectiveFacts({ stay, version, events });
  return standingOf(facts.filter((fact) => fact.occurred <= now)).weight?.value ?? null;
}

/** Nurses and aides; a therapist has sessions of their own. */
const peopleIn = (ward: WardState, { from, to }: Horizon) =>
  peopleOnAt(ward, rulesOf(ward), from, to).map(({ nurses, aides, said }) => ({ n: nurses + aides, said }));

/** The same for the same ward and quarter hour: asked again, it answers the same (FNV-1a). */
function seedOf(ward: WardId, from: EpochMs): number {
  let hash = 0x811c9dc5;
  for (const letter of `${ward} ${from}`) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  return hash >>> 0;
}
