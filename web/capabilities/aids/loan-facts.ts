/** What a line says of a loan: with whom, how long ago, until when. */
import type { ItemLine } from '@footboard/shared/wire/items';
import { ago, wardDayTime } from '../../board/clock.ts';
import { say } from './words.ts';

type Loan = NonNullable<ItemLine['borrowed']>;

/** Past the time that was agreed nothing happens by itself: it is said. */
export const isOver = ({ until }: Loan, now: number): boolean => until !== null && until <= now;

export function loanFacts(which: 'lent-to' | 'lent-by', loan: Loan, zone: string, now: number): string[] {
  const { name, at, until } = loan;
  const to = { ward: name, ago: ago(at, now) };
  if (until === null) return [say(which, to)];
  const time = wardDayTime(until, zone, now);
  return [say(which, to), say(isOver(loan, now) ? 'was-due-back' : 'back-by', { time })];
}
