import type { StayPage } from '@footboard/shared/wire/http';
import { speaks } from '../../i18n/language.ts';
import { confirmWords as say } from './confirm-words.ts';

/** A date of birth has no time zone: it is written as it was entered. */
export const bornWords = (born: string): string =>
  new Intl.DateTimeFormat(speaks.value === 'de' ? 'de-DE' : 'en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(Date.parse(`${born}T00:00:00Z`));

/** The two things to compare: the name, and date of birth and record number as far as they are recorded. */
export function identifiersOf(identity: StayPage['identity']): {
  name: string | null;
  second: string | null;
} {
  const second = [
    ...(identity?.born ? [say('born', { date: bornWords(identity.born) })] : []),
    ...(identity?.recordNumber ? [say('record', { number: identity.recordNumber })] : []),
  ].join(' · ');
  return { name: identity?.name ?? null, second: second || null };
}
