import { describe, expect, it } from 'vitest';
import { stretchesOf, timesOf } from './on-draft.ts';

const ZONE = 'Europe/Berlin';
/** The ward day from 07:00 on 3 March, winter time. */
const PAGE = { day: '2026-03-03', from: Date.UTC(2026, 2, 3, 6), to: Date.UTC(2026, 2, 4, 6) };
const draft = { from: '07:00', until: '15:00', pause: '', minutes: 30 };

describe('times of day as instants of the ward day', () => {
  it('a shift by day with its break', () => {
    expect(timesOf(ZONE, PAGE, { ...draft, pause: '11:15' })).toEqual({
      ok: {
        from: '2026-03-03T06:00:00.000Z',
        until: '2026-03-03T14:00:00.000Z',
        breaks: [{ from: '2026-03-03T10:15:00.000Z', until: '2026-03-03T10:45:00.000Z' }],
      },
    });
  });
  it('a night ends on the next date, and its break may lie there', () => {
    expect(timesOf(ZONE, PAGE, { ...draft, from: '21:00', until: '07:00', pause: '02:00' })).toEqual({
      ok: {
        from: '2026-03-03T20:00:00.000Z',
        until: '2026-03-04T06:00:00.000Z',
        breaks: [{ from: '2026-03-04T01:00:00.000Z', until: '2026-03-04T01:30:00.000Z' }],
      },
    });
  });
  it('a time that is none is told with its field', () => {
    expect(timesOf(ZONE, PAGE, { ...draft, until: '' })).toMatchObject({ field: 'until' });
  });
  it('a night over the spring change is an hour shorter', () => {
    const march = { day: '2026-03-28', from: Date.UTC(2026, 2, 28, 6), to: Date.UTC(2026, 2, 29, 5) };
    expect(timesOf(ZONE, march, { ...draft, from: '21:00', until: '07:00' })).toMatchObject({
      ok: { from: '2026-03-28T20:00:00.000Z', until: '2026-03-29T05:00:00.000Z' },
    });
  });
});

it('quarter hours that say the same are one stretch', () => {
  const slot = (n: number, nurses: number, said: 'named' | 'usual' = 'named') => ({
    from: n,
    to: n + 1,
    said,
    people: [],
    nurses,
    aides: 1,
    therapists: 0,
  });
  expect(stretchesOf([slot(0, 2), slot(1, 2), slot(2, 3), slot(3, 3, 'usual')])).toEqual([
    { from: 0, to: 2, said: 'named', nurses: 2, aides: 1, therapists: 0 },
    { from: 2, to: 3, said: 'named', nurses: 3, aides: 1, therapists: 0 },
    { from: 3, to: 4, said: 'usual', nurses: 3, aides: 1, therapists: 0 },
  ]);
});
