/**
 * Passwords and short codes: hashed by Argon2id (RFC 9106), and refused when too well known (NIST
 * SP 800-63B, memorized secrets: length, no rules of composition, a list of what is guessed first).
 */
import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { dictionary } from '@zxcvbn-ts/language-common';
import { Answered, problem } from '../commanding/problems.ts';

/**
 * OWASP Password Storage Cheat Sheet: 19 MiB of memory, 2 passes, 1 lane. The library's own default
 * algorithm is Argon2id.
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** The same typed on another keyboard is the same password (Unicode NFKC, as SP 800-63B asks). */
const typed = (secret: string): string => secret.normalize('NFKC');

export const hashSecret = (secret: string): Promise<string> => hash(typed(secret), COST);

/** Made once, of something nobody can type: its check takes as long as any other and never holds. */
let dummy: Promise<string> | undefined;

/**
 * Takes the same time whether or not there is anything to hold the secret against.
 * @param kept an Argon2id string, or null when there is none: then false.
 */
export async function isSecret(kept: string | null, secret: string): Promise<boolean> {
  const against = kept ?? (await (dummy ??= hash(randomBytes(32), COST)));
  const right = await verify(against, typed(secret));
  return right && kept !== null;
}

/** What is used most, wherever passwords leaked: some 49,000, kept by the library zxcvbn-ts. */
const USED_MOST: ReadonlySet<string> = new Set(dictionary['passwords-common']);

/** What is guessed first among passwords of the length we ask for, and made longer. Ours, by hand. */
const GUESSED_FIRST: ReadonlySet<string> = new Set([
  'administrator',
  'administrator1',
  'changeme',
  'changemenow',
  'changethispassword',
  'correcthorsebatterystaple',
  'hospital',
  'iloveyou',
  'letmein',
  'letmeinplease',
  'mypassword',
  'password',
  'passwordpassword',
  'passw0rd',
  'p4ssw0rd',
  'secret',
  'thisismypassword',
  'trustno1',
  'welcome',
  'welcometohospital',
  'welcometotheward',
]);
/** Rows of keys, letters and digits: a walk along one of them is no secret. */
const ROWS = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890123456789',
  'qwertyuiopasdfghjklzxcvbnm',
  'qwertzuiopasdfghjklyxcvbnm',
];

const letters = (text: string): string =>
  typed(text)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
const backwards = (text: string): string => [...text].toReversed().join('');
const repeats = (text: string): boolean => /^(.{1,5})\1+.{0,4}$/u.test(text);
const walks = (text: string): boolean =>
  ROWS.some((row) => row.includes(text) || backwards(row).includes(text));

/**
 * @param words what anybody who knows the person or the place would try: sign-in name, name, ward.
 * @throws Answered password-too-common
 */
export function refuseCommon(password: string, words: readonly string[]): void {
  const plain = letters(password);
  const known = [...GUESSED_FIRST, 'footboard', ...words.flatMap(parts)].filter((word) => word.length >= 3);
  const bare = plain.replace(/^\p{N}+|\p{N}+$/gu, '');
  const rest = known
    .toSorted((a, b) => b.length - a.length)
    .reduce((left, word) => left.replaceAll(word, ''), plain);
  const common =
    plain === '' ||
    USED_MOST.has(typed(password).toLowerCase()) ||
    USED_MOST.has(plain) ||
    [plain, bare].some((text) => text.length >= 6 && (repeats(text) || walks(text))) ||
    (rest !== plain && /^\p{N}*.{0,2}$/u.test(rest));
  if (!common) return;
  const detail = 'That password is among those that are guessed first.';
  const remedy =
    'Choose a few words of your own that do not belong together, without your name or the ward’s.';
  throw new Answered(
    problem('password-too-common', detail, remedy, { errors: [{ pointer: '/password', detail, remedy }] }),
  );
}

/** A name as a whole and its parts, as somebody would type them. */
const parts = (name: string): string[] => [letters(name), ...name.split(/[^\p{L}\p{N}]+/u).map(letters)];

/** @throws Answered password-too-common: one digit over and over, or a walk up or down. */
export function refuseCommonCode(code: string): void {
  if (!/^(\d{1,4})\1+$/.test(code) && !walks(code)) return;
  const detail = 'That code is among those that are guessed first.';
  const remedy = 'Choose digits that do not run on or repeat.';
  throw new Answered(
    problem('password-too-common', detail, remedy, { errors: [{ pointer: '/code', detail, remedy }] }),
  );
}
