/** Two looks at one stay, with and without a doubtful entry: what frees something, and what of each is shown. Design, rule 2. */
import { describe, expect, it } from 'vitest';
import type { Author } from '../../../kernel/author.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Claim, Restriction } from '../../corrections/rules/claims.ts';
import type { StayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, correct, hold, hours, order, stayOf, ward, type Told } from './history.testkit.ts';
import { lessHelp, withOpenClaims, type AsTold } from './safer-stands.ts';
import { AT, BASE, EACH_ONE, id, other, OTHERWISE } from './told-joined.testkit.ts';

const theo = { staff: 'theo', role: 'therapist' } as Author;
const nora = { staff: 'nora', role: 'nurse' } as Author;
const known = { occurred: AT - 60, recorded: AT - 50, position: 7 };
const faint: Restriction = { event: id('faint'), ...known };
const doubtful: Claim = {
  event: id('doubtful'),
  verb: 'late',
  entry: id('doubtful'),
  about: AT - 100,
  author: theo,
  occurred: AT - 100,
  recorded: AT - 10,
  position: 9,
};
const look = (view: StayView, nextChange: EpochMs | null = null): AsTold => ({
  view,
  nextChange,
  arrival: null,
  claims: [doubtful],
  open: () => [faint],
});
/** What is shown while a faint stands against the entry. */
const shown = (told: StayView, safer: StayView) => withOpenClaims(look(told), () => look(safer)).view;
const of = (title: string): StayView => other(OTHERWISE.find(([one]) => one === title)![1]);
const notch = (at: number | null, more: Partial<StayView['tier']> = {}): StayView =>
  other({ tier: { ...BASE.tier, word: `at ${at}`, notch: at, ...more } });
const due = (state: StayView['due']['state'], at: EpochMs | null, words: string): StayView =>
  other({ due: { state, at, because: [{ rule: 'due/other', facts: [], words }] } });

const inDoubt = other({ holds: [{ ...of('one hold').holds[0]!, reason: 'fracture-unclear' }] });

describe('an entry frees something when without it', () => {
  it.each<[string, StayView, StayView]>([
    ['another plan applies', of('comfort'), BASE],
    ['a check comes before moving', of('check before moving'), BASE],
    ['the first time up is ahead', of('first time up ahead'), BASE],
    ['nobody is on their own', BASE, of('on own')],
    ['the tier is lower', notch(0.4), notch(0.6)],
    ['no tier is known', notch(null), notch(0)],
    ['there is a hold', of('one hold'), BASE],
    ['there is one hold more', of('two holds'), of('one hold')],
    ['something else is held', other(EACH_ONE[0]![1]), other(EACH_ONE[0]![2])],
    ['the same hold stops less', other(EACH_ONE[1]![2]), other(EACH_ONE[1]![1])],
    ['the same hold leaves no bone in doubt any more', inDoubt, of('one hold')],
    ['another trigger is open', other(EACH_ONE[2]![1]), other(EACH_ONE[2]![2])],
    ['another order limits', of('an order'), of('a stricter order')],
    ['something else is attached', other(EACH_ONE[5]![1]), other(EACH_ONE[5]![2])],
    ['a task asks for more at night', of('two people to walk by night'), BASE],
  ])('%s', (_what, without, withIt) => {
    expect(lessHelp(without, withIt)).toBe(true);
  });
});

describe('an entry frees nothing when', () => {
  it.each<[string, StayView, StayView]>([
    ['nothing differs', BASE, BASE],
    ['on their own is set either way', of('on own'), of('on own')],
    ['on their own is set only without it', of('on own'), BASE],
    ['the tier is as high', notch(0.4), notch(0.4)],
    ['the tier is lower with it', notch(0.6), notch(0.4)],
    ['no tier is known with it', notch(0.4), notch(null)],
    ['it adds to what is held', of('one hold'), of('two holds')],
    ['the same hold leaves a bone in doubt', of('one hold'), inDoubt],
    ['the same is held, and more is stopped', other(EACH_ONE[1]![1]), other(EACH_ONE[1]![2])],
    ['the same order was entered anew', other(EACH_ONE[4]![1]), other(EACH_ONE[4]![2])],
  ])('%s', (_what, without, withIt) => {
    expect(lessHelp(without, withIt)).toBe(false);
  });
});

