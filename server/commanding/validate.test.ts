import { describe, expect, it } from 'vitest';
import { recordSession } from '@footboard/shared/capabilities/sessions/commands';
import { setScope } from '@footboard/shared/capabilities/stays/commands';
import { publishRules } from '@footboard/shared/capabilities/wards/commands';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { Answered } from './problems.ts';
import { pointer, validate } from './validate.ts';

const session = {
  outcome: 'done',
  occasion: 'planned',
  activities: ['walk'],
  startedAt: '2026-11-25T09:00:00Z',
  events: [],
};
const body = (data: unknown, envelope: object = {}) => ({
  commandId: 'c1',
  occurred: { at: '2026-11-25T09:00:00Z' },
  entered: { at: '2026-11-25T09:00:00Z', offsetMinutes: 0 },
  source: { kind: 'person' },
  expect: 'latest',
  data,
  ...envelope,
});

function errorsOf(type: CommandType, sent: unknown) {
  try {
    validate(type, sent);
  } catch (error) {
    if (error instanceof Answered) return error.answer.errors ?? [];
    throw error;
  }
  return [];
}

describe('a body against its schema', () => {
  it('comes out with the defaults filled in', () => {
    const { envelope, data } = validate(recordSession, body({ stay: 's1', session }));
    expect(envelope).toMatchObject({ fromOutbox: false, occurred: { precision: 'exact' } });
    expect(data).toMatchObject({ session: { firstTimeUp: false } });
  });

  it('names a missing part once, not each of its forms', () => {
    const { expect: _left, ...without } = body({ stay: 's1', session });
    expect(errorsOf(recordSession, without)).toMatchObject([
      { pointer: '/expect', detail: 'this field is missing' },
    ]);
  });

  it('speaks of the form the sender meant when a part has several', () => {
    const sent = body({ stay: 's1', session }, { occurred: { local: '2026-10-25 01:40' } });
    expect(errorsOf(recordSession, sent)).toEqual([
      expect.objectContaining({
        pointer: '/occurred/local',
        detail: 'the ward clock is written like 2026-10-25T01:40',
      }),
    ]);
  });

  it('names the forms when the one that decides is none of them', () => {
    expect(errorsOf(setScope, body({ stay: 's1', scope: 'whatever' }))).toMatchObject([
      { pointer: '/data/scope', remedy: expect.any(String) },
    ]);
  });

  it('keeps the schema’s own words for a rule between fields', () => {
    const odd = { ...session, endedAt: '2026-11-25T08:00:00Z' };
    expect(errorsOf(recordSession, body({ stay: 's1', session: odd }))).toMatchObject([
      { pointer: '/data/session/endedAt', detail: 'the end is before the start' },
    ]);
  });

  it('names no more fields than somebody reads, and no name that is a page long', () => {
    const many = Object.fromEntries(Array.from({ length: 4_000 }, (_, index) => [`field-${index}`, 1]));
    expect(errorsOf(recordSession, body({ stay: 's1', session }, many))).toHaveLength(50);
    const long = body({ stay: 's1', session }, { ['K'.repeat(10_000)]: 1 });
    expect(errorsOf(recordSession, long)).toEqual([
      expect.objectContaining({ pointer: '', detail: expect.stringContaining('10000 characters') }),
    ]);
  });

  it.each(['\ud800', 'half \udfff of one', 'a NUL \0 inside'])(
    'refuses %j, which no text can hold',
    (said) => {
      expect(errorsOf(recordSession, body({ stay: 's1', session, said }))).toMatchObject([
        { pointer: '/data/said', detail: 'this text holds something that is no character' },
      ]);
      const document = { name: 'ours', [said]: 1 };
      expect(errorsOf(publishRules, body({ document }))).toMatchObject([{ pointer: '/data/document' }]);
    },
  );

  it('takes whole characters beyond the first plane', () => {
    expect(errorsOf(recordSession, body({ stay: 's1', session, said: 'walked \u{1f6b6}' }))).toEqual([]);
  });

  it('points into a key that holds a slash (RFC 6901, section 4)', () => {
    expect(pointer(['a/b', 'm~n', 0])).toBe('/a~1b/m~0n/0');
  });
});
