import type { INestApplicationContext } from '@nestjs/common';
import { IoAdapter } from '@nestjs/platform-socket.io';
import type { IncomingMessage } from 'node:http';
import type { Identify } from '../access/identify.ts';

/** Nest's adapter brings its own copy of socket.io: its types, not ours. */
type Options = Parameters<IoAdapter['createIOServer']>[1];
type Handshake = Pick<IncomingMessage, 'headers'> & {
  readonly socket: { readonly remoteAddress?: string | undefined };
};

const one = (value: string | readonly string[] | undefined): string | undefined =>
  typeof value === 'string' ? value : value?.[0];

/**
 * Where a socket comes from, by the headers of its handshake. A browser sends a page's origin with
 * every web socket (RFC 6455, 10.2), and, unlike for other requests, does not stop a foreign page
 * itself. With polling it sends none, and says `same-origin` instead (Fetch Metadata).
 *
 * @param behindTlsProxy the asked-for host is in X-Forwarded-Host, which anybody could write otherwise.
 */
export function comesFrom(
  { headers }: Pick<IncomingMessage, 'headers'>,
  behindTlsProxy: boolean,
): 'own-page' | 'foreign-page' | 'no-page' {
  const { origin } = headers;
  const site = one(headers['sec-fetch-site']);
  if (site !== undefined && site !== 'same-origin') return 'foreign-page';
  if (origin === undefined) return site === undefined ? 'no-page' : 'own-page';
  if (!URL.canParse(origin)) return 'foreign-page';
  const { host } = new URL(origin);
  const own = host === headers.host || (behindTlsProxy && host === one(headers['x-forwarded-host']));
  return own ? 'own-page' : 'foreign-page';
}

/**
 * Only pages this server served may open a socket, and programs that are no browser when they bring a
 * device's key or a session. Whoever opens one is let into a ward's room by the policy alone.
 */
export async function mayOpen(
  request: Handshake,
  behindTlsProxy: boolean,
  identify: Identify,
): Promise<boolean> {
  const from = comesFrom(request, behindTlsProxy);
  if (from !== 'no-page') return from === 'own-page';
  const address = request.socket.remoteAddress ?? 'unknown';
  const { access, person, device } = await identify.of(request.headers, address, 'quietly');
  return access === 'open' || person !== null || device !== null;
}

export class SameOriginAdapter extends IoAdapter {
  constructor(
    app: INestApplicationContext,
    private readonly known: { readonly identify: Identify; readonly behindTlsProxy: boolean },
  ) {
    super(app);
  }

  override createIOServer(port: number, options?: Options): ReturnType<IoAdapter['createIOServer']> {
    const { identify, behindTlsProxy } = this.known;
    const allowRequest: NonNullable<Options>['allowRequest'] = (request, answer) => {
      const no = (why: string) => answer(why, false);
      mayOpen(request, behindTlsProxy, identify).then(
        (may) => (may ? answer(null, true) : no('no page of this server, no key and no session')),
        () => no('it cannot be told now who this is; try again'),
      );
    };
    return super.createIOServer(port, { ...options, allowRequest } as Options);
  }
}
