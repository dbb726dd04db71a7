import { describe, expect, it } from 'vitest';
import { MINUTE } from '@footboard/shared/kernel/times';
import { timeTaken, whenItOccurred } from './occurred.ts';
import type { OccurredQuestion } from './occurred.ts';

const NOW = Date.parse('2026-11-25T10:00:00Z');
const iso = (at: number) => new Date(at).toISOString();

const ask = (
  occurred: OccurredQuestion['envelope']['occurred'],
  more: Partial<OccurredQuestion> & { entered?: number; fromOutbox?: boolean } = {},
) => {
  const { entered = NOW, fromOutbox = false, ...rest } = more;
  return whenItOccurred({
    envelope: { occurred, entered: { at: iso(entered), offsetMinutes: 0 }, fromOutbox },
    zone: 'Europe/Berlin',
    now: NOW,
    ...rest,
  });
};
const at = (instant: number) => ({ at: iso(instant), precision: 'exact' as const });

/** Design rules, "Time from devices". */
describe('a live entry', () => {
  it('in the past stands as it is', () => {
    expect(ask(at(NOW - 3 * MINUTE))).toEqual({ at: NOW - 3 * MINUTE, precision: 'exact' });
  });
  it('up to two minutes ahead is taken as now', () => {
    expect(ask(at(NOW + 2 * MINUTE))).toEqual({ at: NOW, precision: 'exact' });
  });
  it('further ahead is refused with both clocks on the ward’s time', () => {
    const answer = ask(at(NOW + 2 * MINUTE + 1), { entered: NOW + 9 * MINUTE });
    expect(answer).toMatchObject({
      problem: {
        type: '/problems/time-in-future',
        detail: expect.stringMatching(/11:02.*11:00.*11:09/),
        remedy: expect.stringContaining("device's clock"),
        errors: [{ pointer: '/occurred/at' }],
      },
    });
  });
  it('ahead on a device with a right clock is told that the future cannot be recorded', () => {
    expect(ask(at(NOW + 60 * MINUTE))).toMatchObject({
      problem: { remedy: expect.stringContaining('still to come') },
    });
  });
});

describe('an entry from the outbox', () => {
  it('is shifted by how far the device runs ahead, marked "about", and tells both times', () => {
    const ahead = 30 * MINUTE;
    const occurred = ask(at(NOW + 20 * MINUTE), { fromOutbox: true, deviceClock: NOW + ahead });
    expect(occurred).toEqual({
      at: NOW - 10 * MINUTE,
      precision: 'about',
      asEntered: NOW + 20 * MINUTE,
    });
    if ('problem' in occurred) throw new Error('refused');
    expect(timeTaken(occurred)).toEqual({
      timeTaken: { asEntered: iso(NOW + 20 * MINUTE), taken: iso(NOW - 10 * MINUTE), precision: 'about' },
    });
  });
  it('uses the time of entry as the measure when the device does not say its clock', () => {
    const entered = NOW + 45 * MINUTE;
    expect(ask(at(entered - 5 * MINUTE), { fromOutbox: true, entered })).toMatchObject({
      at: NOW - 5 * MINUTE,
      precision: 'about',
    });
  });
  it('in the past is left alone whatever the device says', () => {
    expect(ask(at(NOW - MINUTE), { fromOutbox: true, deviceClock: NOW + 30 * MINUTE })).toEqual({
      at: NOW - MINUTE,
      precision: 'exact',
    });
  });
  it('that stays in the future after the shift is refused', () => {
    expect(ask(at(NOW + 90 * MINUTE), { fromOutbox: true, deviceClock: NOW + 10 * MINUTE })).toMatchObject({
      problem: { type: '/problems/time-in-future' },
    });
  });
});

const local = (text: string, repeated?: 'first' | 'second') => ({
  local: text,
  precision: 'about' as const,
  ...(repeated ? { repeated } : {}),
});

/** Instants of the clock changes: IANA tz database, Europe/Berlin, 29 March and 25 October 2026. */
describe('a time on the ward’s clock', () => {
  it('becomes its instant', () => {
    expect(ask(local('2026-11-25T10:30'))).toEqual({
      at: Date.parse('2026-11-25T09:30:00Z'),
      precision: 'about',
    });
  });
  it('in the skipped hour is refused at its field', () => {
    expect(ask(local('2026-03-29T02:30'))).toMatchObject({
      problem: { type: '/problems/skipped-hour', errors: [{ pointer: '/occurred/local' }] },
    });
  });
  it('in the repeated hour needs to say which, and is then one hour apart', () => {
    expect(ask(local('2026-10-25T02:30'))).toMatchObject({
      problem: { type: '/problems/repeated-hour', errors: [{ pointer: '/occurred/repeated' }] },
    });
    expect(ask(local('2026-10-25T02:30', 'first'))).toMatchObject({ at: Date.parse('2026-10-25T00:30:00Z') });
    expect(ask(local('2026-10-25T02:30', 'second'))).toMatchObject({
      at: Date.parse('2026-10-25T01:30:00Z'),
    });
  });
  it('cannot be read before the ward has a clock', () => {
    expect(ask(local('2026-11-25T10:30'), { zone: null })).toMatchObject({
      problem: { type: '/problems/invalid-command', errors: [{ pointer: '/occurred/local' }] },
    });
  });
});
