/** Which readings "may we start" is judged by, entry by entry. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { germanBook } from '../../../i18n/phrases/german.ts';
import type { Role } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { assessment, fact, hours, upTo } from './assessment.testkit.ts';
import type { Found } from './counting.ts';
import { judgeSigns } from './start-signs.ts';

const at = (h: number) => toIso(hours(h));
const entry = (id: string, h: number, readings: readonly Reading[], role: Role = 'nurse'): Fact =>
  assessment(upTo('clear'), { at: h, role, id }, { readings: [...readings] });
const found = (facts: readonly Fact[], more: object = {}) => {
  const out: Found = { reasons: [], notTaken: [], tooOld: [] };
  judgeSigns(
    {
      facts,
      t: hours(4),
      rules: DEFAULT_RULES,
      clearedAt: null,
      note: () => undefined,
      oxygenTarget: null,
      targetFact: null,
      ...more,
    },
    out,
  );
  return out;
};

describe('more oxygen than at the entry before', () => {
  const oxygen = (litresPerMinute: number, h: number): Reading => ({
    kind: 'oxygen',
    saturation: 97,
    litresPerMinute,
    at: at(h),
  });
  /** A nurse's entry with one flow. */
  const flow = (id: string, litres: number, h: number, role?: Role) =>
    entry(id, h, [oxygen(litres, h)], role);
  const more = (...facts: readonly Fact[]) =>
    found(facts).reasons.map((r) => [r.words.replace('more oxygen than at the last check ', ''), ...r.facts]);

  it.each<[string, readonly Fact[], readonly string[]]>([
    [
      'two flows of one entry are held against the entry before, not against each other',
      [flow('before', 3, 0), entry('walk', 2, [oxygen(2, 2), oxygen(4, 2.5)])],
      ['(3 to 4 litres a minute)', 'walk', 'before'],
    ],
    [
      'two entries of one instant are each held against the one before, not against each other',
      [flow('before', 3, 1), flow('more', 5, 2), flow('less', 2, 2)],
      ['(3 to 5 litres a minute)', 'more', 'before'],
    ],
    [
      'an entry written down late counts by when it was taken',
      [flow('first', 1, 1), flow('last', 4, 2), entry('late', 3, [oxygen(3, 1.5)])],
      ['(3 to 4 litres a minute)', 'last', 'late'],
    ],
    [
      'of two lowest flows since, the first is named',
      [flow('first', 2, 1), flow('second', 2, 1.5, 'aide'), flow('now', 3, 2)],
      ['(2 to 3 litres a minute)', 'now', 'first'],
    ],
    [
      'of two rises the larger is said, though the later one ends higher',
      [flow('none', 0, 1), flow('much', 4, 2), flow('again', 6, 3, 'aide')],
      ['(0 to 4 litres a minute)', 'much', 'none'],
    ],
    [
      'of two equal rises the first is said',
      [flow('one', 1, 1), flow('two', 2, 2), flow('three', 3, 3, 'aide')],
      ['(1 to 2 litres a minute)', 'two', 'one'],
    ],
    [
      'a rise is not undone by less in an entry of someone who may not free',
      [flow('one', 1, 1), flow('two', 2, 2), flow('none', 0, 3, 'aide')],
      ['(1 to 2 litres a minute)', 'two', 'one'],
    ],
  ])('%s', (_, facts, said) => {
    expect(more(...facts)).toEqual([said]);
  });
  it('is not said of the first flow, nor of the same flow again, nor of one entry alone', () => {
    expect(more(flow('one', 4, 1))).toEqual([]);
    expect(more(flow('one', 4, 1), flow('two', 4, 2))).toEqual([]);
    expect(more(entry('walk', 1, [oxygen(2, 1), oxygen(4, 1.5)]))).toEqual([]);
  });
});

