/**
 * A server with sign-in on (embedded database in memory, free port), its first administrator made by the
 * printed link, ward Alder, and one person of every role with an account. Everything goes over real HTTP
 * with cookies and an Origin, as a page of this server sends them.
 */
import { randomUUID } from 'node:crypto';
import { commandAccepted } from '@footboard/shared/wire/http';
import type { CommandAccepted } from '@footboard/shared/wire/http';
import { invitationMade, me as meShape } from '@footboard/shared/wire/access';
import type { Me } from '@footboard/shared/wire/access';
import type { Role } from '@footboard/shared/kernel/author';
import type { Clock } from '@footboard/server/platform/clock';
import { readConfig } from '@footboard/server/platform/config';
import { startFootboard } from '@footboard/server/start';
import type { Footboard, StartOptions } from '@footboard/server/start';
import { WARD } from './http-kit.ts';
import type { Envelope, Sent } from './http-kit.ts';

/** Invented people; the keys are their staff ids and sign-in names. */
export const STAFF = {
  ada: { name: 'Ada Lund', role: 'aide' },
  noor: { name: 'Noor Haddad', role: 'nurse' },
  theo: { name: 'Theo Brandt', role: 'therapist' },
  ines: { name: 'Ines Amaral', role: 'charge-nurse' },
  hanne: { name: 'Hanne Vik', role: 'handling-coordinator' },
  mira: { name: 'Mira Sato', role: 'manager' },
  rafa: { name: 'Rafa Otero', role: 'records' },
  alva: { name: 'Alva Kowal', role: 'administrator' },
} as const satisfies Record<string, { name: string; role: Role }>;
export type StaffName = keyof typeof STAFF;
export const staffWith = (role: Role): StaffName =>
  (Object.keys(STAFF) as StaffName[]).find((staff) => STAFF[staff].role === role)!;

/** The first administrator of the server: wide, on no ward's list. */
export const FIRST = 'first-one';
export const passwordOf = (signInName: string): string =>
  `lanterns under rain, ${[...signInName].toReversed().join('-')}`;
/** The short code of everybody in STAFF. */
export const CODE = '482617';

/** One browser: keeps its cookies, sends the Origin of the server's own pages. */
export class Client {
  readonly #cookies = new Map<string, string>();

  constructor(
    readonly url: string,
    readonly clock: Clock,
    /** Sent with every request; `origin: null` leaves the header out. */
    readonly headers: Readonly<Record<string, string>> & { origin?: string | null } = {},
  ) {}

