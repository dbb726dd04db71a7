/** Words and dates for whoever keeps the records. */
import type { z } from 'zod';
import type { eraseStayRequest } from '@footboard/shared/wire/access';

/** What the server writes where a name or text was erased. */
export const TEXT_REMOVED = '(text removed)';

export const ERASE_REASON: Readonly<Record<z.infer<typeof eraseStayRequest>['reason'], string>> = {
  'retention-over': 'Kept long enough',
  'asked-by-person': 'The person asked for it',
  'entered-by-mistake': 'Entered by mistake',
};

/** "25 November 2026" on the ward's clock: what is kept too long is older than a date without its year tells. */
export const wardFullDate = (at: number, zone: string): string =>
  new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: zone,
  }).format(at);

export const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);
