/** The equipment of a ward as it is known now, and what of it fits whom. */
import { foldItem, itemAt, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import type { ItemState } from '@footboard/shared/capabilities/aids/rules/item-state';
import { examinationDue } from '@footboard/shared/capabilities/aids/rules/examination';
import type { ItemDescription, ItemId } from '@footboard/shared/capabilities/aids/values';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { fitOf } from '@footboard/shared/capabilities/aids/rules/fit';
import type { FitItem } from '@footboard/shared/capabilities/aids/rules/fit';
import { usableAt } from '@footboard/shared/capabilities/aids/rules/usable';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { standingOf } from '@footboard/shared/capabilities/stays/rules/standing';
import type { Weight } from '@footboard/shared/capabilities/stays/values';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { FitPage, ItemsPage } from '@footboard/shared/wire/items';
import type { Streams, StreamsRead } from '../../commanding/streams.ts';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';

interface Asked {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly now: EpochMs;
}
function examinationOf(
  is: ItemDescription,
  rules: RulesDocument['aids'],
): ItemsPage['items'][number]['examination'] {
  const due = examinationDue(is, rules);
  return {
    due,
    everyMonths: due === null || due === is.inspectionDue ? null : rules.examinationMonths[is.kind].value,
  };
}
const without = (_at: EpochMs): void => undefined;

function judged(
  { ward, calendar, now }: Asked,
  read: StreamsRead,
): (FitItem & { readonly seen: ItemState })[] {
  const rules = rulesOf(ward).aids;
  const today = localDate(ward.zone, calendar.wardDay(now).from);
  return [...ward.items].map(([item, is]) => {
    const state = stateOf(ward, read, item);
    return {
      item,
      is,
      state,
      seen: itemAt(state, now, rules, without),
      now: usableAt(is, state, now, today, rules, without),
    };
  });
}
const stateOf = (ward: WardState, read: StreamsRead, item: ItemId): ItemState =>
  read.slice(ward.ward, streamKey('item', item)).events.reduce(foldItem, NOTHING_SEEN);
const itemStreams = (ward: WardState, items: readonly ItemId[] = [...ward.items.keys()]) =>
  items.map((item) => ({ ward: ward.ward, stream: streamKey('item', item) }));

export async function itemsPageOf(streams: Streams, asked: Asked): Promise<ItemsPage> {
  const { ward, now } = asked;
  const read = await streams.read(itemStreams(ward, [...ward.items.keys(), ...ward.lent.keys()]));
  return {
    ward: ward.ward,
    at: now,
    items: judged(asked, read).map(({ item, is, seen, now: usable }) => ({
      item,
      is,
      place: seen.place,
      missing: seen.missing,
      inUse: seen.inUse && { at: seen.inUse.at, by: seen.inUse.by, usedBy: seen.inUse.usedBy },
      clean: seen.clean,
      battery: seen.battery,
      outOfService: seen.outOfService,
      keptFor: seen.keptFor,
      borrowed: ward.borrowed.get(item) ?? null,
      examination: examinationOf(is, rulesOf(ward).aids),
      usable: { word: usable.word, against: [...usable.against] },
    })),
    lent: [...ward.lent].map(([item, { is, ...loan }]) => ({
      item,
      is,
      loan,
      outOfService: stateOf(ward, read, item).outOfService,
    })),
  };
}

/** For every stay on the board whose day plan asks something of the list: what can do it, and what not and why. */
export async function fitPageOf(ports: { streams: Streams; boards: Boards }, asked: Asked): Promise<FitPage> {
  const { ward, now } = asked;
  const { board } = boardNow(ports.boards, ward.ward);
  const here = board.beds.flatMap((bed) => (bed.stay ? [{ bed, stay: bed.stay }] : []));
  const read = await ports.streams.read([
    ...itemStreams(ward),
    ...here.map(({ stay }) => ({ ward: ward.ward, stream: streamKey('stay', stay.stay) })),
  ]);
  const items = judged(asked, read);
  return {
    ward: ward.ward,
    at: now,
    stays: here.flatMap(({ bed, stay }) => {
      const weight = weightOf(stay, read, ward, now);
      const tasks = (stay.plan?.day ?? [])
        .map((plan) => ({
          task: plan.task,
          aid: plan.aid,
          fit: fitOf({ plan, stay, bed, weight, items, rules: rulesOf(ward) }),
        }))
        .filter(({ fit }) => fit.need !== 'nothing-listed');
      if (tasks.length === 0) return [];
      return [
        {
          stay: stay.stay,
          bed: bed.bed,
          label: bed.label,
          weight: weight?.how ?? ('not-known' as const),
          tasks: tasks.map(({ task, aid, fit }) => ({
            task,
            aid,
            need: fit.need,
            judged: fit.judged.map(({ item, part, suits, for: speaksFor, against }) => ({
              item,
              part,
              suits,
              for: [...speaksFor],
              against: [...against],
            })),
            sets: [...fit.sets],
            warnings: [...fit.warnings],
          })),
        },
      ];
    }),
  };
}

function weightOf({ stay }: StayView, read: StreamsRead, ward: WardState, now: EpochMs): Weight | null {
  const { version, events } = read.slice(ward.ward, streamKey('stay', stay));
  const { facts } = effectiveFacts({ stay, version, events });
  return standingOf(facts.filter((fact) => fact.occurred <= now)).weight?.value ?? null;
}
