import { describe, expect, it } from 'vitest';
import { Answered } from '../commanding/problems.ts';
import { signInTries } from './sign-in-tries.ts';
import type { SignInTries } from './sign-in-tries.ts';

/** How many of so many tries are let through. */
async function through(
  tries: SignInTries,
  times: number,
  name: (n: number) => string,
  origin: (n: number) => string,
) {
  let count = 0;
  const refusals: Answered[] = [];
  for (let n = 0; n < times; n++) {
    try {
      await tries.count(name(n), origin(n));
      count++;
    } catch (error) {
      if (!(error instanceof Answered)) throw error;
      refusals.push(error);
    }
  }
  return { count, refusals };
}
const here = () => 'address 192.0.2.7';

describe('ACCOUNT-5 wrong sign-ins', () => {
  it('given ten for one name from one place, the next waits, and is told how long', async () => {
    const { count, refusals } = await through(signInTries(), 12, () => 'ines', here);
    expect(count).toBe(10);
    expect(refusals[0]!.answer).toMatchObject({ type: '/problems/too-many-requests', status: 429 });
    expect(refusals[0]!.retryAfter).toBeGreaterThan(800);
    expect(refusals[0]!.retryAfter).toBeLessThanOrEqual(900);
  });

  it('given the same name in another case or width, it is the same name', async () => {
    const { count } = await through(signInTries(), 12, (n) => (n % 2 ? 'INES' : 'ｉｎｅｓ'), here);
    expect(count).toBe(10);
  });

  it('given a new name each time from one place, the place is stopped', async () => {
    expect((await through(signInTries(), 40, (n) => `name-${n}`, here)).count).toBe(30);
  });

  it('given one name from many places, it is stopped below a hundred in a row (NIST SP 800-63B)', async () => {
    const { count } = await through(
      signInTries(),
      120,
      () => 'ines',
      (n) => `address 198.51.100.${n}`,
    );
    expect(count).toBe(80);
  });

  it('given a stranger who tried her name to the end, she still comes in from her own place', async () => {
    const tries = signInTries();
    await through(tries, 15, () => 'ines', here);
    expect(
      (
        await through(
          tries,
          1,
          () => 'ines',
          () => 'address 203.0.113.9',
        )
      ).count,
    ).toBe(1);
  });

  it('given twenty right ones in a row, none counts', async () => {
    const tries = signInTries();
    for (let n = 0; n < 50; n++) await (await tries.count('ines', here()))();
    expect((await through(tries, 10, () => 'ines', here)).count).toBe(10);
  });

  it('given thirty sent at once, ten are checked: each counts before it is looked at', async () => {
    const tries = signInTries();
    const sent = await Promise.allSettled(Array.from({ length: 30 }, () => tries.count('ines', here())));
    expect(sent.filter(({ status }) => status === 'fulfilled')).toHaveLength(10);
  });
});
