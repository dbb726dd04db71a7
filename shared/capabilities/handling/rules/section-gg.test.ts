import { describe, expect, expectTypeOf, it } from 'vitest';
import type {
  AssistTerm,
  Effort,
  GgCode,
  NoCode,
  NotDoneBecause,
  NotDoneCode,
  NothingToldBecause,
  PerformanceCode,
} from './section-gg.ts';
import { ASSIST_TERMS, assistTerms, codeFor, codeForTerm, GG_WORDS } from './section-gg.ts';

const EFFORTS: Effort[] = [
  'none',
  'set-up',
  'supervision-or-touch',
  'less-than-half',
  'more-than-half',
  'all',
];
const done = (helpers: number, effort: Effort) => codeFor({ done: true, helpers, effort });
const notDone = (because: NotDoneBecause) => codeFor({ done: false, because });

describe('CMS section GG coding (CMS data specifications V4.00.1 and V4.02.1; LOINC LL4616-0)', () => {
  it.each<[number, Effort, PerformanceCode]>([
    [0, 'none', '06'],
    [1, 'set-up', '05'],
    [1, 'supervision-or-touch', '04'],
    [1, 'less-than-half', '03'],
    [1, 'more-than-half', '02'],
    [1, 'all', '01'],
  ])('%i helpers, effort %s: %s', (helpers, effort, code) => {
    expect(done(helpers, effort)).toEqual({ kind: 'performance', code });
  });
  it.each(EFFORTS)('two or more helpers are 01 whatever the effort: %s', (effort) => {
    expect(done(2, effort)).toEqual({ kind: 'performance', code: '01' });
    expect(done(3, effort)).toEqual({ kind: 'performance', code: '01' });
  });
  it.each<[NotDoneBecause, NotDoneCode]>([
    ['refused', '07'],
    ['not-done-before-either', '09'],
    ['surroundings', '10'],
    ['medical-or-safety', '88'],
  ])('not done, %s: %s, a reason and not a rank', (because, code) => {
    expect(notDone(because)).toEqual({ kind: 'not-done', code });
  });
  // The two marks beside the codes: same specifications, item values (references: section GG, coding scale).
  it.each<[NothingToldBecause, NoCode]>([
    ['no-information', '-'],
    ['passed-over', '^'],
  ])('nothing told, %s: %s, which is neither a code of help nor a reason', (because, mark) => {
    expect(codeFor({ done: null, because })).toEqual({ kind: 'nothing-told', code: mark });
  });
  it('nothing told is not the same as refused, nor as done by helpers alone', () => {
    const marks = (['no-information', 'passed-over'] as const).map((b) =>
      codeFor({ done: null, because: b }),
    );
    const told = [
      ...EFFORTS.flatMap((effort) => [done(1, effort), done(2, effort)]),
      ...(['refused', 'not-done-before-either', 'surroundings', 'medical-or-safety'] as const).map(notDone),
    ];
    const same = (mark: GgCode) => told.filter((one) => one.code === mark.code || one.kind === mark.kind);
    expect(marks.flatMap(same)).toEqual([]);
  });
  it('reasons and ranks share no type, and neither is a number', () => {
    expectTypeOf<Extract<NoCode, PerformanceCode | NotDoneCode>>().toEqualTypeOf<never>();
    expectTypeOf<Extract<PerformanceCode, NotDoneCode>>().toEqualTypeOf<never>();
    expectTypeOf<PerformanceCode | NotDoneCode>().toExtend<string>();
    expectTypeOf<PerformanceCode>().not.toExtend<NotDoneCode>();
  });
  it('every code has words of its own', () => {
    const words = Object.values(GG_WORDS);
    expect(new Set(words).size).toBe(12);
    expect(GG_WORDS['01']).toContain('two or more');
    expect(GG_WORDS['88']).toContain('safety');
    expect(GG_WORDS['10']).toContain('surroundings');
    expect(GG_WORDS['-']).toContain('no information');
    expect(GG_WORDS['^']).toContain('passed over');
    expect(GG_WORDS['09']).toContain('before the present illness');
  });
});

describe('assist words of therapy records (several therapy teaching pages), to section GG (ours, derived)', () => {
  it.each<[AssistTerm, number, number, PerformanceCode]>([
    // word, the person's share of the effort from and to (percent), code with one helper
    ['independent', 100, 100, '06'],
    ['modified-independent', 100, 100, '06'],
    ['set-up', 100, 100, '05'],
    ['stand-by', 100, 100, '04'],
    ['contact-guard', 100, 100, '04'],
    ['minimal', 75, 100, '03'],
    ['moderate', 50, 74, '03'],
    ['maximal', 25, 49, '02'],
    ['total', 0, 24, '01'],
  ])('%s, %i to %i %% by the person: %s', (term, low, high, code) => {
    expect(ASSIST_TERMS[term].person).toEqual([low, high]);
    expect(codeForTerm(term, 1)).toBe(code);
  });
  it.each(assistTerms)('%s by two people is 01', (term) => {
    expect(codeForTerm(term, 2)).toBe('01');
  });
  it('splits at half of the effort: the person who gives half or more is never below 03', () => {
    for (const term of assistTerms) {
      const [low] = ASSIST_TERMS[term].person;
      expect(['03', '04', '05', '06'].includes(codeForTerm(term, 1))).toBe(low >= 50);
    }
  });
  it('has no way back: two words can share a code', () => {
    expect(codeForTerm('minimal', 1)).toBe(codeForTerm('moderate', 1));
  });
});
