/** A real OpenID provider on a loopback port, whose people sign in without typing anything. */
import { generateKeyPairSync, randomUUID, sign } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Provider } from 'oidc-provider';

export interface Somebody {
  readonly name: string;
  readonly groups?: readonly string[];
}

export interface TestProvider {
  readonly issuer: string;
  /** Who is at the keyboard when the next browser arrives. */
  at: string;
  /** By subject. */
  readonly people: Map<string, Somebody>;
  /** Given instead of the provider's own answer at its token endpoint. */
  tokenAnswer: (() => object) | 'hang-up' | null;
  /** Signs an ID token with the provider's own key, or with one it does not have. */
  idToken(claims: object, key?: 'own' | 'foreign'): string;
  close(): Promise<void>;
}

export const CLIENT = 'board';
/** Planted: no log, problem or address may hold it. */
export const CLIENT_SECRET = 'planted-client-secret-5d1f';

const keyPair = () => generateKeyPairSync('rsa', { modulusLength: 2048 });
const part = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url');

/** @param isPublic a client without a secret, which PKCE alone protects */
export async function startProvider(
  redirectUri: string,
  { isPublic = false, port = 0 }: { isPublic?: boolean; port?: number } = {},
): Promise<TestProvider> {
  const keys = { own: keyPair(), foreign: keyPair() };
  const server = createServer();
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  const issuer = `http://localhost:${(server.address() as AddressInfo).port}`;
  const people = new Map<string, Somebody>();

  const provider = new Provider(issuer, {
    clients: [
      {
        client_id: CLIENT,
        redirect_uris: [redirectUri],
        grant_types: ['authorization_code'],
        response_types: ['code'],
        ...(isPublic
          ? { token_endpoint_auth_method: 'none' }
          : { client_secret: CLIENT_SECRET, token_endpoint_auth_method: 'client_secret_basic' }),
      },
    ],
    jwks: {
      keys: [{ ...keys.own.privateKey.export({ format: 'jwk' }), kid: 'own', use: 'sig', alg: 'RS256' }],
    },
    claims: { openid: ['sub'], profile: ['name'], groups: ['groups'] },
    pkce: { required: () => true },
    cookies: { keys: [randomUUID()] },
    ttl: { AccessToken: 60, Grant: 60, IdToken: 60, Interaction: 60, Session: 60 },
    features: { devInteractions: { enabled: false } },
    interactions: { url: (_context, { uid }) => `/interaction/${uid}` },
    findAccount: (_context, sub) => ({ accountId: sub, claims: () => ({ sub, ...people.get(sub) }) }),
    async loadExistingGrant({ oidc }) {
      const grant = new oidc.provider.Grant({
        clientId: oidc.client!.clientId,
        accountId: oidc.session!.accountId!,
      });
      grant.addOIDCScope('openid profile groups');
      await grant.save();
      return grant;
    },
  });
  const answer = provider.callback();
  server.on('request', (request, response) => {
    const { tokenAnswer } = running;
    if (request.url?.startsWith('/interaction/')) {
      void provider.interactionFinished(request, response, { login: { accountId: running.at } });
    } else if (request.url !== '/token' || tokenAnswer === null) {
      void answer(request, response);
    } else if (tokenAnswer === 'hang-up') {
      request.destroy();
    } else {
      response.setHeader('content-type', 'application/json');
      response.end(JSON.stringify(tokenAnswer()));
    }
  });

  const running: TestProvider = {
    issuer,
    at: '',
    people,
    tokenAnswer: null,
    idToken(claims, key = 'own') {
      const signed = `${part({ alg: 'RS256', kid: 'own' })}.${part(claims)}`;
      return `${signed}.${sign('sha256', Buffer.from(signed), keys[key].privateKey).toString('base64url')}`;
    },
    async close() {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
  return running;
}

/** As much of a browser as signing in needs: cookies by host, redirects followed one at a time. */
export class TestBrowser {
  readonly #cookies = new Map<string, Map<string, string>>();

  /** @param accept what the browser asks for: a navigation wants a page, a program JSON */
  async go(url: string, accept = 'text/html'): Promise<Response> {
    const { host } = new URL(url);
    const jar = this.#cookies.get(host) ?? new Map<string, string>();
    this.#cookies.set(host, jar);
    const cookie = [...jar].map(([name, value]) => `${name}=${value}`).join('; ');
    const answer = await fetch(url, { redirect: 'manual', headers: { accept, cookie } });
    for (const line of answer.headers.getSetCookie()) {
      const [name = '', value = ''] = line.split(';')[0]!.split(/=(.*)/);
      if (value === '' || /expires=Thu, 01 Jan 1970/i.test(line)) jar.delete(name);
      else jar.set(name, value);
    }
    return answer;
  }

  /** Goes where it is sent until an address of `stopAt`, or an answer that sends it nowhere. */
  async follow(url: string, stopAt: (url: string) => boolean): Promise<string> {
    for (let at = url, hops = 0; hops < 20; hops++) {
      if (stopAt(at)) return at;
      const answer = await this.go(at);
      const next = answer.headers.get('location');
      if (next === null) throw new Error(`${at} sends nowhere: ${answer.status} ${await answer.text()}`);
      at = new URL(next, at).href;
    }
    throw new Error('sent round and round');
  }

  cookies(host: string): ReadonlyMap<string, string> {
    return this.#cookies.get(host) ?? new Map();
  }
}
