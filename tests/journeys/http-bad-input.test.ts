import { io } from 'socket.io-client';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { SOCKET, joinAnswer } from '@footboard/shared/wire/messages';
import { StillClock, WARD, aSession, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Sent, Ward } from './http-kit.ts';

/** A Wednesday morning after the clock change of October and before that of March; Lisbon is on UTC. */
const NOW = Date.parse('2026-11-25T10:00:00Z');
const clock = new StillClock(Date.parse('2026-11-25T06:00:00Z'));
let ward: Ward;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('stay-1'));
  await ward.enter('begin-stay', beginStay('gone', '1B'));
  clock.at = Date.parse('2026-11-25T08:00:00Z');
  await ward.enter('end-stay', { stay: 'gone', bed: 'bed-1B', to: 'home' });
  await ward.enter('add-staff-member', { staff: 'leif', name: 'Leif Dahl', role: 'nurse' });
  await ward.enter('change-staff-member', { staff: 'leif', active: false });
  clock.at = NOW;
});
afterAll(() => ward.footboard.close());

// Whatever is sent: nothing is half-written, and the server goes on.
let before: number;
beforeEach(async () => {
  clock.at = NOW;
  before = await ward.footboard.log.head(WARD as WardId);
});
afterEach(async () => {
  const after = await ward.footboard.log.head(WARD as WardId);
  if (after !== before) throw new Error(`${after - before} events were written`);
  const { status } = await ward.get('/health/live');
  if (status !== 200) throw new Error(`the server answers ${status}`);
});

