/** Counts wrong sign-ins, in this process. Every try counts before it is checked; a right one is given back. */
import { createHash } from 'node:crypto';
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { Answered, problem } from '../commanding/problems.ts';
import { foldName } from './account-rows.ts';

const MINUTES = 60;
/**
 * Ours; owner: whoever runs the server. OWASP ASVS 5.0 chapter 6 asks for a limit that does not lock
 * somebody out for an attacker's sake: one place is stopped soon, a name from everywhere late, and
 * well below the 100 wrong tries in a row of NIST SP 800-63B (from memory).
 */
const LIMITS = {
  nameFromHere: { points: 10, duration: 15 * MINUTES },
  here: { points: 30, duration: 15 * MINUTES },
  name: { points: 80, duration: 24 * 60 * MINUTES },
} as const;

export interface SignInTries {
  /**
   * Counts one try.
   * @returns to be called when name and password were right
   * @throws Answered too-many-requests, the same whether or not anybody has that name
   */
  count(signInName: string, origin: string): Promise<() => Promise<void>>;
}

const tooMany = (seconds: number): Answered =>
  new Answered(
    problem(
      'too-many-requests',
      'There were too many wrong sign-ins.',
      `Wait ${Math.max(1, Math.ceil(seconds / 60))} min. If you forgot the password, ask for a new link.`,
    ),
    seconds,
  );

/** Names stay out of memory dumps as far as they can: only a hash is counted. */
const hashOf = (signInName: string): string =>
  createHash('sha256').update(foldName(signInName), 'utf8').digest('hex');

export function signInTries(): SignInTries {
  const [nameFromHere, here, name] = [LIMITS.nameFromHere, LIMITS.here, LIMITS.name].map(
    (limit, index) => new RateLimiterMemory({ ...limit, keyPrefix: `sign-in-${index}` }),
  ) as [RateLimiterMemory, RateLimiterMemory, RateLimiterMemory];

  return {
    async count(signInName, origin) {
      const who = hashOf(signInName);
      try {
        await here.consume(origin);
        await nameFromHere.consume(`${who} ${origin}`);
        await name.consume(who);
      } catch (refused) {
        if (!(refused instanceof RateLimiterRes)) throw refused;
        throw tooMany(Math.max(1, Math.ceil(refused.msBeforeNext / 1000)));
      }
      return async () => {
        await here.reward(origin);
        await nameFromHere.delete(`${who} ${origin}`);
        await name.delete(who);
      };
    },
  };
}