describe('oxygen now, and a reading before that said nothing of it', () => {
  const saturation = (h: number, litres?: number): Reading => ({
    kind: 'oxygen',
    saturation: 97,
    ...(litres === undefined ? {} : { litresPerMinute: litres }),
    at: at(h),
  });
  const taken = (id: string, h: number, litres?: number, role?: Role) =>
    entry(id, h, [saturation(h, litres)], role);
  const asked = (...facts: readonly Fact[]) => found(facts).reasons.map((r) => [r.word, r.words, ...r.facts]);
  const says = (litres: number) => `on ${litres} litres of oxygen a minute; the flow before is not known`;

  it('given a saturation without a flow and a flow after it, then it asks first and names both', () => {
    expect(asked(taken('before', 1), taken('now', 2, 2))).toEqual([['ask-first', says(2), 'now', 'before']]);
    expect(asked(taken('before', 1, undefined, 'aide'), taken('now', 2, 2, 'aide'))).toHaveLength(1);
  });
  it('given the first reading of a stay, room air now, or both in one entry, then nothing is asked', () => {
    expect(asked(taken('now', 2, 2))).toEqual([]);
    expect(asked(taken('before', 1), taken('now', 2, 0))).toEqual([]);
    expect(asked(entry('now', 2, [saturation(1.9), saturation(2, 2)]))).toEqual([]);
    expect(asked(taken('now', 2, 2), taken('after', 3))).toEqual([]);
    expect(asked(taken('now', 2, 2), taken('same', 2))).toEqual([]);
  });
  it('given a flow by a nurse before it, then the flows are held against each other', () => {
    expect(asked(taken('air', 0.5), taken('two', 1, 2), taken('silent', 1.5), taken('now', 2, 2))).toEqual(
      [],
    );
    expect(asked(taken('air', 0.5), taken('one', 1, 1), taken('now', 2, 2))[0]![1]).toContain('(1 to 2 ');
  });
  it('given a flow by an aide between, then it asks no less than without', () => {
    expect(asked(taken('silent', 1), taken('aide', 1.5, 3, 'aide'), taken('now', 2, 2))).toEqual([
      ['ask-first', says(2), 'now', 'silent'],
    ]);
  });
  it('given two flows since, by those who may not free, then the higher is said', () => {
    const flows = [taken('one', 2, 4, 'aide'), taken('two', 3, 1, 'aide')];
    expect(asked(taken('silent', 1), ...flows)).toEqual([['ask-first', says(4), 'one', 'silent']]);
  });
  it('given two flows since that are the same, by those who may not free, then the first is named', () => {
    const flows = [taken('one', 2, 4, 'aide'), taken('two', 3, 4, 'aide')];
    expect(asked(taken('silent', 1), ...flows)).toEqual([['ask-first', says(4), 'one', 'silent']]);
  });
  it('given it got old and a check cleared the start since, then it is not asked any more', () => {
    const facts = [taken('before', 1), taken('now', 2, 2)];
    const late = { t: hours(20), clearedAt: hours(3) };
    expect(found(facts, late).reasons).toEqual([]);
    expect(found(facts, { ...late, clearedAt: hours(1) }).reasons).toHaveLength(1);
  });
  it('given German, then it is known', () => {
    expect(germanBook().say(says(2))).toBe(
      'bekommt 2 Liter Sauerstoff pro Minute; der Fluss davor ist nicht bekannt',
    );
  });
});

describe('what a reason names', () => {
  it('the order with the own target belongs to the saturation, not to the other signs', () => {
    const signs: Reading[] = [
      { kind: 'heart-rate', perMinute: 140, at: at(2) },
      { kind: 'oxygen', saturation: 92, at: at(2) },
    ];
    const own = { oxygenTarget: { low: 94, high: 98 }, targetFact: 'target' as EventId };
    expect(found([entry('check', 2, signs)], own).reasons.map((r) => [r.words, ...r.facts])).toEqual([
      ['heart rate 140 is above 130', 'check'],
      ['oxygen saturation 92 % is below the own target of 94 %', 'check', 'target'],
    ]);
  });
});

describe('pain at a session', () => {
  const walk = (h: number, more: object = {}) =>
    fact(
      'session-recorded',
      {
        session: {
          outcome: 'done',
          occasion: 'planned',
          activities: ['walk'],
          startedAt: at(h),
          events: [],
          firstTimeUp: false,
          ...more,
        },
      },
      { at: h, id: 'walk' },
    );
  const before = entry('check', 1, [{ kind: 'pain', outOfTen: 8, at: at(1) }]);
  const said = (...facts: readonly Fact[]) => found(facts).reasons.map((r) => [r.words, ...r.facts]);
  it('that nobody asked about takes back nothing that was said before', () => {
    expect(said(before, walk(2))).toEqual([['pain 8 of 10: relief first', 'check']]);
    expect(found([walk(2)]).notTaken).toContain('pain');
  });
  it('counts as it was after it, else as it was before it', () => {
    expect(said(before, walk(2, { painBefore: 5 }))).toEqual([
      ['pain 5 of 10: offer relief, come back when it works', 'walk'],
    ]);
    expect(said(before, walk(2, { painBefore: 5, painAfter: 0, endedAt: at(2.5) }))).toEqual([]);
  });
});
