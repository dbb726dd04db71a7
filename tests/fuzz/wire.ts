/** A plain HTTP/1.1 client that sends exactly the bytes it is given, also those no proper client would. */
import { connect } from 'node:net';

export interface Request {
  readonly method: string;
  readonly path: string;
  readonly headers: readonly (readonly [name: string, value: string])[];
  readonly body: string | Buffer | null;
  /** What Content-Length says, where it lies. */
  readonly length?: string;
}
export interface Answer {
  readonly status: number;
  readonly headers: ReadonlyMap<string, string>;
  readonly body: Buffer;
  /** Something came behind the answer, though each request says that it is the last. */
  readonly more: boolean;
}

/** Longer than any answer takes: a server that hangs is found, not waited for. */
const PATIENCE_MS = 30_000;

/** Null when the server closed the connection without an answer. */
export function send(port: number, request: Request): Promise<Answer | null> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    const received: Buffer[] = [];
    socket.setTimeout(PATIENCE_MS, () => {
      socket.destroy();
      reject(new Error(`no answer to ${request.method} ${request.path.slice(0, 80)}`));
    });
    socket.on('data', (chunk) => received.push(chunk));
    // A server may refuse and close while a long body is still on its way.
    socket.on('error', () => {});
    socket.on('close', () => resolve(read(Buffer.concat(received))));
    // A request that is longer than it is would be waited for; any other is left open until the answer.
    const unended = request.length !== undefined || request.method === 'CONNECT';
    if (unended) socket.end(bytesOf(request));
    else socket.write(bytesOf(request));
  });
}

function bytesOf({ method, path, headers, body, length }: Request): Buffer {
  const content = body === null ? Buffer.alloc(0) : Buffer.from(body);
  const framing: (readonly [string, string])[] =
    length !== undefined
      ? [['Content-Length', length]]
      : body === null
        ? []
        : [['Content-Length', String(content.length)]];
  const lines = [...headers, ...framing, ['Connection', 'close'] as const].map(
    ([name, value]) => `${name}: ${value}\r\n`,
  );
  return Buffer.concat([Buffer.from(`${method} ${path} HTTP/1.1\r\n${lines.join('')}\r\n`), content]);
}

function read(bytes: Buffer): Answer | null {
  const end = bytes.indexOf('\r\n\r\n');
  if (end < 0) return null;
  const [first = '', ...lines] = bytes.subarray(0, end).toString('latin1').split('\r\n');
  const status = Number(first.split(' ')[1]);
  if (status === 100) return read(bytes.subarray(end + 4));
  const headers = new Map(
    lines.map((line) => {
      const colon = line.indexOf(':');
      return [line.slice(0, colon).toLowerCase(), line.slice(colon + 1).trim()];
    }),
  );
  const rest = bytes.subarray(end + 4);
  const body = headers.get('transfer-encoding') === 'chunked' ? unchunked(rest) : rest;
  const more = rest.length > Number(headers.get('content-length') ?? Infinity);
  return { status, headers, body, more };
}

function unchunked(rest: Buffer): Buffer {
  const parts: Buffer[] = [];
  for (let at = 0; ;) {
    const end = rest.indexOf('\r\n', at);
    const size = end < 0 ? NaN : Number.parseInt(rest.subarray(at, end).toString('latin1'), 16);
    if (!size) return Buffer.concat(parts);
    parts.push(rest.subarray(end + 2, end + 2 + size));
    at = end + 2 + size + 2;
  }
}
