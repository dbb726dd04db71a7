/**
 * What the handling coordinator is to see to: people whose plan the ward's equipment does not meet, and
 * pieces that nobody can count on. Each line says what would close it. It decides nothing at the bedside:
 * the fit rules and the plan go on as they are. What is listed: users' job 5a and 2d; the order and the
 * days of notice are common practice, no source.
 */
import type { Weight } from '../../stays/values.ts';
import type { AidClass, Task } from '../../handling/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ItemId } from '../values.ts';
import { countedWeight, overLoad, type Fit, type FitItem, type Judged } from './fit.ts';
import { NO_DATE, type UsableWhy } from './usable.ts';

export const STAY_MATTERS = ['no-weight', 'over-limit', 'nothing-fits', 'no-sling'] as const;
export type StayMatterKind = (typeof STAY_MATTERS)[number];
export const ITEM_MATTERS = [
  'out-of-service',
  'examination-overdue',
  'not-there',
  'not-given-back',
  'state-unknown',
  'examination-due',
  'no-examination-date',
] as const;
export type ItemMatterKind = (typeof ITEM_MATTERS)[number];

/** What would take the line off the list. */
export const CLOSES = [
  'weigh-or-estimate',
  'nurse-records-weight',
  'use-another',
  'bring-one-that-bears',
  'bring-one-that-fits',
  'bring-a-sling',
  'look-and-return',
  'find-it',
  'ask-it-back',
  'say-how-it-is',
  'examine',
  'enter-the-date',
] as const;
export type Closes = (typeof CLOSES)[number];

export interface StayAsked {
  /** What counts; null when nobody who may has weighed or estimated. */
  readonly weight: Weight | null;
  /** Somebody read one, and it waits for a nurse. */
  readonly weightWaits: boolean;
  /** The tasks of the day plan that ask something of what the ward lists. */
  readonly asks: readonly { readonly task: Task; readonly aid: AidClass; readonly fit: Fit }[];
}
/** Why one piece cannot do it, in the fit rules' own words. */
export interface Failed {
  readonly item: ItemId;
  readonly against: readonly string[];
}
export interface StayMatter {
  readonly matter: StayMatterKind;
  readonly closes: Closes;
  /** Tasks that it stands in the way of; empty where the plan asks nothing of the list yet. */
  readonly tasks: readonly Task[];
  readonly aids: readonly AidClass[];
  /** Pieces that bear less than the person counts as: what they bear and how much is missing (kg). */
  readonly over: readonly { readonly item: ItemId; readonly bearsKg: number; readonly overKg: number }[];
  /** The person's weight as the fit counts it (kg); null when not known. */
  readonly countsKg: number | null;
  readonly failed: readonly Failed[];
  /** For a missing sling: the lifts that suit, which it must be listed for. */
  readonly lifts: readonly ItemId[];
}

/** Whether the ward lists anything at all of the kind that is asked for. Without a lift nobody is lifted: that is always asked. */
export const isListed = ({ need, judged }: Pick<Fit, 'need' | 'judged'>): boolean =>
  need === 'lift-and-sling' || judged.length > 0;

