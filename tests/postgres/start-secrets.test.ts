/**
 * Secrets come from the environment and from files, and stay there: the built program, at its most
 * talkative, on settings that work and on settings that do not, says none of them.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ownDatabase } from './postgres.ts';

const program = join(import.meta.dirname, '..', '..', 'server', 'dist', 'main.js');
const PASSWORD = 'planted-database-password-81c2';
const CLIENT_SECRET = 'planted-client-secret-5d1f';

let folder: string;
let database: Awaited<ReturnType<typeof ownDatabase>>;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'footboard-secrets-'));
  database = await ownDatabase();
  writeFileSync(join(folder, 'secret'), `${CLIENT_SECRET}\n`);
  writeFileSync(join(folder, 'two-words'), `${CLIENT_SECRET} and more`);
  writeFileSync(join(folder, 'roles.json'), '{"nurses":{"ward":"alder","role":"nurse"}}');
  writeFileSync(join(folder, 'bad-roles.json'), `{"nurses":"${CLIENT_SECRET}"}`);
});
afterAll(async () => {
  await database.drop();
  rmSync(folder, { recursive: true, force: true });
});

const withPassword = (more: (url: URL) => void = () => {}): string => {
  const url = new URL(database.url);
  url.password = PASSWORD;
  more(url);
  return url.href;
};
const settings = (more: Record<string, string> = {}): Record<string, string> => ({
  PATH: process.env['PATH'] ?? '',
  PORT: '0',
  DATA_DIR: join(folder, 'data'),
  FOOTBOARD_LOG: 'trace',
  DATABASE_URL: withPassword(),
  PUBLIC_URL: 'http://localhost:4000',
  // Nothing listens on port 1: a provider that is away.
  OIDC_ISSUER: 'http://127.0.0.1:1',
  OIDC_CLIENT_ID: 'board',
  OIDC_CLIENT_SECRET_FILE: join(folder, 'secret'),
  OIDC_ROLES_FILE: join(folder, 'roles.json'),
  ...more,
});

function start(env: Record<string, string>) {
  const child = spawn(process.execPath, [program], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const heard = { said: '' };
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (text: Buffer) => (heard.said += String(text)));
  }
  return { child, heard, ended: once(child, 'exit') };
}

const mute = (said: string, more: readonly string[] = []) => {
  const masterKey = readFileSync(join(folder, 'data', 'master.key'));
  const secrets = [PASSWORD, CLIENT_SECRET, ...more];
  for (const form of ['utf8', 'hex', 'base64', 'base64url'] as const) {
    secrets.push(masterKey.toString(form).trim());
    for (const secret of [PASSWORD, CLIENT_SECRET]) secrets.push(Buffer.from(secret).toString(form));
  }
  expect(secrets.filter((secret) => secret.length > 8 && said.includes(secret))).toEqual([]);
};

describe('secrets', () => {
  it('START-5 given settings that work, then a start, a sign-on that fails and a stop say none of them', async () => {
    const { child, heard, ended } = start(settings());
    while (!/^Plain HTTP/m.test(heard.said)) await once(child.stdout, 'data');
    const [url] = /http:\/\/localhost:\d+/.exec(heard.said)!;
    const answer = await fetch(`${url}/api/sign-on/begin?returnTo=/wards/alder`);
    expect(answer.status).toBe(503);
    const told = await answer.text();
    await fetch(`${url}/api/sign-on/return?code=planted-code-77&state=planted-state-77`);
    await fetch(`${url}/api/wards`, { headers: { cookie: 'footboard-session=planted-token-77' } });
    child.kill('SIGTERM');
    expect((await ended)[0]).toBe(0);
    expect(heard.said).toContain('the single sign-on provider cannot be used');
    mute(heard.said + told, ['planted-code-77', 'planted-state-77', 'planted-token-77']);
  });

  it.each([
    ['no such database', { DATABASE_URL: () => withPassword((url) => (url.pathname = '/not-there')) }],
    ['no PostgreSQL there', { DATABASE_URL: () => withPassword((url) => (url.port = '1')) }],
    ['an address that is none', { DATABASE_URL: () => withPassword().replace('postgres:', 'mysql:') }],
    ['a secret file with more in it', { OIDC_CLIENT_SECRET_FILE: () => join(folder, 'two-words') }],
    ['a roles file that is wrong', { OIDC_ROLES_FILE: () => join(folder, 'bad-roles.json') }],
    ['a setting missing', { OIDC_CLIENT_ID: () => '' }],
    ['plain HTTP for everybody', { HOST: () => '0.0.0.0' }],
  ])('START-5 given %s, then the one line that refuses the start says none of them', async (_what, wrong) => {
    const more = Object.fromEntries(Object.entries(wrong).map(([name, value]) => [name, value()]));
    const { heard, ended } = start(settings(more));
    expect((await ended)[0]).toBe(2);
    expect(heard.said).toContain('Footboard cannot start: ');
    mute(heard.said);
  });
});
