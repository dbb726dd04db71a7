import { describe, expect, it } from 'vitest';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import { HOUR, NOON } from '../../board/rows.testkit.ts';
import { oxygenFlowBefore } from './oxygen-before.ts';

const iso = (at: number) => new Date(at).toISOString();
const check = (at: number, flow: number | null) => ({
  protocol: { id: 'default', version: 1 },
  depth: 'full',
  stages: [
    { stage: 'clear', outcome: 'met', how: 'free', people: 1, findings: [], symptom: false, at: iso(at) },
  ],
  readings: [
    { kind: 'oxygen', saturation: 95, at: iso(at), ...(flow === null ? {} : { litresPerMinute: flow }) },
  ],
  wears: [],
  answers: [],
});
const line = (event: string, at: number, flow: number | null, over: Partial<TimelineEntry> = {}) =>
  ({
    event,
    type: 'assessment-recorded',
    occurred: at,
    recorded: at,
    counts: true,
    target: null,
    data: check(at, flow),
    ...over,
  }) as unknown as TimelineEntry;

describe('oxygen at the checks before', () => {
  it('is the flow of the latest check that has one', () => {
    const timeline = [line('a', NOON - 3 * HOUR, 2), line('b', NOON - 2 * HOUR, 4), line('c', NOON, null)];
    expect(oxygenFlowBefore(timeline)).toBe(4);
  });
  it('is not recorded where a check took the saturation alone, and nothing where none did', () => {
    expect(oxygenFlowBefore([])).toBeNull();
    expect(oxygenFlowBefore([line('a', NOON, null)])).toBe('not-recorded');
    expect(oxygenFlowBefore([line('a', NOON, null, { counts: false })])).toBeNull();
  });
  it('leaves out a withdrawn check, and takes a corrected one as it reads now', () => {
    const withdrawn = line('b', NOON, 6, { counts: false });
    expect(oxygenFlowBefore([line('a', NOON - HOUR, 2), withdrawn])).toBe(2);
    const correction = line('k', NOON, null, {
      type: 'correction-made',
      target: 'a' as never,
      data: { replacement: check(NOON - HOUR, 1) } as never,
    });
    expect(oxygenFlowBefore([line('a', NOON - HOUR, 2), correction])).toBe(1);
  });
});
