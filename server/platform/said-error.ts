/**
 * An error as a log line may hold it: what kind, where, and no word that may have come from a
 * person. Database drivers hang the statement and its values onto their errors, parsers quote what
 * they could not read, and Node quotes the argument it refused; none of that is written.
 */
import { refusalOf } from './database-errors.ts';

export interface SaidError {
  readonly type: string;
  readonly message: string;
  /** SQLSTATE, or the code of Node or of a library. */
  readonly code?: string;
  readonly constraint?: string;
  /** Files and lines only. */
  readonly stack?: string;
  readonly cause?: SaidError;
}

const KEPT_BACK = '(kept back: it may quote what somebody entered)';
/** Their messages quote the text, the number or the value that was wrong. */
const QUOTING: ReadonlySet<string> = new Set([
  'SyntaxError',
  'RangeError',
  'URIError',
  'ZodError',
  '$ZodError',
  'AssertionError',
]);
const LONGEST = 300;
const CAUSES = 4;

/** What stands between quotation marks is an id at best and a name at worst. */
const withoutQuotes = (text: string): string =>
  text.replaceAll(/"[^"]*"?|(?<!\w)'[^']*'?|`[^`]*`?|“[^”]*”?/g, '"…"').slice(0, LONGEST);

function messageOf(error: Error, code: string | undefined): string {
  const refusal = refusalOf(error);
  if (refusal) return `the database refused with SQLSTATE ${refusal.code}`;
  if (QUOTING.has(error.name) || QUOTING.has(error.constructor.name) || code?.startsWith('ERR_')) {
    return KEPT_BACK;
  }
  return withoutQuotes(error.message);
}

const isFrame = (line: string) => /^\s+at .*(:\d+:\d+\)?|\(native\)|<anonymous>\)?)$/.test(line);

/** @param value whatever was thrown; something that is no Error is told by its type alone. */
export function saidError(value: unknown, deep = CAUSES): SaidError {
  if (!(value instanceof Error)) return { type: typeof value, message: KEPT_BACK };
  const { code: raw } = value as { code?: unknown };
  const code = typeof raw === 'string' && /^[A-Z0-9_]{1,40}$/.test(raw) ? raw : undefined;
  const constraint = refusalOf(value)?.constraint;
  const stack = value.stack?.split('\n').filter(isFrame).join('\n');
  return {
    type: value.constructor.name,
    message: messageOf(value, code),
    ...(code === undefined ? {} : { code }),
    ...(constraint === undefined ? {} : { constraint }),
    ...(stack ? { stack } : {}),
    ...(value.cause === undefined || deep === 0 ? {} : { cause: saidError(value.cause, deep - 1) }),
  };
}
