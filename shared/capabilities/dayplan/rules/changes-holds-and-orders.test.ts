/** Which holds and orders the huddle is told of: what came and what is in force no more. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { check, correct, hold, order, retract, type Told } from '../../board/rules/history.testkit.ts';
import type { Change } from './changes.ts';
import { changedFor, lines, ofKind } from './changes.testkit.ts';

const walks = check('walk', 0.5);
const leg = (limb: string, bears: string) => ({ about: 'weight-bearing', limb, bears });
const precautions = (precaution: string) => ({ about: 'precaution', precaution, on: true });
const brace = { about: 'brace', on: true };
const upTo = (most: string) => ({ about: 'activity', most });
const given = (id: string, at: number, what: Record<string, unknown>): Told => ({ ...order(at, what), id });

const ordersSaid = (until: readonly Told[], after: readonly Told[]): string[] =>
  ofKind(changedFor([walks, ...until], after), 'order-changed').map(({ words }) => words);
const reasonsOf = (changes: readonly Change[], kind: Change['kind']) =>
  ofKind(changes, kind).map(({ because }) => because);

describe('a hold', () => {
  const placed = hold(1, 'walking', 12, { id: 'e-placed' });
  it('placed since is said with when, and stands on the entry that placed it', () => {
    const changes = changedFor([walks], [hold(3, 'walking', 12, { id: 'e-placed' })]);
    expect(reasonsOf(changes, 'hold-placed')).toEqual([
      [{ rule: 'changes/hold-placed', facts: ['e-placed'], words: 'Placed 24 Oct 21:00' }],
    ]);
  });
  it('that stood at the last huddle and stands now is not said again', () => {
    const another = changedFor([walks, placed], [order(3, upTo('chair'))]);
    expect(lines(ofKind(another, 'order-changed'))).toHaveLength(1);
    expect(another.filter(({ kind }) => kind === 'hold-placed' || kind === 'hold-ended')).toEqual([]);
  });
  it('that ended is said with when it was placed, and stands on that entry', () => {
    const ended = { type: 'hold-ended', at: 3, payload: { hold: 'hold-1', placedBy: 'e-placed' } };
    expect(reasonsOf(changedFor([walks, placed], [ended]), 'hold-ended')).toEqual([
      [
        {
          rule: 'changes/hold-ended',
          facts: ['e-placed'],
          words: 'Placed 24 Oct 19:00, in force no more',
        },
      ],
    ]);
  });
});

describe('a hold placed again on more than it was', () => {
  it('is said as placed on what it stops now, and not as ended', () => {
    const changes = changedFor([walks, hold(1, 'walking', 12)], [hold(3, 'out-of-bed', 12)]);
    const said = changes.filter(({ kind }) => kind === 'hold-placed' || kind === 'hold-ended');
    expect(said.map(({ words }) => words)).toEqual([expect.stringMatching(/^Hold placed on out of bed /)]);
  });
});

describe('an order', () => {
  it('given since is said with since when, and stands on its entry', () => {
    const changes = changedFor([walks], [given('e-order', 3, upTo('chair'))]);
    expect(reasonsOf(changes, 'order-changed')).toEqual([
      [{ rule: 'changes/order-changed', facts: ['e-order'], words: 'In force since 24 Oct 21:00' }],
    ]);
  });
  it('that was in force at the last huddle and is now is not said again', () => {
    expect(ordersSaid([order(1, upTo('chair'))], [order(3, brace)])).toEqual(['Order: brace on']);
  });
  it('taken back is said to be in force no more, and stands on the entry that gave it', () => {
    const changes = changedFor([walks, given('e-order', 1, upTo('chair'))], [retract(3, 'e-order')]);
    const said = ofKind(changes, 'order-changed');
    expect(said.map(({ words }) => words)).toEqual(['In force no more: Order: activity up to chair']);
    expect(said.map(({ because }) => because)).toEqual([
      [
        {
          rule: 'changes/order-changed',
          facts: ['e-order'],
          words: 'Taken back, corrected or ended by a newer order',
        },
      ],
    ]);
  });
});

describe('an order that is corrected', () => {
  const corrected = (from: Record<string, unknown>, to: Record<string, unknown>): string[] =>
    ordersSaid([given('e-order', 1, from)], [correct(3, 'e-order', order(1, to))]);
  it('is said as it is now', () => {
    expect(corrected(upTo('chair'), upTo('bed'))).toEqual(['Order: activity up to bed']);
  });
  it('from one leg to the other is said of both', () => {
    expect(corrected(leg('left-leg', 'none'), leg('right-leg', 'none'))).toEqual([
      'Order: weight bearing right leg none',
      'In force no more: Order: weight bearing left leg none',
    ]);
  });
});

describe('an order taken back while another comes', () => {
  /** The first is taken back, the other one is given. */
  const swapped = (first: Record<string, unknown>, other: Record<string, unknown>): string[] =>
    ordersSaid([given('e-first', 1, first)], [retract(2.5, 'e-first'), order(3, other)]);

  it('for the other leg is said too: the other leg says nothing of this one', () => {
    expect(swapped(leg('left-leg', 'none'), leg('right-leg', 'limited'))).toEqual([
      'Order: weight bearing right leg limited',
      'In force no more: Order: weight bearing left leg none',
    ]);
  });
  it('for another precaution is said too', () => {
    expect(swapped(precautions('hip'), precautions('spine'))).toEqual([
      'Order: spine precautions on',
      'In force no more: Order: hip precautions on',
    ]);
  });
  it('about something else is said too', () => {
    expect(swapped(brace, upTo('chair'))).toEqual([
      'Order: activity up to chair',
      'In force no more: Order: brace on',
    ]);
    expect(swapped(precautions('hip'), leg('left-leg', 'none'))).toEqual([
      'Order: weight bearing left leg none',
      'In force no more: Order: hip precautions on',
    ]);
  });
  it('is said beside several that came, none of which is about the same', () => {
    const first = given('e-first', 1, leg('left-leg', 'none'));
    expect(ordersSaid([first], [retract(2.5, 'e-first'), order(3, brace), order(3, upTo('chair'))])).toEqual([
      'Order: activity up to chair',
      'Order: brace on',
      'In force no more: Order: weight bearing left leg none',
    ]);
  });
});

describe('a newer order on the same question', () => {
  it.each<[string, Record<string, unknown>, Record<string, unknown>, string]>([
    ['the same leg', leg('left-leg', 'limited'), leg('left-leg', 'none'), 'weight bearing left leg none'],
    ['the same precaution', precautions('hip'), precautions('hip'), 'hip precautions on'],
    ['how far up', upTo('chair'), upTo('bed'), 'activity up to bed'],
    ['the brace', brace, brace, 'brace on'],
  ])('says itself alone, not also what it replaced: %s', (_about, first, newer, words) => {
    expect(ordersSaid([order(1, first)], [order(3, newer)])).toEqual([`Order: ${words}`]);
  });
  it('says itself alone also where an order about something else came with it', () => {
    const after = [order(3, leg('left-leg', 'none')), order(3, brace)];
    expect(ordersSaid([order(1, leg('left-leg', 'limited'))], after)).toEqual([
      'Order: brace on',
      'Order: weight bearing left leg none',
    ]);
  });
});
