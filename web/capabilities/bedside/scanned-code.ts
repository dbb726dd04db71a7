/**
 * What a scanned code says, held against whoever the page is for. A wristband holds the record number;
 * the code at a bed holds the address of that bed's page. Whatever a code holds, the page goes nowhere
 * by itself: a code is compared, never followed.
 */
export type ReadCode =
  | { readonly kind: 'bed'; readonly ward: string; readonly bed: string }
  | { readonly kind: 'record'; readonly number: string }
  /** The code of a printed sheet: paper is carried about and proves neither bed nor person. */
  | { readonly kind: 'paper' }
  | { readonly kind: 'unreadable' };

export interface CodeSubject {
  readonly ward: string;
  readonly bed: string;
  /** Null when no record number is on this page: not recorded, or not readable here. */
  readonly recordNumber: string | null;
}

export type CodeVerdict =
  | { readonly says: 'person' }
  /** At the right bed. A bed is no identifier: the name is still asked for. */
  | { readonly says: 'bed' }
  | { readonly says: 'other-bed'; readonly bed: string }
  | { readonly says: 'other-person'; readonly number: string }
  | { readonly says: 'no-number-here' }
  | { readonly says: 'paper' }
  | { readonly says: 'unreadable' };

const segment = '([A-Za-z0-9._~-]{1,64})';
const BED = new RegExp(`^/wards/${segment}/bedside/${segment}/?$`);
const PAPER = new RegExp(`^/wards/${segment}/paper(/|$)`);
/** A record number is short and has no address in it. */
const NUMBER = /^[\p{L}\p{N}][\p{L}\p{N} ./_-]{0,39}$/u;

function pathOf(text: string): string | null {
  try {
    const { protocol, pathname } = new URL(text);
    return protocol === 'https:' || protocol === 'http:' ? pathname : null;
  } catch {
    return text.startsWith('/') ? text : null;
  }
}

export function readCode(raw: string): ReadCode {
  const text = raw.trim();
  const path = pathOf(text);
  if (path !== null) {
    const [, ward, bed] = BED.exec(path) ?? [];
    if (ward && bed) return { kind: 'bed', ward, bed };
    return PAPER.test(path) ? { kind: 'paper' } : { kind: 'unreadable' };
  }
  return NUMBER.test(text) ? { kind: 'record', number: text } : { kind: 'unreadable' };
}

/** Printers differ in spaces and capitals; nothing else is overlooked. */
const same = (a: string, b: string): boolean => plainNumber(a) === plainNumber(b);
const plainNumber = (number: string): string => number.replaceAll(/\s+/g, '').toLocaleUpperCase('en');

export function judgeCode(raw: string, subject: CodeSubject): CodeVerdict {
  const code = readCode(raw);
  switch (code.kind) {
    case 'bed':
      return code.ward === subject.ward && code.bed === subject.bed
        ? { says: 'bed' }
        : { says: 'other-bed', bed: code.bed };
    case 'record':
      if (subject.recordNumber === null) return { says: 'no-number-here' };
      return same(code.number, subject.recordNumber)
        ? { says: 'person' }
        : { says: 'other-person', number: code.number };
    default:
      return { says: code.kind };
  }
}
