/**
 * Single sign-on by OpenID Connect: authorisation code with PKCE (RFC 7636, S256), state and nonce.
 *
 * The provider may be away when Footboard starts: it is asked for its settings when somebody first
 * wants to sign in, and again until it answered once. Nothing is kept here between leaving and coming
 * back: state, nonce and verifier travel sealed in a short-lived cookie of that browser.
 */
import { readFileSync } from 'node:fs';
import {
  None,
  ClientSecretBasic,
  allowInsecureRequests,
  authorizationCodeGrant,
  buildAuthorizationUrl,
  calculatePKCECodeChallenge,
  discovery,
  enableNonRepudiationChecks,
  fetchUserInfo,
  randomNonce,
  randomPKCECodeVerifier,
  randomState,
} from 'openid-client';
import type { Configuration } from 'openid-client';
import { z } from 'zod';
import { Answered, problem } from '../commanding/problems.ts';
import type { SingleSignOnSettings } from '../platform/config-sign-on.ts';
import { StartRefused } from '../platform/start-refused.ts';
import { readGroups } from './groups.ts';
import type { SingleSignOn } from './ports.ts';
import type { AccessParts } from './parts.ts';

export const RETURN_PATH = '/api/sign-on/return';
/** Long enough to find a second factor. Ours, no source. */
export const KEPT_FOR_MS = 10 * 60_000;
const ANSWERS_WITHIN_SECONDS = 10;
const SEAL = 'sign-on';

const keptWords = z.strictObject({
  state: z.string(),
  nonce: z.string(),
  verifier: z.string(),
  returnTo: z.string(),
  made: z.number(),
});
type Kept = z.infer<typeof keptWords>;

/** Null when no provider is set. @throws StartRefused when one is set and cannot be used. */
export async function openSingleSignOn({
  config: { singleSignOn: settings },
  keys,
  clock,
  logger,
}: AccessParts): Promise<SingleSignOn | null> {
  if (!settings) return null;
  const groups = readGroups(settings.rolesFile);
  const provider = providerOf(settings);
  const redirectUri = `${settings.publicUrl}${RETURN_PATH}`;

  /** Codes of errors only: messages and causes may hold what the provider sent. */
  const note = (what: string, error: unknown) =>
    logger.warn({ code: codeOf(error), why: word(error, 'error') ?? word(error, 'name') }, what);

  async function reached(): Promise<Configuration> {
    try {
      return await provider();
    } catch (error) {
      note('the single sign-on provider cannot be used', error);
      throw away();
    }
  }

  function opened(kept: string): Kept {
    try {
      const words = keptWords.parse(JSON.parse(keys.open(SEAL, Buffer.from(kept, 'base64url'))));
      if (clock.now() - words.made <= KEPT_FOR_MS) return words;
    } catch {
      // Sealed by another key, cut short, or made up: all the same to whoever sent it.
    }
    throw failed('The sign-in was begun in another browser, or too long ago.');
  }

  return {
    label: settings.label,
    wards: groups.wards,

    async begin(returnTo) {
      const answering = await reached();
      const verifier = randomPKCECodeVerifier();
      const kept: Kept = {
        state: randomState(),
        nonce: randomNonce(),
        verifier,
        returnTo: ownPath(returnTo),
        made: clock.now(),
      };
      const url = buildAuthorizationUrl(answering, {
        redirect_uri: redirectUri,
        scope: settings.scope,
        code_challenge: await calculatePKCECodeChallenge(verifier),
        code_challenge_method: 'S256',
        state: kept.state,
        nonce: kept.nonce,
      });
      return { url: url.href, kept: keys.seal(SEAL, JSON.stringify(kept)).toString('base64url') };
    },

    async finish(currentUrl, sealed) {
      const { state, nonce, verifier, returnTo } = opened(sealed);
      const answering = await reached();
      // The address the browser was sent back to, as the provider knows it: a proxy may have changed ours.
      const back = new URL(redirectUri);
      back.search = currentUrl.search;
      try {
        const tokens = await authorizationCodeGrant(answering, back, {
          expectedState: state,
          expectedNonce: nonce,
          pkceCodeVerifier: verifier,
          idTokenExpected: true,
        });
        const token = tokens.claims()!;
        const said = await withUserInfo(answering, token, tokens.access_token, settings.groupsClaim);
        const name = [said['name'], said['preferred_username']].find(isText)?.trim().slice(0, 80);
        if (!name) throw failed('The provider does not say the name of who signed in.');
        const own = groupsIn(said[settings.groupsClaim]);
        if (own.size === 0) logger.warn('single sign-on: the provider named no group of who signed in');
        return { issuer: token.iss, subject: token.sub, name, returnTo, ...groups.given(own) };
      } catch (error) {
        if (error instanceof Answered) throw error;
        note('single sign-on failed', error);
        throw isAway(error) ? away() : failed('The provider and this server did not agree on who it is.');
      }
    },
  };
}

