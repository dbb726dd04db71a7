/** The German phrase book knows what the rules, the entries and the server say. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { REFUSALS } from '@footboard/shared/capabilities/refusals';
import { PROBLEMS } from '../../server/commanding/problems.ts';
import { GERMAN, germanBook } from '@footboard/shared/i18n/phrases/german';
import { fromEvents, fromHistories } from './sentences/of-the-rules.ts';
import { fromSource } from './sentences/of-the-source.ts';

const book = germanBook();
const SEED = 20_261_130;

/** A sentence without its amounts and times: what the book is asked to know. */
const form = (sentence: string): string =>
  sentence
    .replaceAll(/(\d{1,2} [A-Z][a-z]{2} )?\d\d:\d\d( \(UTC[^)]*\))?/g, '{when}')
    .replaceAll(/-?\d+(\.\d+)?(e[-+]?\d+)?/g, '{n}');

function unknownForms(sentences: Iterable<string>): { forms: number; unknown: readonly string[] } {
  const forms = new Map([...sentences].map((sentence) => [form(sentence), sentence]));
  return {
    forms: forms.size,
    unknown: [...forms].filter(([, sentence]) => book.say(sentence) === null).map(([one]) => one),
  };
}

describe('the German phrase book', () => {
  it.each([
    ['of the board and the huddle, over random histories', () => fromHistories(400, SEED)],
    ['of the entries of a timeline', () => fromEvents(60, SEED)],
  ])('knows at least 99 of 100 sentences %s', (_of, sentences) => {
    const { forms, unknown } = unknownForms(sentences());
    expect(forms).toBeGreaterThan(400);
    // At most one in a hundred; the list names them when it is longer.
    expect(unknown.slice(Math.floor(forms / 100))).toEqual([]);
  });

  it('knows each title of a refusal and of a problem', () => {
    const titles = [...Object.values(REFUSALS), ...Object.values(PROBLEMS).map(([, title]) => title)];
    expect(titles.filter((title) => book.say(title) === null)).toEqual([]);
  });

  it('knows each text of the default protocol', () => {
    const texts = DEFAULT_PROTOCOL.stages.flatMap((stage) => [
      stage.says,
      ...(stage.word ? [stage.word] : []),
      ...stage.parts.map((part) => part.says),
    ]);
    expect(texts.filter((text) => book.say(text) === null)).toEqual([]);
  });

  it('knows what a rule or the server refuses, and what to do', () => {
    const unknown = [...fromSource()]
      .filter(([, ways]) => ways.every((way) => book.say(way) === null))
      .map(([text]) => text);
    expect(unknown).toEqual([]);
  });

  it('fills each hole that its German has, and drops none but on purpose', () => {
    const holes = (text: string) =>
      [...new Set([...text.matchAll(/\{[~?]?([a-z]+)\}/gi)].map(([, name]) => name))].toSorted().join();
    expect(GERMAN.filter(([from, to]) => holes(from) !== holes(to))).toEqual([]);
  });

  it('has no sentence twice', () => {
    const seen = GERMAN.map(([from]) => from);
    expect(seen.filter((from, i) => seen.indexOf(from) !== i)).toEqual([]);
  });
});

describe('how a sentence is put', () => {
  it.each([
    ['Not up since 24 Oct 18:00 (chair)', 'Nicht auf seit 24. Okt. 18:00 (Stuhl)'],
    [
      'Fall, 25 Oct 02:30 (UTC+1): before the next move, and by 25 Oct 08:00 also without one',
      'Sturz, 25. Okt. 02:30 (UTC+1): vor dem nächsten Bewegen, und bis 25. Okt. 08:00 auch ohne',
    ],
    ['temperature 38.5 °C is 38.5 or more', 'Temperatur 38,5 °C, Grenze 38,5 oder mehr'],
    [
      'three people or more for edge of bed, turn or move up in bed',
      'drei Personen oder mehr für Bettkante, Drehen oder Hochrutschen im Bett',
    ],
    // Names and free texts are nobody's to translate.
    ['Trigger: fall. walk and bed', 'Anlass: Sturz. walk and bed'],
    ['Arrived in bed walk (from home)', 'Angekommen in Bett walk (von: zu Hause)'],
  ])('%s', (english, german) => expect(book.say(english)).toBe(german));

  it('leaves what it does not know, and does not take long over it', () => {
    expect(
      book.say('The moon is full tonight, and nobody knows, nobody at all; and so on, and so on: and on'),
    ).toBeNull();
    expect(book.say('Fall, wibble')).toBeNull();
  });
});
