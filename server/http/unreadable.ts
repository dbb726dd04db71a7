/**
 * What Node's own parser cannot read never reaches the program and its filter: it is answered here, as
 * a problem like every other no (RFC 9457), instead of by Node's bare line.
 */
import { STATUS_CODES } from 'node:http';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import type { RequestHandler } from 'express';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from '../commanding/problems.ts';
import { sendProblem } from './send.ts';

export function answerUnreadable(server: Server): void {
  const last = new WeakMap<Duplex, readonly [IncomingMessage, ServerResponse]>();
  server.on('request', (request, response) => last.set(request.socket, [request, response]));
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
    if (error.code === 'ECONNRESET' || !socket.writable) {
      socket.destroy();
      return;
    }
    const [request, response] = last.get(socket) ?? [];
    const answered = response?.headersSent === true;
    if (request?.complete && response && !response.writableFinished) {
      // What came behind a whole request: that one still gets its answer, and then it is over.
      if (!answered) response.shouldKeepAlive = false;
      response.once('finish', () => socket.end());
    } else if (request?.complete && response?.shouldKeepAlive === false) {
      // Both sides said that this was the last one (RFC 9112, 9.6).
      socket.end();
    } else if (request && !request.complete && answered) {
      // A second answer to one request could be taken for the answer to another.
      if (response.writableFinished) socket.end();
      else socket.destroy();
    } else socket.end(asBytes(problemOf(error.code)));
  });
}

/** NUL is no character of any id or word here, and no database takes it: such an address leads nowhere. */
export const readableAddress: RequestHandler = (request, response, next) => {
  if (!/%00/.test(request.originalUrl)) next();
  else {
    sendProblem(
      response,
      problem(
        'malformed-address',
        'The address has "%00" in it, which stands for no character.',
        'Leave it out.',
      ),
    );
  }
};

/** Codes of Node's parser and timers, as `node:http` documents its own answers to them. */
function problemOf(code: string | undefined): Problem {
  switch (code) {
    case 'HPE_HEADER_OVERFLOW':
      return problem(
        'headers-too-large',
        'The address and the headers together are over 16 kB.',
        'Send a shorter address and fewer cookies; a browser may need its cookies for this server cleared.',
      );
    case 'HPE_CHUNK_EXTENSIONS_OVERFLOW':
      return problem(
        'too-large',
        'The parts of the body carry too much beside it.',
        'Send the body in one piece.',
      );
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return problem('too-slow', 'The request did not arrive whole in time.', 'Send it again.');
    default:
      return problem(
        'unreadable-request',
        'What arrived is not a request by the rules of HTTP.',
        'Look at the proxy or the program that sent it; a browser does not send such a thing.',
      );
  }
}

function asBytes(said: Problem): string {
  const body = JSON.stringify(said);
  const lines = [
    `HTTP/1.1 ${said.status} ${STATUS_CODES[said.status]}`,
    'Content-Type: application/problem+json; charset=utf-8',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Cache-Control: no-store',
    'X-Content-Type-Options: nosniff',
    "Content-Security-Policy: default-src 'none'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'",
    'Connection: close',
  ];
  return `${lines.join('\r\n')}\r\n\r\n${body}`;
}
