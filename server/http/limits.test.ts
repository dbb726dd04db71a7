import { describe, expect, it } from 'vitest';
import { Answered } from '../commanding/problems.ts';
import {
  PER_MINUTE,
  REFUSED_UNTIL_OUT,
  SOCKET_PER_MINUTE,
  kindOf,
  openLimits,
  socketLimits,
} from './limits.ts';

const refusalAfter = async (limits: ReturnType<typeof openLimits>, origin: string, times: number) => {
  for (let i = 0; i < times; i++) await limits.take(origin, 'changes');
  return limits.take(origin, 'changes').then(
    () => null,
    (error: unknown) => error,
  );
};

describe('requests of one origin', () => {
  it('given as many as a minute allows, when one more comes, then it is refused with the seconds to wait', async () => {
    const refused = await refusalAfter(openLimits(), 'device d1', PER_MINUTE.changes);
    expect(refused).toBeInstanceOf(Answered);
    const { answer, retryAfter } = refused as Answered;
    expect(answer).toMatchObject({ type: '/problems/too-many-requests', status: 429 });
    expect(retryAfter).toBeGreaterThanOrEqual(1);
    expect(retryAfter).toBeLessThanOrEqual(60);
  });

  it('given one device that used up its minute, then another, and reads of the first, go on', async () => {
    const limits = openLimits();
    await refusalAfter(limits, 'device d1', PER_MINUTE.changes);
    await expect(limits.take('device d2', 'changes')).resolves.toBeUndefined();
    await expect(limits.take('device d1', 'reads')).resolves.toBeUndefined();
  });

  it('given an address, which may stand for many screens, then more is let through than for one device', async () => {
    expect(await refusalAfter(openLimits(), 'address 10.0.0.1', PER_MINUTE.changes)).toBeNull();
  });
});

describe('kinds of requests', () => {
  it.each([
    ['GET', 'read-board', 'reads'],
    ['POST', 'command', 'changes'],
    ['DELETE', 'revoke-device', 'changes'],
    ['POST', 'sign-in', 'secrets'],
    ['GET', 'begin-single-sign-on', 'reads'],
    ['POST', undefined, 'changes'],
    ['GET', 'read-health', null],
  ])('%s %s counts among %s', (method, action, kind) => {
    expect(kindOf(method, action)).toBe(kind);
  });
});

describe('messages of one socket', () => {
  it('given a minute of joins used up, then more are refused, and at last it is put out', () => {
    const limits = socketLimits(() => 0);
    const told = Array.from({ length: SOCKET_PER_MINUTE.join + REFUSED_UNTIL_OUT }, () =>
      limits.take('join'),
    );
    expect(told.slice(0, SOCKET_PER_MINUTE.join).every((one) => one === 'yes')).toBe(true);
    expect(told.slice(SOCKET_PER_MINUTE.join, -1).every((one) => one === 'no')).toBe(true);
    expect(told.at(-1)).toBe('out');
  });

  it('given joins used up, then other messages go on, and a minute later joins do', () => {
    let now = 0;
    const limits = socketLimits(() => now);
    for (let i = 0; i <= SOCKET_PER_MINUTE.join; i++) limits.take('join');
    expect(limits.take('other')).toBe('yes');
    expect(limits.take('join')).toBe('no');
    now = 60_000;
    expect(limits.take('join')).toBe('yes');
  });
});
