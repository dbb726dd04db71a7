/**
 * What Node's own parser cannot read never reaches the program and its filter: it is answered here, as
 * a problem like every other no (RFC 9457), instead of by Node's bare line.
 */
import { STATUS_CODES } from 'node:http';
import type { Server, ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import type { Problem } from '@footboard/shared/wire/http';
import { problem } from '../commanding/problems.ts';

export function answerUnreadable(server: Server): void {
  const last = new WeakMap<Duplex, ServerResponse>();
  server.on('request', (request, response) => last.set(request.socket, response));
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
    const before = last.get(socket);
    // Half an answer is out: another one behind it could be taken for the answer to another request.
    const inTheMiddle = before?.headersSent === true && !before.writableFinished;
    if (error.code === 'ECONNRESET' || !socket.writable || inTheMiddle) {
      socket.destroy();
      return;
    }
    socket.end(asBytes(problemOf(error.code)));
  });
}

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
