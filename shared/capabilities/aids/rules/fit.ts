/**
 * Which equipment of the ward can do a task for a person, each with its reasons for and against.
 * Nothing is inferred from a size letter: weight, body weight range, the maker's list and the load of
 * the weakest part decide (users' job, lifts and slings; HSE sheet on sling size codes named there).
 */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { Weight } from '../../stays/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ItemDescription, ItemId, ItemKind } from '../values.ts';
import type { ItemState } from './item-state.ts';
import type { Usable } from './usable.ts';

export interface FitItem {
  readonly item: ItemId;
  readonly is: ItemDescription;
  readonly state: ItemState;
  readonly now: Usable;
}
export interface FitInput {
  readonly plan: Pick<TaskPlan, 'task' | 'aid'>;
  readonly stay: Pick<StayView, 'stay' | 'isolation'>;
  readonly bed: Pick<BedView, 'bay'>;
  /** As the handling rules count it; null when nobody has weighed or estimated. */
  readonly weight: Weight | null;
  readonly items: readonly FitItem[];
  readonly rules: RulesDocument;
}

/** What the task asks of the list. */
export type Need = 'lift-and-sling' | 'standing-aid' | 'lateral-aid' | 'walking-aid' | 'nothing-listed';

export interface Judged {
  readonly item: ItemId;
  readonly part: 'lift' | 'sling' | 'aid';
  /** It suits the person and the task, whether or not it is free now. */
  readonly suits: boolean;
  readonly for: readonly string[];
  readonly against: readonly string[];
  /** What stands against it whether or not it is free now. */
  readonly unfit: readonly string[];
}
export interface Fit {
  readonly need: Need;
  /** Weight that counts (kg), with the share added to an estimate; null when not known. */
  readonly counts: number | null;
  readonly judged: readonly Judged[];
  /** What can be used together, usable now first, then in the order of the list. `sling` is null where none is needed. */
  readonly sets: readonly {
    readonly item: ItemId;
    readonly sling: ItemId | null;
    readonly usableNow: boolean;
  }[];
  readonly warnings: readonly string[];
}

const NEED: Readonly<Record<TaskPlan['aid'], Need>> = {
  'sling-lift': 'lift-and-sling',
  'bariatric-lift': 'lift-and-sling',
  'standing-aid': 'standing-aid',
  'lateral-transfer-aid': 'lateral-aid',
  'walking-support': 'walking-aid',
  'slide-sheet': 'nothing-listed',
  'seated-transfer-aid': 'nothing-listed',
  belt: 'nothing-listed',
  none: 'nothing-listed',
};
const KINDS: Readonly<Record<Need, readonly ItemKind[]>> = {
  'lift-and-sling': ['floor-lift', 'ceiling-lift'],
  'standing-aid': ['standing-aid'],
  'lateral-aid': ['lateral-aid'],
  'walking-aid': ['walking-aid'],
  'nothing-listed': [],
};

export function fitOf(input: FitInput): Fit {
  const { plan, weight, rules, items } = input;
  const need = NEED[plan.aid];
  const counts = countedWeight(weight, rules);
  const candidates = items.filter(({ is }) => KINDS[need].includes(is.kind));
  const mains = candidates.map((one) => judgeMain(one, input, counts, candidates));
  const slings =
    need === 'lift-and-sling'
      ? items.filter(({ is }) => is.kind === 'sling').map((one) => judgeSling(one, input, counts))
      : [];
  const byId = new Map(items.map((one) => [one.item, one]));
  const suited = (all: readonly Judged[]) => all.filter((one) => one.suits).map((one) => byId.get(one.item)!);
  const sets =
    need === 'lift-and-sling'
      ? suited(mains).flatMap((lift) =>
          suited(slings)
            .filter((sling) => againstTogether(lift, sling).length === 0)
            .map((sling) => setOf(lift, sling)),
        )
      : suited(mains).map((one) => setOf(one, null));
  const together =
    need === 'lift-and-sling' ? slings.map((sling) => withPartners(sling, byId, suited(mains))) : slings;
  return {
    need,
    counts,
    judged: [...mains, ...together],
    sets: [...sets.filter((s) => s.usableNow), ...sets.filter((s) => !s.usableNow)],
    warnings: warningsOf(input, need, counts, sets.length),
  };
}

