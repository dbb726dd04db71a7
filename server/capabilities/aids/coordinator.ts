/** What the handling coordinator is to see to, from the log as it stands now, each since when. */
import {
  isListed,
  ITEM_MATTERS,
  mattersOfItem,
  mattersOfStay,
  STAY_MATTERS,
} from '@footboard/shared/capabilities/aids/rules/coordinator-list';
import type {
  ItemMatterKind,
  StayMatterKind,
} from '@footboard/shared/capabilities/aids/rules/coordinator-list';
import { examinationDue } from '@footboard/shared/capabilities/aids/rules/examination';
import { fitOf } from '@footboard/shared/capabilities/aids/rules/fit';
import type { FitItem, Need } from '@footboard/shared/capabilities/aids/rules/fit';
import { heldSince } from '@footboard/shared/capabilities/aids/rules/held-since';
import { foldItem, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import type { ItemState } from '@footboard/shared/capabilities/aids/rules/item-state';
import { ratiosOf } from '@footboard/shared/capabilities/aids/rules/ratios';
import { usableAt } from '@footboard/shared/capabilities/aids/rules/usable';
import {
  foldListed,
  LIST_EVENTS,
  NOTHING_LISTED,
  type Loan,
} from '@footboard/shared/capabilities/aids/rules/listed';
import type { ItemDescription, ItemId } from '@footboard/shared/capabilities/aids/values';
import { evaluateFacts } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { standingOf } from '@footboard/shared/capabilities/stays/rules/standing';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { CoordinatorPage, ItemToSee, StayToSee } from '@footboard/shared/wire/coordinator';
import type { Streams, StreamsRead } from '../../commanding/streams.ts';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';

interface Asked {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly now: EpochMs;
}

export async function coordinatorPageOf(
  { streams, boards }: { streams: Streams; boards: Boards },
  asked: Asked,
): Promise<CoordinatorPage> {
  const { ward, now } = asked;
  const { board } = boardNow(boards, ward.ward);
  const here = board.beds.flatMap((bed) => (bed.stay ? [{ bed, stay: bed.stay }] : []));
  const of = (stream: Parameters<StreamsRead['slice']>[1]) => ({ ward: ward.ward, stream });
  const read = await streams.read([
    of(streamKey('ward', ward.ward)),
    ...[...ward.items.keys(), ...ward.lent.keys()].map((item) => of(streamKey('item', item))),
    ...here.map(({ stay }) => of(streamKey('stay', stay.stay))),
  ]);
  const list = new ListOverTime(ward, read);
  const stays = here.map(({ bed, stay }) => staysToSee(bed, stay, list, read, asked));
  const items = [
    ...[...ward.items].flatMap(([item, is]) =>
      itemsToSee(item, is, list, asked).filter(
        ({ matter }) => !ward.borrowed.has(item) || !EXAMINATION.has(matter),
      ),
    ),
    ...[...ward.lent].flatMap((one) => lentToSee(one, list, asked)),
  ];
  return {
    ward: ward.ward,
    at: now,
    listed: ward.items.size,
    unlisted: [...new Set(stays.flatMap(({ unlisted }) => unlisted))].map((need) => ({
      need,
      stays: stays.filter(({ unlisted }) => unlisted.includes(need)).length,
    })),
    ratios: ratiosOf(
      [...ward.items.values()].map(({ kind }) => kind),
      stays.map(({ needs }) => needs),
      rulesOf(ward).aids,
    ),
    stays: inOrder(
      stays.flatMap(({ lines }) => lines),
      STAY_MATTERS,
    ),
    items: inOrder(items, ITEM_MATTERS),
  };
}

/** Is its owner's to see to, wherever the piece is. */
const EXAMINATION: ReadonlySet<ItemMatterKind> = new Set([
  'examination-overdue',
  'examination-due',
  'no-examination-date',
]);

/** Of what is lent: its examination, a fault that was found there, and that it is not back by the time agreed. */
function lentToSee(
  [item, { is, until }]: readonly [ItemId, Loan & { readonly is: ItemDescription }],
  list: ListOverTime,
  asked: Asked,
): ItemToSee[] {
  const own = itemsToSee(item, is, list, asked).filter(
    ({ matter }) => matter === 'out-of-service' || EXAMINATION.has(matter),
  );
  if (until === null || until > asked.now) return own;
  const late = { matter: 'not-given-back', since: until, closes: 'ask-it-back' } as const;
  return [...own, { item, label: is.label, ...late, against: [], due: null }];
}

const inOrder = <L extends { readonly matter: string }>(lines: L[], order: readonly string[]): L[] =>
  lines.toSorted((a, b) => order.indexOf(a.matter) - order.indexOf(b.matter));

/** The ward's equipment as it was listed, and kept for whom, at earlier instants. */
class ListOverTime {
  readonly #listed: readonly LoggedEvent[];
  readonly #bound: readonly LoggedEvent[];
  readonly #events = new Map<ItemId, readonly LoggedEvent[]>();
  /** When the list, or for whom a sling is kept, was changed. */
  readonly changes: readonly EpochMs[];
  readonly #at = new Map<EpochMs, readonly FitItem[]>();

  constructor(ward: WardState, read: StreamsRead) {
    for (const item of [...ward.items.keys(), ...ward.lent.keys()])
      this.#events.set(item, read.slice(ward.ward, streamKey('item', item)).events);
    this.#listed = read
      .slice(ward.ward, streamKey('ward', ward.ward))
      .events.filter(({ type }) => LIST_EVENTS.has(type));
    this.#bound = [...this.#events.values()].flat().filter(({ type }) => type === 'item-bound');
    this.changes = [...new Set([...this.#listed, ...this.#bound].map(({ occurred }) => occurred))].toSorted(
      (a, b) => a - b,
    );
  }

  events(item: ItemId): readonly LoggedEvent[] {
    return this.#events.get(item) ?? [];
  }
  describedAt(item: ItemId): readonly LoggedEvent[] {
    return this.#listed.filter(({ payload }) => (payload as { item: ItemId }).item === item);
  }

  /** What the list held; whether a piece was free then does not matter to what is asked here. */
  at(t: EpochMs): readonly FitItem[] {
    const change = this.changes.findLast((one) => one <= t) ?? 0;
    const known = this.#at.get(change);
    if (known) return known;
    const { items } = this.#listed.filter(({ occurred }) => occurred <= t).reduce(foldListed, NOTHING_LISTED);
    const made = [...items].map(([item, is]): FitItem => ({
      item,
      is,
      state: stateAt(
        this.#bound.filter(({ stream }) => stream === streamKey('item', item)),
        t,
      ),
      now: { word: 'usable', against: [] },
    }));
    this.#at.set(change, made);
    return made;
  }
}
const stateAt = (events: readonly LoggedEvent[], t: EpochMs): ItemState =>
  events.filter(({ occurred }) => occurred <= t).reduce(foldItem, NOTHING_SEEN);

function staysToSee(
  bed: BedView,
  shown: StayView,
  list: ListOverTime,
  read: StreamsRead,
  { ward, calendar, now }: Asked,
): { lines: StayToSee[]; unlisted: readonly Need[]; needs: readonly Need[] } {
  const { stay } = shown;
  const rules = rulesOf(ward);
  const { version, events } = read.slice(ward.ward, streamKey('stay', stay));
  const record = { stay, version, events };
  const effective = effectiveFacts(record);
  const standingAt = (t: EpochMs) => standingOf(effective.facts.filter(({ occurred }) => occurred <= t));
  const judge = (view: Pick<StayView, 'stay' | 'isolation' | 'plan'>, t: EpochMs) => {
    const { weight, conflicts } = standingAt(t);
    const items = list.at(t);
    const all = (items.length === 0 ? [] : (view.plan?.day ?? []))
      .map((plan) => ({
        task: plan.task,
        aid: plan.aid,
        fit: fitOf({ plan, stay: view, bed, weight: weight?.value ?? null, items, rules }),
      }))
      .filter(({ fit }) => fit.need !== 'nothing-listed');
    const asks = all.filter(({ fit }) => isListed(fit));
    const keptForThem = new Set(items.filter(({ state }) => state.keptFor === stay).map(({ item }) => item));
    const weightWaits = weight === null && conflicts.some(({ question }) => question === 'weight');
    const asked = { weight: weight?.value ?? null, weightWaits, asks };
    return {
      matters: mattersOfStay(asked, items, keptForThem, rules),
      needs: [...new Set(all.map(({ fit }) => fit.need))],
      unlisted: [...new Set(all.filter(({ fit }) => !isListed(fit)).map(({ fit }) => fit.need))],
    };
  };
  const heldAt = (matter: StayMatterKind) => (t: EpochMs) => {
    // A weight does not change by time alone, and asks for no plan.
    if (matter === 'no-weight') return { holds: standingAt(t).weight === null, next: null };
    const { view, nextChange } = evaluateFacts(record, effective, ward, calendar, t);
    return { holds: judge(view, t).matters.some((one) => one.matter === matter), next: nextChange };
  };
  const labelled = <T extends { readonly item: ItemId }>(one: T) => ({
    ...one,
    label: ward.items.get(one.item)?.label ?? one.item,
  });
  const began = events[0]?.occurred ?? now;
  const instants = [...effective.facts.map(({ occurred }) => occurred), ...list.changes].filter(
    (t) => t >= began,
  );
  const today = judge(shown, now);
  const lines = today.matters.map((one): StayToSee => ({
    stay,
    bed: bed.label,
    matter: one.matter,
    since: heldSince(now, instants, heldAt(one.matter)) ?? now,
    closes: one.closes,
    tasks: [...one.tasks],
    aids: [...one.aids],
    over: one.over.map(labelled),
    countsKg: one.countsKg,
    failed: one.failed.map(({ item, against }) => labelled({ item, against: [...against] })),
    lifts: one.lifts.map((item) => labelled({ item })),
  }));
  return { lines, unlisted: today.unlisted, needs: today.needs };
}

function itemsToSee(
  item: ItemId,
  is: ItemDescription,
  list: ListOverTime,
  { ward, calendar, now }: Asked,
): ItemToSee[] {
  const rules = rulesOf(ward);
  const events = list.events(item);
  const described = list.describedAt(item);
  const at = (t: EpochMs) => {
    let next: EpochMs | null = null;
    const note = (when: EpochMs) => {
      if (when > t && (next === null || when < next)) next = when;
    };
    const day = calendar.wardDay(t);
    note(day.to);
    const today = localDate(ward.zone, day.from);
    const known = described.findLast(({ occurred, payload }) => occurred <= t && 'is' in (payload as object));
    const then = (known?.payload as { is?: ItemDescription } | undefined)?.is ?? is;
    const state = stateAt(events, t);
    const usable = usableAt(then, state, t, today, rules.aids, note);
    return { matters: mattersOfItem(examinationDue(then, rules.aids), state, usable, today, rules), next };
  };
  const instants = [...events, ...described].map(({ occurred }) => occurred);
  return at(now).matters.map((one) => ({
    item,
    label: is.label,
    matter: one.matter,
    since:
      heldSince(now, instants, (t) => {
        const { matters, next } = at(t);
        return { holds: matters.some(({ matter }) => matter === one.matter), next };
      }) ?? now,
    closes: one.closes,
    against: [...one.against],
    due: one.due,
  }));
}
