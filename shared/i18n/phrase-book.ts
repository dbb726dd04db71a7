/**
 * Puts sentences of the rules and of the server into another language, by their form. A phrase is a
 * pair: an English form with named holes, and the other language's form with the same holes.
 *
 * - `{x}` is put into the other language in its turn, and must be known, be an amount or be a time
 * - `{n}` and `{m}` are amounts, `{when}` is a time, and nothing else
 * - `{~x}` stays as it is written: a name, a label, free text
 * - `{?x}` is put into the other language where it is known, else it stays: a source
 *
 * What no phrase fits is taken apart at its punctuation; it is known when each piece is.
 */
export type Phrase = readonly [from: string, to: string];

export interface HowWritten {
  /** An amount as the language writes it. */
  readonly amount: (text: string) => string;
  /** An instant of the ward's clock ("24 Oct 18:00", "18:00 (UTC+1)") or a date ("24 Oct 2026"); null when the text is none. */
  readonly time: (text: string) => string | null;
  /** What stands between two pieces, where it differs: " and " to " und ". */
  readonly between: Readonly<Record<string, string>>;
}

export interface PhraseBook {
  /** The sentence in the other language, or null where it is not known. */
  readonly say: (sentence: string) => string | null;
}

interface Form {
  readonly start: string;
  readonly end: string;
  readonly middle: readonly string[];
  /** Forms that say more are tried first. */
  readonly weight: number;
  readonly pattern: RegExp;
  readonly greedy: RegExp;
  readonly holes: readonly { readonly name: string; readonly kind: '' | '~' | '?' }[];
  readonly to: string;
}

const HOLE = /\{([~?]?)([a-z]+)\}/gi;
const AMOUNT_IN = String.raw`-?\d+(?:\.\d+)?(?:e[-+]?\d+)?`;
const AMOUNT = new RegExp(`^${AMOUNT_IN}$`, 'i');
const TIME_IN = String.raw`(?:[A-Z][a-z]{2} )?(?:\d{1,2} [A-Z][a-z]{2} )?\d\d:\d\d(?: \(UTC[^)]*\))?|\d{1,2} [A-Z][a-z]{2} \d{4}`;
const SEPARATORS = ['. ', '; ', ': ', ', ', ' + ', ' and ', ' or '] as const;
/** Steps for one sentence. One that is not known after so many stays as it is: a screen never waits for it. */
const MOST_STEPS = 4_000;
/** Sentences that were put into words before; a ward says the same things all day. */
const KEPT_AT_MOST = 4_000;

const literally = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

const holePattern = (name: string, lazy: boolean): string =>
  name === 'n' || name === 'm'
    ? `(${AMOUNT_IN})`
    : name === 'when'
      ? `(${TIME_IN})`
      : lazy
        ? '(.+?)'
        : '(.+)';

function formOf([from, to]: Phrase): Form {
  const holes = [...from.matchAll(HOLE)].map(([, kind, name]) => ({
    name: name!,
    kind: (kind ?? '') as '' | '~' | '?',
  }));
  const literals = from.split(/\{[~?]?[a-z]+\}/i);
  const regex = (lazy: boolean) =>
    new RegExp(
      `^${literals.map((text, i) => literally(text) + (holes[i] ? holePattern(holes[i].name, lazy) : '')).join('')}$`,
      's',
    );
  return {
    start: literals[0]!,
    end: literals.at(-1)!,
    middle: literals.slice(1, -1),
    weight: literals.join('').length * 2 - holes.length,
    pattern: regex(true),
    greedy: regex(false),
    holes,
    to,
  };
}

