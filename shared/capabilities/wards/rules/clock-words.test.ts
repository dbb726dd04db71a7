/** What a person is told of a time that the ward's clock did not show, showed twice, or never shows. */
import { describe, expect, it } from 'vitest';
import { resolveLocal } from './calendar.ts';

describe('a time that the ward clock cannot say', () => {
  it.each(['2026-02-30T10:00', '2026-02-20T24:30', '2026-02-20', '2026-02-20T10:00:00', ''])(
    'is no date and time of the calendar: "%s"',
    (local) => {
      expect(resolveLocal('Europe/Berlin', local)).toEqual({
        refused: 'no-such-time',
        detail: `${local} is not a date and time of the calendar`,
        remedy: 'write the date and time like 2026-10-25T01:40',
      });
    },
  );
  it('TIME-2 happened twice: says on which day, and asks which', () => {
    expect(resolveLocal('America/New_York', '2026-11-01T01:40')).toEqual({
      refused: 'repeated-hour',
      detail: '01:40 happened twice on 2026-11-01: the clocks went back',
      remedy: 'say which: the first (UTC-04:00) or the second (UTC-05:00)',
    });
  });
});
