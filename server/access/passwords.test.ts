import { describe, expect, it } from 'vitest';
import { Answered } from '../commanding/problems.ts';
import { hashSecret, isSecret, refuseCommon, refuseCommonCode } from './passwords.ts';

const refused = (run: () => void): boolean => {
  try {
    run();
    return false;
  } catch (error) {
    if (!(error instanceof Answered)) throw error;
    expect(error.answer.type).toBe('/problems/password-too-common');
    return true;
  }
};
const words = ['ines.amaral', 'Ines Amaral', 'Alder'];
const common = (password: string) => refused(() => refuseCommon(password, words));

describe('a password', () => {
  it('ACCOUNT-1 is kept as Argon2id at the cost OWASP names, salted: never the same string twice', async () => {
    const [one, other] = await Promise.all([
      hashSecret('lanterns under rain'),
      hashSecret('lanterns under rain'),
    ]);
    // OWASP Password Storage Cheat Sheet: m=19456 (19 MiB), t=2, p=1. Form: RFC 9106 and the PHC string.
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]+\$[A-Za-z0-9+/]+$/);
    expect(other).not.toBe(one);
    expect(await isSecret(one, 'lanterns under rain')).toBe(true);
    expect(await isSecret(one, 'lanterns under Rain')).toBe(false);
  });

  it('is the same however the keyboard composes its letters (NFKC, NIST SP 800-63B)', async () => {
    const kept = await hashSecret('f\u00fcnf Stra\u00dfen weiter');
    expect(await isSecret(kept, 'fu\u0308nf Stra\u00dfen weiter')).toBe(true);
  });

  it('is never right where none is kept', async () => {
    expect(await isSecret(null, '')).toBe(false);
    expect(await isSecret(null, 'lanterns under rain')).toBe(false);
  });

  it.each([
    'password1234',
    'PassWord!!!!2026',
    'passwordpassword',
    'aaaaaaaaaaaaaaa',
    'abcabcabcabc',
    '123456789012',
    '210987654321',
    'qwertyuiopas',
    'abcdefghijklm',
    'lkjihgfedcba',
    'letmein letmein',
    'ines amaral 2026',
    'amaralines12',
    'Ines.Amaral-1',
    'alderalder2026',
    'Alder.footboard1',
    '!!!!!!!!!!!!!!',
    // Of the leaked ones that are used most (the list of zxcvbn-ts).
    '1qaz2wsx3edc4rfv',
    'Counterstrike',
    'scandinavian',
    'needforspeed',
  ])('is refused when it is guessed first: %s', (password) => expect(common(password)).toBe(true));

  it.each([
    'lanterns under rain',
    'my password is lost in the fog',
    'ines likes cold rivers',
    'Xk7#pQ2w!zR9',
    '739201846520',
    'der alte Apfelbaum',
  ])('is taken when it is not: %s', (password) => expect(common(password)).toBe(false));
});

describe('a short code', () => {
  it.each(['111111', '123456', '654321', '121212', '123123', '12341234', '00000000', '567890'])(
    'is refused when it is guessed first: %s',
    (code) => expect(refused(() => refuseCommonCode(code))).toBe(true),
  );
  it.each(['482617', '112345', '900124', '10293847'])('is taken when it is not: %s', (code) =>
    expect(refused(() => refuseCommonCode(code))).toBe(false),
  );
});
