/** How often somebody said that the board was wrong. What a ward day is: design.md. */
import { describe, expect, it } from 'vitest';
import { hours, session, stayOf, trigger } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { boardWrongIn } from './board-wrong.ts';

const day = { from: hours(10), to: hours(34) };
const said = (at: number, id: string) => ({ ...trigger('board-wrong', at), id });

describe('"the board is wrong", counted over a ward day', () => {
  it('given it was said twice that day, then it counts twice, whatever else was recorded', () => {
    const { facts } = effectiveFacts(stayOf(said(11, 'a'), trigger('fall', 12), session(13), said(30, 'b')));
    expect(boardWrongIn(facts, day)).toBe(2);
  });
  it('given it was said at the moment the ward day begins, then it is of that day; when it ends, of the next', () => {
    const { facts } = effectiveFacts(stayOf(said(10, 'first'), said(34, 'next')));
    expect(boardWrongIn(facts, day)).toBe(1);
    expect(boardWrongIn(facts, { from: day.to, to: hours(58) })).toBe(1);
  });
  it('given it was said before and after only, then nobody said it that day', () => {
    const { facts } = effectiveFacts(stayOf(said(9, 'before'), said(40, 'after')));
    expect(boardWrongIn(facts, day)).toBe(0);
  });
});
