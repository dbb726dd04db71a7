/** What every way of signing in fully does to this browser: one session, and nobody else's beside it. */
import type { Request, Response } from 'express';
import type { Cookies } from '../access/cookies.ts';
import type { Identity } from '../access/identity.ts';
import type { AccountRecord, Sessions, Signing } from '../access/ports.ts';
import { identityOf } from './allowed.ts';

/**
 * The cookie outlives the session by a day or more: until then a session that ran out still says whose
 * entries wait on this device. When it ends is for the server alone to say.
 */
const COOKIE_SECONDS = 48 * 60 * 60;

export interface SigningInParts {
  readonly sessions: Sessions;
  readonly signing: Pick<Signing, 'close' | 'unlock'>;
  readonly cookies: Cookies;
}

/**
 * Begins a session for this browser and ends what was there before: an older session, and a signing
 * window, which would otherwise stand before it.
 *
 * @returns the identity of this browser from now on
 * @throws Answered not-allowed when the account is switched off
 */
export async function signedIn(
  parts: SigningInParts,
  request: Request,
  response: Response,
  account: AccountRecord,
): Promise<Identity> {
  const { sessions, signing, cookies } = parts;
  const { token } = await sessions.begin(account);
  await endWhatIsHere(parts, request);
  cookies.clear(response, 'signing');
  cookies.set(response, 'session', token, COOKIE_SECONDS);
  await signing.unlock(account.staff);
  const person = await sessions.person(token);
  return {
    ...identityOf(request),
    person: person && !('ranOut' in person) ? person : null,
    claimed: null,
    ranOut: false,
  };
}

/** Ends the session and the signing window of this browser; its device stays paired. */
export async function signedOut(parts: SigningInParts, request: Request, response: Response): Promise<void> {
  await endWhatIsHere(parts, request);
  parts.cookies.clear(response, 'session');
  parts.cookies.clear(response, 'signing');
}

async function endWhatIsHere(
  { sessions, signing, cookies }: SigningInParts,
  { headers }: Request,
): Promise<void> {
  const token = cookies.read(headers, 'session');
  const person = token === null ? null : await sessions.person(token, 'quietly');
  if (person && !('ranOut' in person) && person.session !== null) await sessions.end(person.session);
  const window = cookies.read(headers, 'signing');
  if (window !== null) await signing.close(window);
}
