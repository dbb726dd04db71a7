import { createServer } from 'node:http';
import type { Server } from 'node:http';
import { connect } from 'node:net';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problem } from '@footboard/shared/wire/http';
import { answerUnreadable } from './unreadable.ts';

let server: Server;
beforeAll(async () => {
  server = createServer((request, response) => {
    if (request.url === '/half') {
      // Half an answer, then nothing more: the rest of the request is still to come.
      response.writeHead(200, { 'content-length': '10' });
      response.write('half');
    } else if (request.url === '/slow') setImmediate(() => response.end('whole'));
    else response.end('whole');
  });
  answerUnreadable(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});
afterAll(() => server.close());

/** Sends bytes as they are; what came back when the server closed. */
function sent(bytes: string): Promise<string> {
  return new Promise((resolve) => {
    let got = '';
    const socket = connect((server.address() as AddressInfo).port, '127.0.0.1', () => socket.write(bytes));
    socket.on('data', (chunk) => (got += chunk.toString()));
    socket.on('error', () => {});
    socket.on('close', () => resolve(got));
  });
}
function asProblem(answer: string) {
  const [head = '', body = ''] = answer.split('\r\n\r\n');
  expect(head).toContain('Content-Type: application/problem+json');
  return problem.parse(JSON.parse(body));
}

describe('a request that is none', () => {
  it.each([
    ['no HTTP at all', 'hello\r\n\r\n', 400, 'unreadable-request'],
    [
      'a control sign in a header',
      'GET / HTTP/1.1\r\nHost: x\r\nX: a\u0001b\r\n\r\n',
      400,
      'unreadable-request',
    ],
    ['two lengths', 'POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 1, 2\r\n\r\n', 400, 'unreadable-request'],
    ['headers without end', `GET / HTTP/1.1\r\nX: ${'a'.repeat(20_000)}\r\n\r\n`, 431, 'headers-too-large'],
  ])('given %s, then it is answered as a problem', async (_what, bytes, status, code) => {
    expect(asProblem(await sent(bytes))).toMatchObject({
      status,
      type: `/problems/${code}`,
      remedy: expect.stringMatching(/\w{5}/),
    });
  });

  it('given one behind a whole answer, then both are answered, one after the other', async () => {
    const [first = '', ...rest] = (await sent('GET / HTTP/1.1\r\nHost: x\r\n\r\nnonsense\r\n\r\n'))
      .split('HTTP/1.1 ')
      .slice(1);
    expect(first).toMatch(/^200[\s\S]*whole$/);
    expect(asProblem(rest.join(''))).toMatchObject({ status: 400 });
  });

  it.each(['/', '/slow'])(
    'given nonsense behind the last request to %s, then that one alone is answered',
    async (path) => {
      const got = await sent(`GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\nnonsense\r\n\r\n`);
      expect(got.split('HTTP/1.1 ').slice(1)).toEqual([expect.stringMatching(/^200[\s\S]*whole$/)]);
    },
  );

  it('given nonsense behind a request whose answer is not ready, then that answer comes and no other', async () => {
    const got = await sent('GET /slow HTTP/1.1\r\nHost: x\r\n\r\nnonsense\r\n\r\n');
    expect(got.split('HTTP/1.1 ').slice(1)).toEqual([expect.stringMatching(/^200[\s\S]*whole$/)]);
  });

  it('given half an answer is out, then nothing is put behind it', async () => {
    const got = await sent('POST /half HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n');
    expect(got).not.toContain('problem');
  });
});
