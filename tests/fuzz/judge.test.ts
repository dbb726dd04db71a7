/** That the fuzzer notices: each thing it promises never to meet, shown to it once. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { staffId } from '@footboard/shared/kernel/ids';
import type { Input } from './inputs.ts';
import { judge } from './judge.ts';
import { unchanged } from './unchanged.ts';
import { openWorld } from './world.ts';
import type { World } from './world.ts';

const input: Input = {
  what: 'SetGoal: body',
  voice: 'nurse',
  unframed: false,
  method: 'POST',
  path: '/api/wards/alder/commands/set-goal',
  headers: [],
  body: '{}',
};
const said = (change: object = {}, status = 422, type = 'application/problem+json; charset=utf-8') => ({
  status,
  headers: new Map([['content-type', type]]),
  body: Buffer.from(
    JSON.stringify({
      type: '/problems/invalid-command',
      title: 'The command is not complete or not valid',
      status,
      detail: '/data/stay: this field is missing',
      remedy: 'Put right the fields named and send again.',
      ...change,
    }),
  ),
  more: false,
});

describe('the judge of answers', () => {
  it('lets a proper problem pass, and counts a stored refusal', () => {
    expect(judge(input, said())).toMatchObject({ fault: null, written: { outcomes: 0 } });
    expect(judge(input, said({ commandId: 'c1', repeated: false }))).toMatchObject({
      fault: null,
      written: { outcomes: 1 },
    });
    const preview = { ...input, path: '/api/wards/alder/previews/record-assessment' };
    expect(judge(preview, said({ commandId: 'c1', repeated: false }))).toMatchObject({
      fault: null,
      written: { outcomes: 0 },
    });
  });

  it.each([
    ['a 500', said({}, 500)],
    ['no answer', null],
    ['another type', said({}, 422, 'text/html')],
    ['another status inside', said({ status: 400 })],
    ['no remedy', said({ remedy: '' })],
    ['a field too many', said({ stack: 'x' })],
    ['a stack', said({ detail: 'boom at Commands.handle (/app/server/x.js:1:2)' })],
    ['a statement', said({ detail: 'select wrapped_key from text_key failed' })],
    ['an error of the inside', said({ detail: 'TypeError: cannot read this' })],
    ['a very long answer', said({ detail: 'x'.repeat(100_000) })],
    ['429 without a time to come back', said({}, 429)],
    ['two answers', { ...said(), more: true }],
  ])('objects to %s', (_what, answer) => {
    expect(judge(input, answer).fault).toBeTypeOf('string');
  });
});

describe('the look at the database', () => {
  let world: World;
  beforeAll(async () => {
    world = await openWorld('off');
  });
  afterAll(() => world.footboard.close());

  it('is content when nothing was written', async () => {
    expect(await unchanged(world, async () => [])).toEqual([]);
  });

  it.each([
    [
      'a row more',
      `insert into session (token_hash, session, account, edition, began, seen, ends) select 'h', 's', account, 1, 0, 0, 0 from account limit 1`,
    ],
    ['a row changed', 'update account set active = false where edition = (select max(edition) from account)'],
  ])('finds %s', async (_what, statement) => {
    const faults = await unchanged(world, async () => {
      await world.footboard.database.query(statement);
      return [];
    });
    expect(faults).toEqual([expect.stringContaining('changed without an answer that says so')]);
  });

  it('finds an entry that no answer speaks of', async () => {
    const { commands } = world.footboard;
    const faults = await unchanged(world, async () => {
      const answer = await commands.handle({
        ward: 'alder',
        name: 'place-hold',
        body: {
          commandId: 'behind-the-back',
          occurred: { at: '2026-11-25T09:00:00Z' },
          entered: { at: '2026-11-25T09:00:00Z', offsetMinutes: 0 },
          source: { kind: 'person' },
          expect: 'latest',
          data: { stay: 'stay-1', hold: 'h1', scope: 'walking', reason: 'other' },
        },
        claim: {
          access: 'accounts',
          person: {
            account: null,
            staff: staffId.parse('ada'),
            wide: false,
            via: 'session',
            session: null,
            until: Number.MAX_SAFE_INTEGER,
          },
          device: null,
          claimed: null,
          ranOut: false,
          origin: 'test',
        },
      });
      return 'problem' in answer ? [answer.problem.detail] : [];
    });
    expect(faults).toEqual(
      expect.arrayContaining([
        '1 events written, 0 answered for',
        '1 outcomes written, 0 answered for',
        expect.stringContaining('ward_head'),
      ]),
    );
  });

  it('finds the prototype of all objects changed', async () => {
    const faults = await unchanged(world, async () => {
      // oxlint-disable-next-line no-extend-native -- it is what is looked for
      Object.defineProperty(Object.prototype, 'polluted', { value: 1, configurable: true });
      return [];
    });
    Reflect.deleteProperty(Object.prototype, 'polluted');
    expect(faults).toEqual(['the prototype of all objects changed']);
  });
});