/** @throws StartRefused when the secret cannot be read. */
function providerOf(settings: SingleSignOnSettings): () => Promise<Configuration> {
  const { issuer, clientId, clientSecretFile } = settings;
  const secret = clientSecretFile === undefined ? null : secretIn(clientSecretFile);
  const inClear = new URL(issuer).protocol === 'http:';
  let asked: Promise<Configuration> | null = null;
  return () => {
    asked ??= discovery(
      new URL(issuer),
      clientId,
      undefined,
      secret === null ? None() : ClientSecretBasic(secret),
      {
        timeout: ANSWERS_WITHIN_SECONDS,
        // The signature of the ID token is checked too, whatever the way it came.
        execute: [enableNonRepudiationChecks, ...(inClear ? [allowInsecureRequests] : [])],
      },
    ).catch((error: unknown) => {
      asked = null;
      throw error;
    });
    return asked;
  };
}

function secretIn(path: string): string {
  let secret = '';
  try {
    secret = readFileSync(path, 'utf8').trim();
  } catch (error) {
    throw new StartRefused(`OIDC_CLIENT_SECRET_FILE ${path} cannot be read: give this user the right`, {
      cause: error,
    });
  }
  if (secret === '' || /\s/.test(secret)) {
    throw new StartRefused(
      `OIDC_CLIENT_SECRET_FILE ${path} does not hold one secret: write the client secret and nothing else`,
    );
  }
  return secret;
}

type Claims = Readonly<Record<string, unknown>>;

/** Many providers put names and groups only where the access token asks for them. */
async function withUserInfo(
  answering: Configuration,
  token: Claims & { readonly sub: string },
  accessToken: string,
  groupsClaim: string,
): Promise<Claims> {
  const complete = isText(token['name']) && token[groupsClaim] !== undefined;
  if (complete || answering.serverMetadata().userinfo_endpoint === undefined) return token;
  return { ...(await fetchUserInfo(answering, accessToken, token.sub)), ...token };
}

const isText = (value: unknown): value is string => typeof value === 'string' && value.trim() !== '';
const groupsIn = (claim: unknown): ReadonlySet<string> => new Set([claim].flat().filter(isText));

/**
 * A path of this site, to go back to after signing in; "/" for anything else, so that no link can
 * send whoever signs in to a foreign page.
 */
export function ownPath(text: string): string {
  const base = 'http://own.invalid';
  if (text.length > 500 || !text.startsWith('/') || !URL.canParse(text, base)) return '/';
  const { origin, pathname, search } = new URL(text, base);
  // "/.//elsewhere.example" becomes "//elsewhere.example", which a browser reads as another host.
  const own = origin === base && !pathname.startsWith('//') && !/^\/api(\/|$)/i.test(pathname);
  return own ? `${pathname}${search}` : '/';
}

const away = (): Answered =>
  new Answered(
    problem(
      'sign-on-away',
      'The single sign-on provider does not answer as it should.',
      'Try again in a moment, or sign in with a name and password of this server.',
    ),
  );
const failed = (detail: string): Answered =>
  new Answered(
    problem(
      'sign-on-failed',
      detail,
      'Begin the sign-in again; when it fails twice, tell whoever runs Footboard.',
    ),
  );

const word = (error: unknown, key: string): string | undefined => {
  const value = (error as Record<string, unknown> | null | undefined)?.[key];
  return typeof value === 'string' ? value.slice(0, 60) : undefined;
};
const codeOf = (error: unknown): string | undefined => word(error, 'code');
/** A connection that failed is a TypeError of fetch; a late answer has a code of its own. */
const isAway = (error: unknown): boolean =>
  codeOf(error) === 'OAUTH_TIMEOUT' || (error instanceof TypeError && error.message === 'fetch failed');
