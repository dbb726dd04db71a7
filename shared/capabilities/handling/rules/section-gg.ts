/**
 * From the help that was actually given to the code of CMS section GG (self-care GG0130, mobility
 * GG0170). Source: CMS data specifications (LTCH V4.00.1 and V4.02.1, 2022 and 2024) and LOINC answer
 * list LL4616-0; a United States government text in the public domain. Nothing on a screen uses it
 * yet, and no rule reads it: it says what was done, never how to move the person.
 */

/** Six codes that stand for how much help was given. */
export type PerformanceCode = '01' | '02' | '03' | '04' | '05' | '06';
/**
 * Four codes that say why it was not done. They are reasons, not ranks: kept apart by type, so that
 * nobody sorts or averages them, and in words, so that nobody counts with them.
 */
export type NotDoneCode = '07' | '09' | '10' | '88';

/** Two marks that stand where there is no code: nothing is known, or the form never asked. Neither is a nought. */
export type NoCode = '-' | '^';

/** What the helpers did of the effort. */
export type Effort =
  | 'none'
  /** Set up before or cleaned up after, not during. */
  | 'set-up'
  /** Cueing, steadying or a guarding hand, continuous or now and then. */
  | 'supervision-or-touch'
  | 'less-than-half'
  | 'more-than-half'
  | 'all';

export type NotDoneBecause =
  | 'refused'
  /** Not attempted, and not done before the present illness either. */
  | 'not-done-before-either'
  /** No equipment, weather, or the like. */
  | 'surroundings'
  | 'medical-or-safety';

export type NothingToldBecause =
  /** Not assessed, or nobody wrote it down. */
  | 'no-information'
  /** An earlier answer made the form pass over the question. */
  | 'passed-over';

/** `done` is null where nothing is told either way. */
export type HelpGiven =
  | { readonly done: true; readonly helpers: number; readonly effort: Effort }
  | { readonly done: false; readonly because: NotDoneBecause }
  | { readonly done: null; readonly because: NothingToldBecause };

export type GgCode =
  | { readonly kind: 'performance'; readonly code: PerformanceCode }
  | { readonly kind: 'not-done'; readonly code: NotDoneCode }
  | { readonly kind: 'nothing-told'; readonly code: NoCode };

const BY_EFFORT: Readonly<Record<Effort, PerformanceCode>> = {
  none: '06',
  'set-up': '05',
  'supervision-or-touch': '04',
  'less-than-half': '03',
  'more-than-half': '02',
  all: '01',
};
const BY_REASON: Readonly<Record<NotDoneBecause, NotDoneCode>> = {
  refused: '07',
  'not-done-before-either': '09',
  surroundings: '10',
  'medical-or-safety': '88',
};

const BY_GAP: Readonly<Record<NothingToldBecause, NoCode>> = { 'no-information': '-', 'passed-over': '^' };

/** Two helpers are 01 whatever the effort; a reason is a reason, whoever was there. */
export function codeFor(given: HelpGiven): GgCode {
  if (given.done === null) return { kind: 'nothing-told', code: BY_GAP[given.because] };
  if (!given.done) return { kind: 'not-done', code: BY_REASON[given.because] };
  return { kind: 'performance', code: given.helpers >= 2 ? '01' : BY_EFFORT[given.effort] };
}

/** Our own words for each code. */
export const GG_WORDS: Readonly<Record<PerformanceCode | NotDoneCode | NoCode, string>> = {
  '06': 'does it alone, no helper',
  '05': 'a helper sets up before or clears up after, not during',
  '04': 'a helper cues, steadies or keeps a hand near',
  '03': 'a helper gives less than half of the effort',
  '02': 'a helper gives more than half of the effort',
  '01': 'helpers give all of the effort, or two or more are needed',
  '07': 'refused',
  '09': 'does not apply: not done before the present illness either',
  '10': 'not tried: the surroundings did not allow it',
  '88': 'not tried: medical condition or safety',
  '-': 'no information: not assessed, or not written down',
  '^': 'not asked: the form passed over it',
};

/** Words of therapy records for how much a person was assisted. */
export const assistTerms = [
  'independent',
  'modified-independent',
  'set-up',
  'stand-by',
  'contact-guard',
  'minimal',
  'moderate',
  'maximal',
  'total',
] as const;
export type AssistTerm = (typeof assistTerms)[number];

interface AssistMeaning {
  readonly effort: Effort;
  /** Share of the effort the person gives (percent), lowest and highest. */
  readonly person: readonly [lowest: number, highest: number];
}

/**
 * What each word means, as several therapy teaching pages agree. Section GG splits only at half of
 * the effort, so two words can share a code and there is no way back from code to word.
 */
export const ASSIST_TERMS: Readonly<Record<AssistTerm, AssistMeaning>> = {
  independent: { effort: 'none', person: [100, 100] },
  'modified-independent': { effort: 'none', person: [100, 100] },
  'set-up': { effort: 'set-up', person: [100, 100] },
  'stand-by': { effort: 'supervision-or-touch', person: [100, 100] },
  'contact-guard': { effort: 'supervision-or-touch', person: [100, 100] },
  minimal: { effort: 'less-than-half', person: [75, 100] },
  moderate: { effort: 'less-than-half', person: [50, 74] },
  maximal: { effort: 'more-than-half', person: [25, 49] },
  total: { effort: 'all', person: [0, 24] },
};

/** The code of an assist word with so many helpers. */
export function codeForTerm(term: AssistTerm, helpers: number): PerformanceCode {
  return helpers >= 2 ? '01' : BY_EFFORT[ASSIST_TERMS[term].effort];
}
