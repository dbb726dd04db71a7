/**
 * How much one device, session or address may ask for in a minute. Wide enough for a busy ward;
 * what is beyond it is a program gone wrong, or somebody trying keys. Numbers are ours, from
 * practice, no source; OWASP ASVS 5.0 chapter V2 asks that there are limits (from memory).
 */
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { Answered, problem } from '../commanding/problems.ts';

/** `secrets`: where a password, link, code or pairing could be tried. */
export type Kind = 'reads' | 'changes' | 'secrets';
export const PER_MINUTE: Readonly<Record<Kind, number>> = { reads: 600, changes: 240, secrets: 60 };

/** Behind one address there may be every screen of a ward that is not paired yet; tried secrets count alike. */
const SHARED_ADDRESS: Readonly<Record<Kind, number>> = { reads: 5, changes: 5, secrets: 1 };

const SECRETS: ReadonlySet<string> = new Set([
  'sign-in',
  'use-invitation',
  'change-own-secret',
  'approve-device',
  'sign-with-code',
  'break-glass',
]);

/** Null for what is never refused: whoever watches the server must hear that it is busy. */
export const kindOf = (method: string, action: string | undefined): Kind | null =>
  action === 'read-health'
    ? null
    : action !== undefined && SECRETS.has(action)
      ? 'secrets'
      : method === 'GET' || method === 'HEAD'
        ? 'reads'
        : 'changes';

export interface Limits {
  /**
   * Counts one request.
   *
   * @param origin who is counted: `origin` of the request's Identity
   * @throws Answered too-many-requests, with the seconds to wait
   */
  take(origin: string, kind: Kind): Promise<void>;
  /** A counter for one socket's messages. */
  socket(): SocketLimits;
}
export const LIMITS = Symbol('Limits');

/** How many messages of a sort one socket may send in a minute. */
export const SOCKET_PER_MINUTE = { join: 30, other: 600 } as const;
/** So many refused messages in the same minute, and the socket is put out. */
export const REFUSED_UNTIL_OUT = 30;

export interface SocketLimits {
  /** `yes`: go on. `no`: answer that it is too much, or drop it. `out`: disconnect this socket. */
  take(what: keyof typeof SOCKET_PER_MINUTE): 'yes' | 'no' | 'out';
}

const MINUTE_SECONDS = 60;

const counters = (times: Readonly<Record<Kind, number>>) => {
  const counter = (kind: Kind) =>
    new RateLimiterMemory({ points: PER_MINUTE[kind] * times[kind], duration: MINUTE_SECONDS });
  return { reads: counter('reads'), changes: counter('changes'), secrets: counter('secrets') };
};

export function openLimits(): Limits {
  const own = counters({ reads: 1, changes: 1, secrets: 1 });
  const shared = counters(SHARED_ADDRESS);
  return {
    async take(origin, kind) {
      const counter = (origin.startsWith('address ') ? shared : own)[kind];
      try {
        await counter.consume(origin);
      } catch (error) {
        if (!(error instanceof RateLimiterRes)) throw error;
        throw tooMany(Math.max(1, Math.ceil(error.msBeforeNext / 1000)));
      }
    },
    socket: () => socketLimits(),
  };
}

/** @param seconds until the next request may come. */
export const tooMany = (seconds: number): Answered =>
  new Answered(
    problem(
      'too-many-requests',
      'More came from here within a minute than any ward needs. This request changed nothing.',
      `Wait ${seconds} s, then send it again. If nobody did this, tell whoever runs Footboard.`,
    ),
    seconds,
  );

/** For tests that send more than a ward would; there is no setting for it. */
export const noLimits: Limits = { take: async () => {}, socket: () => ({ take: () => 'yes' }) };

/** @param now in milliseconds, any start: only its differences count. */
export function socketLimits(now: () => number = () => performance.now()): SocketLimits {
  let from = now();
  let counts = { join: 0, other: 0, refused: 0 };
  return {
    take(what) {
      if (now() - from >= MINUTE_SECONDS * 1000) {
        from = now();
        counts = { join: 0, other: 0, refused: 0 };
      }
      counts[what] += 1;
      if (counts[what] <= SOCKET_PER_MINUTE[what]) return 'yes';
      counts.refused += 1;
      return counts.refused >= REFUSED_UNTIL_OUT ? 'out' : 'no';
    },
  };
}