describe('while an entry is in doubt', () => {
  it('the view holds until the first instant at which either look can change', () => {
    const until = (told: EpochMs | null, safer: EpochMs | null) =>
      withOpenClaims(look(BASE, told), () => look(BASE, safer)).nextChange;
    expect([until(AT + 5, null), until(null, AT + 3), until(AT + 5, AT + 3), until(null, null)]).toEqual([
      AT + 5,
      AT + 3,
      AT + 3,
      null,
    ]);
  });
  it.each([
    ['not known with it', notch(null), notch(0.4), 'at null'],
    ['not known without it', notch(0.4), notch(null), 'at null'],
    ['lower without it', notch(0.6), notch(0.4), 'at 0.4'],
    ['lower with it', notch(0), notch(0.4), 'at 0'],
    ['none known, and the lowest there is told', notch(0), notch(null), 'at null'],
    ['none known as told, and the lowest there is', notch(null), notch(0), 'at null'],
  ])('the lower tier is shown: %s', (_what, told, safer, word) => {
    expect(shown(told, safer).tier.word).toBe(word);
  });
  it('a lower tier is by whoever entered what is in doubt, wherever its reason names that entry', () => {
    const by = (...facts: string[]) =>
      shown(
        notch(0.6, { by: nora }),
        notch(0.4, { by: nora, because: [{ rule: 'tier/other', facts: facts.map(id), words: '' }] }),
      ).tier.by;
    expect([by('doubtful'), by('another', 'doubtful'), by('another')]).toEqual([theo, theo, nora]);
  });
  it('the more urgent due time is shown; of two as urgent the earlier, of one time that without the entry', () => {
    const words = (told: StayView, safer: StayView) => shown(told, safer).due.because.map((b) => b.words);
    const [a, b] = [
      (state: StayView['due']['state'], at: EpochMs | null) => due(state, at, 'with it'),
      (state: StayView['due']['state'], at: EpochMs | null) => due(state, at, 'without it'),
    ];
    expect(words(a('overdue', AT), b('due', AT))).toEqual(['with it']);
    expect(words(a('due', AT), b('overdue', AT))).toEqual(['without it']);
    expect(words(a('due', AT - 1), b('due', AT))).toEqual(['with it']);
    expect(words(a('due', AT), b('due', AT))).toEqual(['without it']);
    expect(words(a('at-next-move', null), b('at-next-move', null))).toEqual(['without it']);
  });
  it('what each look says of its own is shown, and what both say once', () => {
    const each = (title: string) => {
      const [, one, another] = EACH_ONE.find(([what]) => what === title)!;
      return shown(other(one), other(another));
    };
    expect(each('hold').holds.map((h) => h.hold)).toEqual(['hold-2', 'hold-1']);
    expect(each('scope of a hold').holds.map((h) => h.scope)).toEqual(['standing', 'walking']);
    expect(each('trigger').trust.openTriggers.map((o) => o.event)).toEqual(['fell-again', 'fell']);
    expect(each('order').orders.map((o) => o.event)).toEqual(['order-2', 'order-1']);
    expect(each('attachment').attachments.map((a) => a.attachment)).toEqual(['line-2', 'line-1']);
    expect(each('caution').cautions.map((c) => c.words)).toEqual(['Mind the line', 'Mind the step']);
    const [two, one] = [of('two holds'), of('one hold')];
    expect(shown(two, one).holds.map((h) => h.hold)).toEqual(['hold-1', 'hold-2']);
  });
  it('other conflicts stay with their reasons; one that names the entry gives way to what stands against it', () => {
    const conflict = (question: string, safer: string, against: string) => ({
      question,
      safer: id(safer),
      other: id(against),
      words: `${question} disagree`,
    });
    const reason = (safer: string, against: string, words: string) => ({
      rule: 'trust/conflict',
      facts: [id(safer), id(against)],
      words,
    });
    const conflicts = [
      conflict('two checks', 'one', 'other'),
      conflict('two weights', 'three', 'four'),
      conflict('two orders', 'one', 'doubtful'),
    ];
    const because = [
      reason('one', 'other', 'two checks disagree'),
      reason('three', 'four', 'two weights disagree'),
      reason('one', 'other', 'two weights disagree'),
      reason('one', 'doubtful', 'two orders disagree'),
      { rule: 'trust/ran-out', facts: [id('check')], words: 'ran out' },
    ];
    const { trust } = shown(
      BASE,
      other({ checkBeforeMoving: true, trust: { ...BASE.trust, conflicts, because } }),
    );
    expect(trust.conflicts.map((c) => [c.safer, c.other])).toEqual([
      ['faint', 'doubtful'],
      ['one', 'other'],
      ['three', 'four'],
    ]);
    const said = trust.because.map((b) => [...b.facts, b.words.split(',')[0]]);
    expect(said).toEqual([
      ['faint', 'doubtful', 'Entered late'],
      ['one', 'other', 'two checks disagree'],
      ['three', 'four', 'two weights disagree'],
      ['check', 'ran out'],
    ]);
  });
  it('a conflict that only one look has is shown beside that of the other', () => {
    const disagree = (question: string): StayView =>
      other({
        trust: {
          ...BASE.trust,
          conflicts: [{ question, safer: id('one'), other: id('other'), words: `${question} disagree` }],
        },
      });
    const { trust } = shown(disagree('two checks'), disagree('two weights'));
    expect(trust.conflicts.map((c) => c.question)).toEqual(['two weights', 'two checks']);
  });
});

describe('given an order that keeps somebody in bed, and a hold that a nurse narrows', () => {
  const bed = { ...order(3, { about: 'activity', most: 'bed' }), id: 'bed' };
  const held = { ...hold(2, 'out-of-bed', 40), id: 'held' };
  const to = (scope: string) => ({ ...correct(4, 'held', hold(2, scope, 40)), id: 'put-right' });
  const at = (...told: readonly Told[]) =>
    evaluateStay(stayOf(check('walk', 1), ...told), ward, calendar, hours(5)).view;
  it('the order and the entry are shown to disagree, though the order stops as much today', () => {
    const { holds, trust } = at(held, bed, to('walking'));
    expect(holds.map((h) => h.scope)).toContain('out-of-bed');
    expect(trust.conflicts).toMatchObject([{ question: 'correction', safer: 'bed', other: 'put-right' }]);
  });
  it('made wider, the wider one counts', () => {
    const scopes = at(held, bed, to('all-including-turning')).holds.map((h) => h.scope);
    expect(scopes).toContain('all-including-turning');
  });
});
