import { speaks } from '../../i18n/language.ts';

/** A date of the calendar with its year, "2026-10-25" as "25 Oct 2026" or "25. Okt. 2026". */
export const dayWords = (date: string): string =>
  new Intl.DateTimeFormat(speaks.value === 'de' ? 'de-DE' : 'en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  }).format(Date.parse(`${date}T00:00:00Z`));
