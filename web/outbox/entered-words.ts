/** What a person entered, in words, from the command's own data: for whoever reads a set-aside entry. */
import { say, sentence } from '../capabilities/words.ts';

export interface EnteredLine {
  readonly of: string;
  readonly words: string;
}

/** Keys that name something by its id, which says nothing to a person. */
const IDS = new Set([
  'stay',
  'person',
  'protocol',
  'event',
  'target',
  'hold',
  'answers',
  'ref',
  'staff',
  'attachment',
]);
const ID_LIKE = /^[0-9a-f]{8}-?[0-9a-f]{4}-?[0-9a-f]{4}-?[0-9a-f]{4}-?[0-9a-f]{12}$/i;
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/;
const CODE = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const nameOf = (key: string): string =>
  sentence(key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll('-', ' '));

function wordsOf(value: string | number | boolean, time: (at: number) => string): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  if (INSTANT.test(value) && !Number.isNaN(Date.parse(value))) return time(Date.parse(value));
  return CODE.test(value) ? say(value) : value;
}

/** One line a field, in the order of the command; ids are left out. `time` writes an instant (epoch ms). */
export function enteredWords(data: unknown, time: (at: number) => string): readonly EnteredLine[] {
  const lines: EnteredLine[] = [];
  const put = (of: string, value: unknown): void => {
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
      if (typeof value === 'string' && ID_LIKE.test(value)) return;
      lines.push({ of, words: wordsOf(value, time) });
    } else if (Array.isArray(value)) {
      const [plain, deep] = [
        value.filter((v) => typeof v !== 'object'),
        value.filter((v) => typeof v === 'object'),
      ];
      const said = plain.map((v) => wordsOf(v as string | number | boolean, time));
      if (said.length > 0) lines.push({ of, words: said.join(', ') });
      for (const one of deep) put(of, one);
    } else if (value !== null && typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) if (!IDS.has(key)) put(nameOf(key), inner);
    }
  };
  put('Entered', data);
  return lines;
}
