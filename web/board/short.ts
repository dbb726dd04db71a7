/**
 * Short words of the wall: fixed lists of at most eight letters, read from the farthest place the
 * ward set. The whole words stand smaller below and are what a reader hears.
 */
import type { HoldView, TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { defineWords } from '../i18n/words.ts';
import { aidNames } from './words.ts';

const AIDS = {
  en: {
    none: 'no aid',
    'walking-support': 'support',
    stick: 'stick',
    'two-sticks': '2 sticks',
    crutches: 'crutches',
    frame: 'frame',
    'wheeled-frame': 'wheeled',
    belt: 'belt',
    'seated-transfer-aid': 'seat aid',
    'standing-aid': 'standing',
    'slide-sheet': 'slide',
    'lateral-transfer-aid': 'lateral',
    'sling-lift': 'lift',
    'bariatric-lift': 'XL lift',
    other: 'see plan',
  },
  de: {
    none: 'ohne',
    'walking-support': 'Gehhilfe',
    stick: 'Stock',
    'two-sticks': '2 Stöcke',
    crutches: 'Stützen',
    frame: 'Gestell',
    'wheeled-frame': 'Rollator',
    belt: 'Gurt',
    'seated-transfer-aid': 'Sitzhlf.',
    'standing-aid': 'Stehhlf.',
    'slide-sheet': 'Matte',
    'lateral-transfer-aid': 'Umlager.',
    'sling-lift': 'Lifter',
    'bariatric-lift': 'XL-Lift',
    other: 's. Plan',
  },
} as const;
export type ShortAid = keyof typeof AIDS.en;
export const SHORT_AIDS = Object.keys(AIDS.en) as ShortAid[];
export const sayAid = defineWords('wall-aid', AIDS);

export const sayFar = defineWords('wall-far', {
  en: {
    empty: 'empty',
    away: 'away',
    comfort: 'comfort',
    bedside: 'bedside',
    HOLD: 'HOLD',
    CHECK: 'CHECK',
    ASK: 'ASK',
  },
  de: {
    empty: 'frei',
    away: 'abwesend',
    comfort: 'Komfort',
    bedside: 'am Bett',
    HOLD: 'STOPP',
    CHECK: 'PRÜFEN',
    ASK: 'FRAGEN',
  },
});
export type FarWord = Parameters<typeof sayFar>[0];

export const sayScope = defineWords('wall-scope', {
  en: {
    walking: 'no walk',
    standing: 'no stand',
    'out-of-bed': 'in bed',
    'raising-the-back': 'flat',
    'all-including-turning': 'no move',
  },
  de: {
    walking: 'Gehstopp',
    standing: 'Stehstopp',
    'out-of-bed': 'Bettruhe',
    'raising-the-back': 'flach',
    'all-including-turning': 'still',
  },
} satisfies Record<'en' | 'de', Record<HoldView['scope'], string>>);

const SUPPORTS: readonly string[] = ['stick', 'two-sticks', 'crutches', 'frame', 'wheeled-frame'];

/** The first piece of equipment of a plan as its short word. Equipment that no list has sends to the plan, never to "no aid". */
export function shortAid(plan: TaskPlan, support: StayView['walkingSupport']): ShortAid {
  const first = (aidNames(plan, support)[0] ?? '').replaceAll(' ', '-');
  if (plan.aid === 'walking-support' && SUPPORTS.includes(first)) return first as ShortAid;
  if (plan.aid !== 'none') return plan.aid;
  if (plan.with.length === 0) return 'none';
  return SHORT_AIDS.find((key) => key === first) ?? 'other';
}
/** Whether more equipment belongs to it than the short word says. */
export const hasMore = (plan: TaskPlan, support: StayView['walkingSupport']): boolean =>
  aidNames(plan, support).length > 1;
