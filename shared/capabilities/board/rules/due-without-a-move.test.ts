/** What waits for the next move waits for it once: design, validity row; the hours are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, stayOf, trigger, ward, type Told } from './history.testkit.ts';

const first: Told = { ...check('walk', 0.5), id: 'first' };
const sedated = (at: number, id: string): Told => ({ ...trigger('sedation', at), id });
const dueAt = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(first, ...told), ward, calendar, hours(h)).view.due!;

describe('a check that belongs to the next move', () => {
  it('given it is overdue already, when somebody is sedated, then it stays overdue', () => {
    expect(dueAt(16)).toMatchObject({ state: 'overdue', at: hours(12.5) });
    expect(dueAt(16, sedated(15, 'later'))).toMatchObject({ state: 'overdue', at: hours(12.5) });
  });

  it('given one sedation after another, then only what came before the hours were over moves the time', () => {
    const each = [sedated(11, 'a'), sedated(22, 'b'), sedated(33, 'c')];
    expect(dueAt(20, ...each)).toMatchObject({ state: 'at-next-move' });
    expect(dueAt(24, ...each)).toMatchObject({ state: 'overdue', at: hours(23) });
    expect(dueAt(40, ...each)).toMatchObject({ state: 'overdue', at: hours(23) });
  });

  it('given the time was moved, then the entry that moved it is the reason', () => {
    const { because } = dueAt(24, sedated(11, 'a'));
    expect(because.map((b) => [b.rule, ...b.facts])).toEqual([
      ['due/without-a-move', 'a'],
      ['due/validity', 'first'],
    ]);
    expect(because[0]!.words).toContain('before the next move, and within 12 h without one');
  });

  it('given the hours last longer than the wait, then they alone are the reason', () => {
    expect(dueAt(13, sedated(0.5, 'at-once')).because.map((b) => b.rule)).toEqual(['due/validity']);
  });

  it('given it came at the very moment the hours are over, then nothing moves', () => {
    expect(dueAt(13, sedated(12.5, 'then'))).toMatchObject({ state: 'overdue', at: hours(12.5) });
  });
});
