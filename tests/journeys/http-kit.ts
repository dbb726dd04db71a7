/** A real server on an embedded database in memory and a free port, and a person who sends commands to it. */
import { randomUUID } from 'node:crypto';
import type { Problem, CommandAccepted } from '@footboard/shared/wire/http';
import { commandAccepted, problem } from '@footboard/shared/wire/http';
import type { Clock } from '@footboard/server/platform/clock';
import { readConfig } from '@footboard/server/platform/config';
import { startFootboard } from '@footboard/server/start';
import type { Footboard } from '@footboard/server/start';

export const WARD = 'alder';

export interface Sent {
  readonly status: number;
  readonly type: string;
  readonly body: Record<string, unknown>;
}

export interface Envelope {
  readonly commandId?: string;
  readonly occurred?: object;
  readonly entered?: object;
  readonly source?: object;
  readonly expect?: unknown;
  readonly fromOutbox?: boolean;
}

/** A clock that stands still until a test moves it. */
export class StillClock implements Clock {
  readonly rate = 1;
  constructor(public at: number) {}
  now(): number {
    return this.at;
  }
}

export class Ward {
  constructor(
    readonly footboard: Footboard,
    readonly clock: Clock,
  ) {}

  get(path: string): Promise<Sent> {
    return this.#ask(path, {});
  }

  post(path: string, body: string, headers: Record<string, string>): Promise<Sent> {
    return this.#ask(path, { method: 'POST', headers, body });
  }

  /** Sends a command as it stands, with defaults only for what `envelope` leaves out. */
  send(
    name: string,
    data: unknown,
    by: string | null = 'ines',
    envelope: Envelope = {},
    ward = WARD,
    headers: Record<string, string> = {},
  ): Promise<Sent> {
    const now = new Date(this.clock.now()).toISOString();
    const body = {
      commandId: randomUUID(),
      occurred: { at: now },
      entered: { at: now, offsetMinutes: 60 },
      source: { kind: 'person' },
      expect: 'latest',
      ...envelope,
      data,
    };
    return this.post(`/api/wards/${ward}/commands/${name}`, JSON.stringify(body), {
      'content-type': 'application/json',
      ...(by === null ? {} : { 'x-footboard-staff': by }),
      ...headers,
    });
  }

  /** The same, for a command that must be taken: anything else ends the test with the server's words. */
  async enter(...args: Parameters<Ward['send']>): Promise<CommandAccepted> {
    const sent = await this.send(...args);
    if (sent.status !== 200) throw new Error(`${args[0]}: ${JSON.stringify(sent.body)}`);
    return commandAccepted.parse(sent.body);
  }

  async #ask(path: string, init: RequestInit): Promise<Sent> {
    const answer = await fetch(`${this.footboard.url}${path}`, init);
    const type = answer.headers.get('content-type') ?? '';
    const text = await answer.text();
    return { status: answer.status, type, body: type.includes('json') ? JSON.parse(text) : { text } };
  }
}

export const asProblem = (sent: Sent): Problem => {
  if (!sent.type.startsWith('application/problem+json'))
    throw new Error(`no problem: ${sent.status} ${sent.type}`);
  return problem.parse(sent.body);
};

const bed = (label: string) => ({ bed: `bed-${label}`, label, bay: `Bay ${label[0]}` });

const IN_MEMORY = { DATA_DIR: 'memory://' };

/** A server with sign-in off on a free port; by default on an empty database in memory. */
export async function startServer(clock: Clock, env: Record<string, string> = IN_MEMORY): Promise<Ward> {
  const footboard = await startFootboard({
    config: readConfig({ PORT: '0', FOOTBOARD_LOG: 'silent', ...env }),
    clock,
    access: 'open',
    quiet: true,
  });
  return new Ward(footboard, clock);
}

/** An open ward "Alder" in Lisbon with three beds, a charge nurse Ines, a nurse Noor and an aide Ada. */
export async function openWard(clock: Clock, env?: Record<string, string>): Promise<Ward> {
  const ward = await startServer(clock, env);
  await ward.enter(
    'set-up-ward',
    { name: 'Alder', zone: 'Europe/Lisbon', beds: [bed('1A'), bed('1B'), bed('2A')] },
    null,
  );
  await ward.enter('add-staff-member', { staff: 'ines', name: 'Ines Amaral', role: 'charge-nurse' }, null);
  await ward.enter('add-staff-member', { staff: 'noor', name: 'Noor Haddad', role: 'nurse' });
  await ward.enter('add-staff-member', { staff: 'ada', name: 'Ada Lund', role: 'aide' });
  return ward;
}

export const beginStay = (stay: string, in_ = '1A') => ({
  stay,
  person: `person-${stay}`,
  bed: `bed-${in_}`,
  from: 'home',
  identity: { name: 'Rosa Pinto', recordNumber: 'R-100', born: '1941-03-09' },
});
export const aSession = (stay: string, startedAt: string, more: object = {}) => ({
  stay,
  session: {
    outcome: 'done',
    occasion: 'planned',
    activities: ['walk'],
    startedAt,
    events: [],
    metres: 20,
    ...more,
  },
});
