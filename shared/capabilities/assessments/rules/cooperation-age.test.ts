/** How old it is that the person was seen to wait for help and follow instructions. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { germanBook } from '../../../i18n/phrases/german.ts';
import type { Role } from '../../../kernel/author.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Cooperation } from '../values.ts';

const WINDOW = DEFAULT_RULES.validity.cooperationWindowHours;
const well: Cooperation = { waitsForHelp: 'yes', followsInstructions: 'yes' };
/** A check that clears everything; `cooperation` undefined: it was not asked. */
const checked = (at: number, cooperation: Cooperation | undefined, role: Role = 'nurse'): Told => ({
  ...check('walk', at, {}, { cooperation }),
  role,
  id: `check-${at}`,
});
const BOTH = 'waits for help, follows instructions: not seen for 24 h or more, ask again';
const start = (t: number, told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(t));
const again = (t: number, told: readonly Told[]) =>
  start(t, told)
    .view.mayStart!.reasons.filter((r) => r.words.includes('ask again'))
    .map((r) => [r.words, ...r.facts]);

describe('waits for help and follows instructions, seen long ago', () => {
  it('is asked again from the end of the ward window on, with its time, its limit and its check', () => {
    const told = [checked(1, well), ...[13, 25, 37, 49, 60].map((h) => checked(h, undefined))];
    const view = start(61, told).view.mayStart!;
    expect(view.word).toBe('ask-first');
    expect(view.notTaken).toContain('waits for help, follows instructions');
    expect(view.reasons).toContainEqual({
      word: 'ask-first',
      words: BOTH,
      limit: WINDOW.value,
      source: WINDOW.source,
      takenAt: hours(1),
      facts: ['check-1'],
    });
    expect(germanBook().say(BOTH)).toBe(
      'wartet auf Hilfe, folgt Anweisungen: seit 24 Std. oder länger nicht gesehen, noch einmal fragen',
    );
  });
  it('to the minute, and names that instant', () => {
    const told = [checked(1, well), checked(24.5, undefined)];
    const before = start(25 - 1 / 60, told);
    expect(again(25 - 1 / 60, told)).toEqual([]);
    expect(before.nextChange).toBe(hours(25));
    expect(again(25, told)).toEqual([[BOTH, 'check-1']]);
  });
  it('is not asked again after a check that asked', () => {
    expect(again(61, [checked(1, well), checked(60, well)])).toEqual([]);
    expect(again(1.5, [checked(1, well)])).toEqual([]);
  });
  it('is not made new by a "yes" of someone who may not free', () => {
    expect(again(61, [checked(1, well), checked(60, well, 'aide')])).toEqual([[BOTH, 'check-1']]);
  });
  it('is asked again only for what that someone did not find wanting', () => {
    const aide = checked(60, { waitsForHelp: 'varies', followsInstructions: 'yes' }, 'aide');
    expect(again(61, [checked(1, well), aide])).toEqual([
      ['follows instructions: not seen for 24 h or more, ask again', 'check-1'],
    ]);
    const other = checked(60, { waitsForHelp: 'yes', followsInstructions: 'no' }, 'aide');
    expect(again(61, [checked(1, well), other])).toEqual([
      ['waits for help: not seen for 24 h or more, ask again', 'check-1'],
    ]);
    expect(germanBook().say('waits for help: not seen for 24 h or more, ask again')).toContain('noch einmal');
  });
  it('a "no" of long ago stays, and is asked again', () => {
    const told = [checked(1, { waitsForHelp: 'no', followsInstructions: 'yes' }), checked(60, undefined)];
    const words = start(61, told).view.mayStart!.reasons.map((r) => r.words);
    expect(words).toContain('does not wait for help: never alone');
    expect(words).toContain(BOTH);
  });
  it('what was never asked is not known, not old', () => {
    expect(again(61, [checked(60, undefined)])).toEqual([]);
  });
});
