/** Nobody is called ready for more while something is open. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import {
  calendar,
  check,
  confirm,
  hours,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';
import type { TriggerKind } from '../../orders/values.ts';

const turned: Told = { ...check('turn', 1), id: 'turned' };
const chair = { activities: ['chair'], effort: 2 };
const easyChair = (at: number, id: string): Told => ({ ...session(at, chair), id });
const easy = [easyChair(2, 's1'), easyChair(3, 's2')];
const readyAt = (h: number, ...told: readonly Told[]): boolean =>
  evaluateStay(stayOf(turned, ...told), ward, calendar, hours(h)).view.signs.some((s) => s.kind === 'ready');

describe('ready for the next stage', () => {
  it('given two easy sessions at the stage cleared and nothing open, then it is said', () => {
    expect(readyAt(5, ...easy)).toBe(true);
  });

  const kinds: readonly TriggerKind[] = [
    'fall',
    'faint',
    'new-confusion',
    'return-from-surgery',
    'sedation',
    'failed-attempt',
    'block-on',
    'step-down-from-intensive-care',
    'asked-to-look-again',
  ];
  it.each(kinds)('given a trigger since (%s), then it is not said', (kind) => {
    expect(readyAt(5, ...easy, trigger(kind as never, 4))).toBe(false);
  });

  it('given a trigger that a check has answered, then only sessions after the check count', () => {
    const again: Told = { ...check('turn', 4.5), id: 'again' };
    const told = [...easy, trigger('fall', 4), again];
    expect(readyAt(5, ...told)).toBe(false);
    expect(readyAt(8, ...told, easyChair(6, 's3'), easyChair(7, 's4'))).toBe(true);
  });

  it("given a trigger that a nurse's confirm answered, then sessions before it do not count", () => {
    const told = [...easy, trigger('asked-to-look-again', 4), confirm(4.5, 'turned')];
    expect(readyAt(5, ...told)).toBe(false);
    expect(readyAt(8, ...told, easyChair(6, 's3'), easyChair(7, 's4'))).toBe(true);
  });

  it('given a session beyond a stop limit between two easy ones, then those before it do not count', () => {
    const low = { kind: 'oxygen', saturation: 80, at: new Date(hours(3.5)).toISOString() };
    const beyond = session(3.5, { ...chair, readings: [low] });
    expect(readyAt(5, ...easy, beyond)).toBe(false);
  });

  it('given the check has run out, then it is not said until somebody has looked', () => {
    expect(readyAt(40, ...easy)).toBe(false);
  });
});