/** The weight that counts (kg): an estimate with the ward's share added; null when not known. */
export const countedWeight = (weight: Weight | null, rules: RulesDocument): number | null =>
  weight === null
    ? null
    : weight.how === 'estimated'
      ? exact(weight.kg * (1 + rules.handling.estimatedWeightMargin.value))
      : weight.kg;

/** Of a product of decimals the binary remainder is nothing: 100 kg and a tenth are 110 kg. */
export const exact = (n: number): number => Math.round(n * 1e6) / 1e6;

const setOf = (main: FitItem, sling: FitItem | null): Fit['sets'][number] => ({
  item: main.item,
  sling: sling?.item ?? null,
  usableNow: main.now.word === 'usable' && (sling === null || sling.now.word === 'usable'),
});

const kg = (n: number): string => `${Math.round(n * 10) / 10} kg`;

/** What the weakest part bears, less the share the ward keeps free (kg). */
const bears = ({ barLoadKg }: Pick<ItemDescription, 'barLoadKg'>, safeLoadKg: number, rules: RulesDocument) =>
  exact(Math.min(safeLoadKg, barLoadKg ?? Infinity) * (1 - rules.aids.loadMargin.value));

/** What it bears, and by how much the person counts as more (kg); null where it bears enough or its load is not known. */
export function overLoad(
  is: Pick<ItemDescription, 'safeLoadKg' | 'barLoadKg'>,
  counts: number,
  rules: RulesDocument,
): { readonly bearsKg: number; readonly overKg: number } | null {
  if (is.safeLoadKg === null) return null;
  const bearsKg = bears(is, is.safeLoadKg, rules);
  return counts > bearsKg ? { bearsKg, overKg: counts - bearsKg } : null;
}

function againstLoad(is: ItemDescription, counts: number, rules: RulesDocument): string[] {
  if (is.safeLoadKg === null) return ['its safe working load is not known'];
  const over = overLoad(is, counts, rules);
  return over ? [`bears ${kg(over.bearsKg)}, the person counts as ${kg(counts)}`] : [];
}

const load = (is: ItemDescription) => Math.min(is.safeLoadKg ?? 0, is.barLoadKg ?? Infinity);
/** Nobody has weighed or estimated: only what bears most is offered. */
function againstUnknownWeight(one: FitItem, all: readonly FitItem[]): string[] {
  const most = Math.max(...all.map(({ is }) => load(is)));
  if (most === 0) return ['its safe working load is not known'];
  return load(one.is) < most ? ['the weight is not known, and another bears more'] : [];
}

const reaches = ({ is }: FitItem, { bed }: FitInput): boolean =>
  is.kind !== 'ceiling-lift' || is.covers.includes(bed.bay);

/** Many a stick or frame is listed without a load: only what is known of one can stand against it. */
function againstMainLoad(
  one: FitItem,
  all: readonly FitItem[],
  counts: number | null,
  rules: RulesDocument,
): string[] {
  if (one.is.kind === 'walking-aid' && (counts === null || one.is.safeLoadKg === null)) return [];
  return counts === null ? againstUnknownWeight(one, all) : againstLoad(one.is, counts, rules);
}

function judgeMain(one: FitItem, input: FitInput, counts: number | null, all: readonly FitItem[]): Judged {
  const { is } = one;
  const against = [
    ...againstMainLoad(
      one,
      all.filter((other) => reaches(other, input)),
      counts,
      input.rules,
    ),
    ...(reaches(one, input) ? [] : [`its track does not reach ${input.bed.bay}`]),
    ...againstWhoHasIt(one, input),
  ];
  return {
    item: one.item,
    part:
      is.kind === 'standing-aid' || is.kind === 'floor-lift' || is.kind === 'ceiling-lift' ? 'lift' : 'aid',
    suits: against.length === 0,
    for:
      against.length > 0 || is.safeLoadKg === null
        ? []
        : [`bears ${kg(bears(is, is.safeLoadKg, input.rules))}`],
    against: [...against, ...notNow(one)],
    unfit: against,
  };
}

/** A toileting sling gives little support: for the toilet only. */
const STYLES: Readonly<Record<'toilet' | 'other', readonly NonNullable<ItemDescription['style']>[]>> = {
  toilet: ['whole-body', 'toileting'],
  other: ['whole-body'],
};