/** Each fixed part stands in the text, in order: cheaper to see than to match. */
function mayFit({ start, end, middle }: Form, text: string): boolean {
  if (!text.startsWith(start) || !text.endsWith(end)) return false;
  let at = start.length;
  for (const part of middle) {
    at = text.indexOf(part, at);
    if (at < 0) return false;
    at += part.length;
  }
  return at + end.length < text.length + 1;
}
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export function phraseBook(phrases: readonly Phrase[], how: HowWritten): PhraseBook {
  const whole = new Map(phrases.filter(([from]) => !from.includes('{')));
  const forms = phrases
    .filter(([from]) => from.includes('{'))
    .map(formOf)
    .toSorted((a, b) => b.weight - a.weight);
  const byStart = new Map<string, readonly Form[]>();
  /** Forms that a text may have by its first sign, the ones that say more first. */
  function formsFor(text: string): readonly Form[] {
    const first = text.charAt(0);
    let some = byStart.get(first);
    if (!some) {
      some = forms.filter((form) => form.start === '' || form.start.startsWith(first));
      byStart.set(first, some);
    }
    return some;
  }
  let kept = new Map<string, string | null>();
  let pieces = new Map<string, string | null>();
  let steps = 0;

  function sentence(asked: string): string | null {
    const before = kept.get(asked);
    if (before !== undefined) return before;
    if (kept.size > KEPT_AT_MOST) kept = new Map();
    pieces = new Map();
    steps = 0;
    const found = say(asked);
    kept.set(asked, found);
    return found;
  }

  function say(text: string): string | null {
    const before = pieces.get(text);
    if (before !== undefined) return before;
    if (++steps > MOST_STEPS) return null;
    const found = sayNew(text);
    pieces.set(text, found);
    return found;
  }

  const exactly = (text: string): string | null => whole.get(text) ?? null;

  function sayNew(text: string): string | null {
    if (text === '') return '';
    if (AMOUNT.test(text)) return how.amount(text);
    return (
      exactly(text) ??
      how.time(text) ??
      byForm(text) ??
      otherCase(text) ??
      withoutStop(text) ??
      inPieces(text)
    );
  }

  /** The same words at the start of a line, or within one. */
  function otherCase(text: string): string | null {
    if (text !== small(text)) {
      const known = exactly(small(text)) ?? byForm(small(text));
      return known === null ? null : capital(known);
    }
    return exactly(capital(text)) ?? byForm(capital(text));
  }

  function withoutStop(text: string): string | null {
    if (!text.endsWith('.')) return null;
    const known = say(text.slice(0, -1));
    return known === null ? null : `${known}.`;
  }

  function byForm(text: string): string | null {
    for (const form of formsFor(text)) {
      if (!mayFit(form, text)) continue;
      for (const pattern of form.holes.length > 1 ? [form.pattern, form.greedy] : [form.pattern]) {
        const match = pattern.exec(text);
        const said = match && filled(form, match.slice(1));
        if (said) return said;
      }
    }
    return null;
  }

  function filled(form: Form, texts: readonly string[]): string | null {
    const values = new Map<string, string>();
    for (const [i, { name, kind }] of form.holes.entries()) {
      const text = texts[i]!;
      const value = kind === '~' ? text : (say(text) ?? (kind === '?' ? text : null));
      if (value === null) return null;
      values.set(name, value);
    }
    return form.to.replaceAll(HOLE, (_all, _kind, name: string) => values.get(name) ?? '');
  }

  function inPieces(text: string): string | null {
    if (text.endsWith(')')) {
      for (const at of placesOf(text, ' (')) {
        const said = both(text.slice(0, at), ' (', text.slice(at + 2, -1));
        if (said !== null) return `${said})`;
      }
    }
    for (const separator of SEPARATORS) {
      for (const at of placesOf(text, separator)) {
        // A stop ends the first piece and stays with it.
        const said = both(text.slice(0, at), separator, text.slice(at + separator.length));
        if (said !== null) return said;
      }
    }
    return null;
  }

  function both(left: string, separator: string, right: string): string | null {
    const first = say(left);
    if (first === null) return null;
    const second = say(right);
    return second === null ? null : `${first}${how.between[separator] ?? separator}${second}`;
  }

  return { say: sentence };
}

function placesOf(text: string, separator: string): number[] {
  const places: number[] = [];
  for (let at = text.indexOf(separator); at > 0; at = text.indexOf(separator, at + 1)) places.push(at);
  return places;
}
