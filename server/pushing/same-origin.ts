import { IoAdapter } from '@nestjs/platform-socket.io';
import type { IncomingMessage } from 'node:http';

/** Nest's adapter brings its own copy of socket.io: its types, not ours. */
type Options = Parameters<IoAdapter['createIOServer']>[1];

/**
 * A browser sends a page's origin with every socket, and, unlike for other requests, does not stop a
 * foreign page itself. Only pages this server served may join a ward. A program that is no browser
 * sends no origin; a proxy in front says the asked-for host.
 */
export function fromOwnPage({ headers }: Pick<IncomingMessage, 'headers'>): boolean {
  const { origin } = headers;
  if (origin === undefined) return true;
  if (!URL.canParse(origin)) return false;
  const { host } = new URL(origin);
  return host === headers.host || host === headers['x-forwarded-host'];
}

const allowRequest: NonNullable<Options>['allowRequest'] = (request, answer) => {
  const own = fromOwnPage(request);
  answer(own ? null : 'this page does not come from this server', own);
};

export class SameOriginAdapter extends IoAdapter {
  override createIOServer(port: number, options?: Options): ReturnType<IoAdapter['createIOServer']> {
    return super.createIOServer(port, { ...options, allowRequest } as Options);
  }
}