/** Every problem says what is wrong and what to do, and gives away nothing of the inside. */
function expectProblem(sent: Sent, status: number, code: string, pointer?: string) {
  const said = asProblem(sent);
  expect(said).toMatchObject({ status, type: `/problems/${code}` });
  expect(sent.status).toBe(status);
  expect(said.detail.length).toBeGreaterThan(5);
  expect(said.remedy.length).toBeGreaterThan(5);
  expect(JSON.stringify(sent.body)).not.toMatch(/\bat \S+ \(|node_modules|\.ts:\d|select |insert /i);
  const pointers = said.errors?.map((error) => error.pointer) ?? [];
  expect(pointers).toEqual(expect.arrayContaining(pointer === undefined ? [] : [pointer]));
  return said;
}

const stage = (name: string, at = '2026-11-25T09:50:00Z') => ({
  stage: name,
  outcome: 'met',
  how: 'free',
  people: 1,
  findings: [],
  symptom: false,
  at,
});
const check = (more: object) => ({
  stay: 'stay-1',
  protocol: { id: 'footboard-default', version: 1 },
  depth: 'full',
  stages: [stage('clear')],
  ...more,
});

describe('facts that cannot be', () => {
  it('HTTP-1 an unknown bed', async () => {
    const sent = await ward.send('begin-stay', { ...beginStay('stay-x'), bed: 'bed-9Z' });
    expectProblem(sent, 422, 'bed-unknown', '/data/bed');
  });

  it('a stay that has ended', async () => {
    const sent = await ward.send('record-session', aSession('gone', '2026-11-25T09:00:00Z'), 'ada');
    expectProblem(sent, 422, 'stay-ended');
  });

  it('a stay nobody began', async () => {
    expectProblem(await ward.send('come-back', { stay: 'nobody' }), 422, 'stay-unknown', '/data/stay');
  });

  it('a stage out of order', async () => {
    const sent = await ward.send(
      'record-assessment',
      check({ stages: [stage('clear'), stage('stand')] }),
      'noor',
    );
    const said = expectProblem(sent, 422, 'stage-out-of-order', '/data/stages/1/stage');
    expect(said.remedy).toContain('clear, upright, edge, stand');
  });

  it.each([
    [{ kind: 'pressure', posture: 'lying', systolic: 400, diastolic: 80 }, 'systolic', 'mmHg'],
    [{ kind: 'pressure', posture: 'lying', systolic: 70, diastolic: 120 }, 'systolic', 'mmHg'],
    [{ kind: 'oxygen', saturation: 130 }, 'saturation', '%'],
    [{ kind: 'temperature', celsius: 98.6 }, 'celsius', '°C'],
    [{ kind: 'breathing', perMinute: 200 }, 'perMinute', 'per minute'],
  ])('a reading no instrument shows: %o', async (reading, field, unit) => {
    const readings = [{ ...reading, at: '2026-11-25T09:50:00Z' }];
    const sent = await ward.send('record-assessment', check({ readings }), 'noor');
    const said = expectProblem(sent, 422, 'invalid-command', `/data/readings/0/${field}`);
    expect(said.errors?.[0]?.detail).toContain(unit);
  });

  it('a missing field, a misspelt one and a wrong word, each by its place', async () => {
    const session = { outcome: 'finished', occasion: 'planned', activities: ['walk'], events: [], metre: 3 };
    const sent = await ward.send('record-session', { stay: 'stay-1', session }, 'ada');
    const said = expectProblem(sent, 422, 'invalid-command');
    expect(said.errors).toEqual(
      expect.arrayContaining([
        { pointer: '/data/session/startedAt', detail: 'this field is missing', remedy: 'send a string' },
        expect.objectContaining({
          pointer: '/data/session/outcome',
          remedy: 'send one of: done, part, stopped, not-done',
        }),
        expect.objectContaining({
          pointer: '/data/session/metre',
          remedy: expect.stringContaining('spelling'),
        }),
      ]),
    );
  });
});

describe('times that cannot be', () => {
  const trigger = { stay: 'stay-1', kind: 'fall' };

  it('HTTP-1 more than two minutes ahead, live: both clocks are shown', async () => {
    const sent = await ward.send('record-trigger', trigger, 'ada', {
      occurred: { at: '2026-11-25T10:40:00Z' },
      entered: { at: '2026-11-25T10:41:00Z', offsetMinutes: 0 },
    });
    const said = expectProblem(sent, 422, 'time-in-future', '/occurred/at');
    expect(said.detail).toContain('25 Nov 10:40');
    expect(said.detail).toContain('25 Nov 10:00');
    expect(said.detail).toContain('25 Nov 10:41');
  });

  it('in the hour the spring clock change skips', async () => {
    // IANA tz database: Europe/Lisbon goes from 01:00 to 02:00 on 29 March 2026.
    const sent = await ward.send('record-trigger', trigger, 'ada', {
      occurred: { local: '2026-03-29T01:30' },
    });
    expectProblem(sent, 422, 'skipped-hour', '/occurred/local');
  });

  it('in the hour the autumn clock change repeats, without saying which', async () => {
    // IANA tz database: Europe/Lisbon goes from 02:00 back to 01:00 on 25 October 2026.
    const sent = await ward.send('record-trigger', trigger, 'ada', {
      occurred: { local: '2026-10-25T01:30' },
    });
    expectProblem(sent, 422, 'repeated-hour', '/occurred/repeated');
  });

  it('on a day the calendar does not have', async () => {
    const sent = await ward.send('record-trigger', trigger, 'ada', {
      occurred: { local: '2026-02-30T09:00' },
    });
    expectProblem(sent, 422, 'no-such-time', '/occurred/local');
  });

  it('not a time at all', async () => {
    const sent = await ward.send('record-trigger', trigger, 'ada', { occurred: { at: 'half past nine' } });
    expectProblem(sent, 422, 'invalid-command', '/occurred/at');
  });
});

describe('who says it', () => {
  const trigger = { stay: 'stay-1', kind: 'fall' };
  it('nobody', async () => {
    expectProblem(await ward.send('record-trigger', trigger, null), 401, 'no-author');
  });
  it('somebody not on the list', async () => {
    expectProblem(await ward.send('record-trigger', trigger, 'stranger'), 403, 'unknown-author');
  });
  it('somebody no longer active', async () => {
    expectProblem(await ward.send('record-trigger', trigger, 'leif'), 403, 'inactive-author');
  });
  it('a role that may not, and another person may send it instead', async () => {
    const sent = await ward.send(
      'set-goal',
      { stay: 'stay-1', goal: { activity: 'chair', timesUp: 2 } },
      'ada',
    );
    expectProblem(sent, 403, 'not-your-role');
  });
  it('the first-run author once there is a staff list', async () => {
    const staff = { staff: 'eve', name: 'Eve', role: 'administrator' };
    expectProblem(await ward.send('add-staff-member', staff, null), 401, 'no-author');
    expectProblem(await ward.send('add-staff-member', staff, 'first-run'), 403, 'unknown-author');
  });
});

describe('bodies and addresses', () => {
  const path = `/api/wards/${WARD}/commands/record-trigger`;
  const json = { 'content-type': 'application/json', 'x-footboard-staff': 'ada' };

  it('not JSON', async () => {
    expectProblem(await ward.post(path, '{"commandId": ', json), 400, 'malformed-json');
  });
  it('JSON that is no object', async () => {
    expectProblem(await ward.post(path, '[1, 2]', json), 422, 'invalid-command');
    expectProblem(await ward.post(path, 'null', json), 400, 'malformed-json');
  });
  it('not marked as JSON', async () => {
    expectProblem(await ward.post(path, '{}', { ...json, 'content-type': 'text/plain' }), 415, 'not-json');
  });
  it('HTTP-1 over 256 kB', async () => {
    const body = JSON.stringify({ note: 'x'.repeat(256 * 1024) });
    expectProblem(await ward.post(path, body, json), 413, 'too-large');
  });
  it('nested a hundred thousand deep', async () => {
    const document = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    const body = `{"data":{"document":${document}}}`;
    expectProblem(
      await ward.post(`/api/wards/${WARD}/commands/publish-rules`, body, {
        ...json,
        'x-footboard-staff': 'ines',
      }),
      422,
      'invalid-command',
    );
  });
  it('an unknown command', async () => {
    const said = expectProblem(await ward.send('raise-the-roof', {}), 404, 'no-such-command');
    expect(said.remedy).toContain('/api/openapi.json');
  });
  it('an unknown ward', async () => {
    const sent = await ward.send('record-trigger', { stay: 'stay-1', kind: 'fall' }, 'ada', {}, 'no-such');
    expectProblem(sent, 404, 'no-such-ward');
    expectProblem(await ward.get('/api/wards/no-such/board'), 404, 'no-such-ward');
    expectProblem(await ward.get('/api/wards/no%20such/staff'), 404, 'no-such-ward');
  });
  it('an unknown address', async () => {
    expectProblem(await ward.get('/api/nothing-here'), 404, 'no-such-page');
    expectProblem(await ward.get('/health'), 404, 'no-such-page');
    expectProblem(await ward.post('/api/wards', '{}', json), 404, 'no-such-page');
    expectProblem(await ward.get('/api/wards/%E0%A4/board'), 400, 'malformed-address');
    expectProblem(await ward.get(`/api/wards/${WARD}/stays/a%00b`), 400, 'malformed-address');
    expectProblem(await ward.get(`/api/wards/${WARD}/totals?day=%00`), 400, 'malformed-address');
  });
  it('a wrong query', async () => {
    expectProblem(await ward.get(`/api/wards/${WARD}/board?at=yesterday`), 422, 'invalid-query', '/at');
    expectProblem(await ward.get(`/api/wards/${WARD}/board?p=0`), 422, 'invalid-query', '/p');
    expectProblem(await ward.get(`/api/wards/${WARD}/board?p=99999`), 422, 'invalid-query', '/p');
    expectProblem(await ward.get(`/api/wards/${WARD}/board?at=1&at=2`), 422, 'invalid-query', '/at');
    expectProblem(await ward.get(`/api/wards/${WARD}/totals?day=2026-13-01`), 422, 'invalid-query', '/day');
    expectProblem(await ward.get(`/api/wards/${WARD}/stays/nobody`), 404, 'no-such-stay');
    expectProblem(await ward.get(`/api/verify/${WARD}?position=3&chain=xyz`), 422, 'invalid-query', '/chain');
  });
});

describe('the type of a problem', () => {
  it('leads to what kind it is', async () => {
    const { type, title } = asProblem(await ward.send('come-back', { stay: 'nobody' }));
    expect((await ward.get(type)).body).toEqual({ type, title, rule: true });
    expect((await ward.get('/problems/conflict')).body).toMatchObject({ rule: false });
    expectProblem(await ward.get('/problems/no-such-code'), 404, 'no-such-page');
  });
});

describe('socket messages that cannot be', () => {
  it.each([
    [null],
    ['join me'],
    [{}],
    [{ ward: 7 }],
    [{ requestId: 'r', wireVersion: 1, ward: WARD, feed: -1 }],
  ])('%o is answered with a refusal', async (message) => {
    const screen = io(ward.footboard.url, { transports: ['websocket'], reconnection: false });
    try {
      const answer = joinAnswer.parse(await screen.timeout(5_000).emitWithAck(SOCKET.join, message));
      expect(answer).toMatchObject({ answer: 'refused', remedy: expect.any(String) });
    } finally {
      screen.disconnect();
    }
  });

  it('a socket from a page of another server is not let in', async () => {
    const screen = io(ward.footboard.url, {
      transports: ['websocket'],
      reconnection: false,
      extraHeaders: { origin: 'https://elsewhere.example' },
    });
    const outcome = await new Promise((resolve) => {
      screen.once('connect', () => resolve('connected'));
      screen.once('connect_error', () => resolve('refused'));
    });
    screen.disconnect();
    expect(outcome).toBe('refused');
  });
});