/** What of one stay the coordinator is to see to. */
export function mattersOfStay(
  { weight, weightWaits, asks }: StayAsked,
  items: readonly FitItem[],
  keptForThem: ReadonlySet<ItemId>,
  rules: RulesDocument,
): StayMatter[] {
  const countsKg = countedWeight(weight, rules);
  const of = (
    matter: StayMatterKind,
    closes: Closes,
    standing: StayAsked['asks'],
    more: Partial<StayMatter>,
  ): StayMatter => ({
    matter,
    closes,
    tasks: standing.map(({ task }) => task),
    aids: [...new Set(standing.map(({ aid }) => aid))],
    over: [],
    countsKg,
    failed: [],
    lifts: [],
    ...more,
  });
  const matters: StayMatter[] = [];
  // What fails for want of a weight is said once, as that.
  if (countsKg === null)
    return [of('no-weight', weightWaits ? 'nurse-records-weight' : 'weigh-or-estimate', asks, {})];

  const byId = new Map(items.map((one) => [one.item, one]));
  const tooMuch = (one: Judged) => {
    const { is, state } = byId.get(one.item)!;
    if ((one.part === 'sling' || state.keptFor !== null) && !keptForThem.has(one.item)) return [];
    const over = overLoad(is, countsKg, rules);
    return over ? [{ item: one.item, ...over }] : [];
  };
  const noMainBears = (fit: StayAsked['asks'][number]['fit']): boolean => {
    const mains = fit.judged.filter(({ part }) => part !== 'sling');
    return mains.length > 0 && mains.every((one) => tooMuch(one).length > 0);
  };
  const loaded = asks.filter(({ fit }) => fit.judged.some((one) => tooMuch(one).length > 0));
  if (loaded.length > 0) {
    const over = new Map(
      loaded.flatMap(({ fit }) => fit.judged.flatMap(tooMuch)).map((one) => [one.item, one]),
    );
    const noneBears = loaded.some(({ fit }) => noMainBears(fit));
    matters.push(
      of('over-limit', noneBears ? 'bring-one-that-bears' : 'use-another', loaded, {
        over: [...over.values()],
      }),
    );
  }
  const noMain = asks.filter(({ fit }) => !fit.judged.some((one) => one.part !== 'sling' && one.suits));
  // Where one bears enough, something else stands against it.
  const otherwise = noMain.filter(({ fit }) => !noMainBears(fit));
  if (otherwise.length > 0) {
    matters.push(
      of('nothing-fits', 'bring-one-that-fits', otherwise, {
        failed: failedOf(otherwise, (one) => one.part !== 'sling'),
      }),
    );
  }
  const noSling = asks.filter(
    ({ fit }) =>
      fit.need === 'lift-and-sling' && !fit.judged.some((one) => one.part === 'sling' && one.suits),
  );
  if (noSling.length > 0) {
    matters.push(
      of('no-sling', 'bring-a-sling', noSling, {
        failed: failedOf(noSling, (one) => one.part === 'sling'),
        lifts: [
          ...new Set(
            noSling.flatMap(({ fit }) =>
              fit.judged.filter((one) => one.part === 'lift' && one.suits).map(({ item }) => item),
            ),
          ),
        ],
      }),
    );
  }
  return matters;
}

/** Each piece once, with what stands against it for any of the tasks; whether it is free now does not matter here. */
function failedOf(asks: StayAsked['asks'], which: (one: Judged) => boolean): Failed[] {
  const found = new Map<ItemId, Set<string>>();
  for (const one of asks.flatMap(({ fit }) => fit.judged).filter(which)) {
    const all = found.get(one.item) ?? new Set();
    one.unfit.forEach((why) => all.add(why));
    found.set(one.item, all);
  }
  return [...found].map(([item, against]) => ({ item, against: [...against] }));
}

export interface ItemMatter {
  readonly matter: ItemMatterKind;
  readonly closes: Closes;
  readonly against: readonly string[];
  /** Date of the examination, like 2026-10-25. */
  readonly due: string | null;
}

/**
 * What of one piece the coordinator is to see to. Dirty, flat and in use are the ward's own to put right.
 *
 * @param today date on the ward's clock, like 2026-10-25
 */
export function mattersOfItem(
  due: string | null,
  { outOfService, missing }: { readonly outOfService: unknown; readonly missing: unknown },
  now: UsableWhy,
  today: string,
  rules: RulesDocument,
): ItemMatter[] {
  const matter = (of: ItemMatterKind, closes: Closes, against: readonly string[] = []): ItemMatter => ({
    matter: of,
    closes,
    against,
    due: of === 'examination-due' || of === 'examination-overdue' ? due : null,
  });
  const soon = daysAfter(today, rules.aids.examinationNoticeDays.value);
  const unsaid = now.unknown.filter((why) => why !== NO_DATE);
  return [
    ...(outOfService
      ? [
          matter(
            'out-of-service',
            'look-and-return',
            now.against.filter((w) => w.startsWith('out of service')),
          ),
        ]
      : []),
    ...(due !== null && due < today ? [matter('examination-overdue', 'examine')] : []),
    ...(missing ? [matter('not-there', 'find-it')] : []),
    ...(now.word === 'unknown' && unsaid.length > 0
      ? [matter('state-unknown', 'say-how-it-is', unsaid)]
      : []),
    ...(due !== null && due >= today && due <= soon ? [matter('examination-due', 'examine')] : []),
    ...(now.unknown.includes(NO_DATE) ? [matter('no-examination-date', 'enter-the-date')] : []),
  ];
}

const DAY_MS = 86_400_000;
/** A date so many days later; dates of the calendar have no hours. */
export const daysAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
