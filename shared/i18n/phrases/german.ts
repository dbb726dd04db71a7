/** The German phrase book: a file a room, and how German writes amounts and times. */
import { phraseBook, type HowWritten, type Phrase, type PhraseBook } from '../phrase-book.ts';
import { assessmentPhrases } from './assessments.ts';
import { boardPhrases } from './board.ts';
import { criticalCarePhrases } from './critical-care.ts';
import { equipmentPhrases } from './equipment.ts';
import { eventPhrases } from './events.ts';
import { fieldPhrases } from './fields.ts';
import { handlingPhrases } from './handling.ts';
import { handlingTablePhrases } from './handling-tables.ts';
import { huddlePhrases } from './huddle.ts';
import { measurePhrases } from './measures.ts';
import { orderPhrases } from './orders.ts';
import { planningPhrases } from './planning.ts';
import { problemPhrases } from './problems.ts';
import { serverProblemPhrases } from './problems-of-server.ts';
import { protocolPhrases } from './protocol.ts';
import { readingPhrases } from './readings.ts';
import { refusalTitles } from './refusal-titles.ts';
import { refusalPhrases } from './refusals.ts';
import { entryRefusalPhrases } from './refusals-of-entries.ts';
import { wardRefusalPhrases } from './refusals-of-ward.ts';
import { roundPhrases } from './round.ts';
import { sessionPhrases } from './sessions.ts';
import { wordPhrases } from './words.ts';

export const GERMAN: readonly Phrase[] = [
  ...wordPhrases,
  ...protocolPhrases,
  ...assessmentPhrases,
  ...criticalCarePhrases,
  ...boardPhrases,
  ...handlingPhrases,
  ...handlingTablePhrases,
  ...orderPhrases,
  ...huddlePhrases,
  ...roundPhrases,
  ...planningPhrases,
  ...sessionPhrases,
  ...readingPhrases,
  ...measurePhrases,
  ...eventPhrases,
  ...equipmentPhrases,
  ...refusalTitles,
  ...refusalPhrases,
  ...entryRefusalPhrases,
  ...wardRefusalPhrases,
  ...problemPhrases,
  ...serverProblemPhrases,
  ...fieldPhrases,
];

const MONTHS: Readonly<Record<string, string>> = {
  Jan: 'Jan.',
  Feb: 'Feb.',
  Mar: 'März',
  Apr: 'Apr.',
  May: 'Mai',
  Jun: 'Juni',
  Jul: 'Juli',
  Aug: 'Aug.',
  Sep: 'Sept.',
  Oct: 'Okt.',
  Nov: 'Nov.',
  Dec: 'Dez.',
};
const DAYS: Readonly<Record<string, string>> = {
  Mon: 'Mo',
  Tue: 'Di',
  Wed: 'Mi',
  Thu: 'Do',
  Fri: 'Fr',
  Sat: 'Sa',
  Sun: 'So',
};
const INSTANT =
  /^(?:(Mon|Tue|Wed|Thu|Fri|Sat|Sun) )?(?:(\d{1,2}) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?(\d\d:\d\d(?: \(UTC[^)]*\))?)$/;

const DATE = /^(\d{1,2}) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) (\d{4})$/;

export const GERMAN_WRITING: HowWritten = {
  amount: (text) => text.replace('.', ','),
  time: (text) => {
    const [, of, named, year] = DATE.exec(text) ?? [];
    if (year) return `${of}. ${MONTHS[named!]} ${year}`;
    const [, day, date, month, clock] = INSTANT.exec(text) ?? [];
    if (!clock) return /^\d{4}-\d\d-\d\d$/.test(text) ? text : null;
    return [day ? DAYS[day] : '', month ? `${date}. ${MONTHS[month]}` : '', clock].filter(Boolean).join(' ');
  },
  between: { ' and ': ' und ', ' or ': ' oder ' },
};

export const germanBook = (): PhraseBook => phraseBook(GERMAN, GERMAN_WRITING);