function judgeSling(one: FitItem, input: FitInput, counts: number | null): Judged {
  const { is } = one;
  const styles = STYLES[input.plan.task === 'toilet' ? 'toilet' : 'other'];
  const against = [
    ...(is.style === null
      ? ['nobody has entered what it is made for']
      : styles.includes(is.style)
        ? []
        : [`made for ${is.style.replaceAll('-', ' ')}`]),
    ...againstSlingWeight(is, input, counts),
    ...againstWhoHasIt(one, input),
  ];
  return {
    item: one.item,
    part: 'sling',
    suits: against.length === 0,
    for:
      against.length > 0
        ? []
        : [
            `made for ${kg(is.fitsFromKg!)} to ${kg(is.fitsToKg!)}`,
            ...(one.state.keptFor === input.stay.stay ? ['kept for this person'] : []),
          ],
    against: [...against, ...notNow(one)],
    unfit: against,
  };
}

function againstSlingWeight(
  is: ItemDescription,
  { weight, rules }: FitInput,
  counts: number | null,
): string[] {
  if (weight === null || counts === null) return ['the weight is not known: weigh or estimate'];
  if (is.fitsFromKg === null || is.fitsToKg === null) return ['the body weight it is made for is not known'];
  // The lower end is asked of the weight as told, the upper end of what is added to an estimate.
  const range = `made for ${kg(is.fitsFromKg)} to ${kg(is.fitsToKg)}`;
  return [
    ...(weight.kg < is.fitsFromKg ? [`${range}, the person weighs ${kg(weight.kg)}`] : []),
    ...(counts > is.fitsToKg ? [`${range}, the person counts as ${kg(counts)}`] : []),
    ...againstLoad(is, counts, rules),
  ];
}

const againstWhoHasIt = ({ state }: FitItem, { stay }: FitInput): string[] =>
  state.keptFor !== null && state.keptFor !== stay.stay ? ['kept for another person'] : [];

const notNow = ({ now }: FitItem): string[] =>
  now.word === 'usable' ? [] : [`not now: ${now.against.join('; ')}`];

/** Whether a lift and a sling may be used together, by the makers' lists and by how the sling hangs. */
function againstTogether(lift: FitItem, sling: FitItem): string[] {
  const listed = (a: FitItem, b: FitItem) =>
    a.is.worksWithModels.includes(b.is.model) || a.is.worksWithItems.includes(b.item);
  if (!listed(lift, sling) && !listed(sling, lift)) return [`not on the maker's list for ${lift.is.label}`];
  const [a, b] = [lift.is.attachment, sling.is.attachment];
  return a !== null && b !== null && a !== b ? [`hangs by ${b}, ${lift.is.label} takes ${a}`] : [];
}

/** A sling that no lift which suits may be used with does not suit. */
function withPartners(sling: Judged, byId: ReadonlyMap<ItemId, FitItem>, lifts: readonly FitItem[]): Judged {
  if (!sling.suits || lifts.length === 0) return sling;
  const one = byId.get(sling.item)!;
  const partners = lifts.filter((lift) => againstTogether(lift, one).length === 0);
  if (partners.length > 0)
    return { ...sling, for: [...sling.for, `works with ${partners.map(({ is }) => is.label).join(', ')}`] };
  const apart = lifts.flatMap((l) => againstTogether(l, one));
  return { ...sling, suits: false, for: [], against: [...apart, ...sling.against], unfit: apart };
}

function warningsOf(
  { stay, weight, items }: FitInput,
  need: Need,
  counts: number | null,
  sets: number,
): string[] {
  if (need === 'nothing-listed') return [];
  const asked =
    need !== 'walking-aid' || items.some(({ is }) => is.kind === 'walking-aid' && is.safeLoadKg !== null);
  const what = need === 'walking-aid' ? 'walking aid' : 'lift';
  return [
    ...(counts === null && asked ? [`Weight not known: weigh or estimate before a ${what} is chosen`] : []),
    ...(weight?.how === 'estimated' ? [`Weight estimated: counted as ${kg(counts!)}`] : []),
    ...(stay.isolation ? ['Infection steps: what goes into the room is cleaned before it leaves'] : []),
    ...(sets === 0 ? ['Nothing on the ward’s list fits: ask the handling coordinator'] : []),
  ];
}