  /** As a `Cookie` header, for sockets too. */
  get cookie(): string {
    return [...this.#cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  }
  cookieNamed = (name: string): string | undefined => this.#cookies.get(name);
  setCookie(name: string, value: string): void {
    this.#cookies.set(name, value);
  }
  /** Another browser that holds a copy of these cookies. */
  copy(): Client {
    const copy = new Client(this.url, this.clock, this.headers);
    for (const [name, value] of this.#cookies) copy.setCookie(name, value);
    return copy;
  }

  get = (path: string, headers: Record<string, string> = {}): Promise<Sent> =>
    this.#ask('GET', path, undefined, headers);
  post = (path: string, body: unknown = {}, headers: Record<string, string> = {}): Promise<Sent> =>
    this.#ask('POST', path, body, headers);
  delete = (path: string, headers: Record<string, string> = {}): Promise<Sent> =>
    this.#ask('DELETE', path, {}, headers);

  async me(): Promise<Me> {
    return meShape.parse((await this.get('/api/me')).body);
  }
  signIn = (signInName: string, password: string = passwordOf(signInName)): Promise<Sent> =>
    this.post('/api/session', { signInName, password });

  /** A command as it stands, with defaults only for what `envelope` leaves out. */
  send(
    name: string,
    data: unknown,
    envelope: Envelope = {},
    ward: string = WARD,
    headers: Record<string, string> = {},
  ): Promise<Sent> {
    const now = new Date(this.clock.now()).toISOString();
    return this.post(
      `/api/wards/${ward}/commands/${name}`,
      {
        commandId: randomUUID(),
        occurred: { at: now },
        entered: { at: now, offsetMinutes: 60 },
        source: { kind: 'person' },
        expect: 'latest',
        ...envelope,
        data,
      },
      headers,
    );
  }
  /** The same, for a command that must be taken: anything else ends the test with the server's words. */
  async enter(...args: Parameters<Client['send']>): Promise<CommandAccepted> {
    const sent = await this.send(...args);
    if (sent.status !== 200) throw new Error(`${args[0]}: ${JSON.stringify(sent.body)}`);
    return commandAccepted.parse(sent.body);
  }

  async #ask(method: string, path: string, body: unknown, headers: Record<string, string>): Promise<Sent> {
    const { origin = this.url, ...more } = this.headers;
    const answer = await fetch(`${this.url}${path}`, {
      method,
      redirect: 'manual',
      headers: {
        ...(origin === null ? {} : { origin }),
        ...(this.#cookies.size > 0 ? { cookie: this.cookie } : {}),
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...more,
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    for (const line of answer.headers.getSetCookie()) {
      const [pair = '', ...rules] = line.split(';').map((part) => part.trim());
      const [name, value] = [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)];
      const gone =
        rules.some((rule) => /^expires=Thu, 01 Jan 1970/i.test(rule)) || rules.includes('Max-Age=0');
      if (gone) this.#cookies.delete(name);
      else this.#cookies.set(name, value);
    }
    const type = answer.headers.get('content-type') ?? '';
    const text = await answer.text();
    return { status: answer.status, type, body: type.includes('json') ? JSON.parse(text) : { text } };
  }
}

export interface AccessWorld {
  readonly footboard: Footboard;
  /** A fresh browser: nobody, nothing. */
  browser(headers?: Client['headers']): Client;
  /** Signed in; the same browser each time for the same name, signed in again when that has ended. */
  as(who: StaffName | typeof FIRST): Promise<Client>;
  /** Makes an account by a keeper and accepts its link; the staff id is also the sign-in name. */
  invited(staff: string, name: string, more?: { ward?: string; wide?: boolean }): Promise<void>;
  close(): Promise<void>;
}

export interface AccessWorldOptions extends Partial<Omit<StartOptions, 'config' | 'access'>> {
  readonly clock?: Clock;
  readonly env?: Readonly<Record<string, string>>;
}

const realClock: Clock = { now: () => Date.now(), rate: 1 };

/** A server in its first run: nobody can sign in, nothing is set up. */
export const startFirstRun = ({ env = {}, ...options }: AccessWorldOptions = {}): Promise<Footboard> =>
  startFootboard({
    quiet: true,
    ...options,
    config: readConfig({ PORT: '0', DATA_DIR: 'memory://', FOOTBOARD_LOG: 'silent', ...env }),
  });

const tokenOf = (link: string): string => link.slice(link.indexOf('#') + 1);
const must = (sent: Sent, what: string): Sent => {
  if (sent.status >= 300) throw new Error(`${what}: ${sent.status} ${JSON.stringify(sent.body)}`);
  return sent;
};

/** Uses a one-time link in a fresh browser and stays signed in there. */
export async function join(
  browser: Client,
  link: string,
  signInName: string,
  more: { name?: string; code?: string } = {},
): Promise<Client> {
  const asked = { token: tokenOf(link), signInName, password: passwordOf(signInName), ...more };
  must(await browser.post('/api/invitations/accept', asked), `join ${signInName}`);
  return browser;
}

const bed = (label: string) => ({ bed: `bed-${label}`, label, bay: `Bay ${label[0]}` });

/** First administrator, ward Alder in Lisbon with three beds, and everybody of STAFF with account and code. */
export async function openAccessWorld(options: AccessWorldOptions = {}): Promise<AccessWorld> {
  const clock = options.clock ?? realClock;
  const footboard = await startFirstRun(options);
  const browser = (headers: Client['headers'] = {}) => new Client(footboard.url, clock, headers);
  const clients = new Map<string, Promise<Client>>();

  const first = await join(browser(), footboard.firstRunLink!, FIRST, { name: 'Wilma First' });
  clients.set(FIRST, Promise.resolve(first));
  await first.enter('set-up-ward', {
    name: 'Alder',
    zone: 'Europe/Lisbon',
    beds: [bed('1A'), bed('1B'), bed('2A')],
  });

  async function as(who: string): Promise<Client> {
    const client = await clients.get(who);
    if (!client) throw new Error(`nobody is called ${who}`);
    // A test that moves the clock, or a role, ends sessions.
    if ((await client.me()).person === null) must(await client.signIn(who), `sign in ${who}`);
    return client;
  }

  const invited: AccessWorld['invited'] = async (staff, name, { ward = WARD, wide = false } = {}) => {
    const made = must(
      await (await as(FIRST)).post(`/api/wards/${ward}/accounts`, { staff, name, wide }),
      `account ${staff}`,
    );
    const { path } = invitationMade.parse(made.body);
    clients.set(staff, join(browser(), path, staff, { code: CODE }));
    await clients.get(staff);
  };
  const everybody = Object.entries(STAFF);
  await Promise.all(
    everybody.map(([staff, { name, role }]) => first.enter('add-staff-member', { staff, name, role })),
  );
  await Promise.all(everybody.map(([staff, { name }]) => invited(staff, name)));

  return {
    footboard,
    browser,
    invited,
    as,
    close: () => footboard.close(),
  };
}
