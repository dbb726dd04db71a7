import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stayCourse, wardHours } from '@footboard/shared/wire/pictures';
import { StillClock, WARD, aSession, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string, day = '2026-11-25') => Date.parse(`${day}T${time}:00Z`);
const clock = new StillClock(at('06:00'));
let ward: Ward;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('stay-1'));
  await ward.enter('begin-stay', beginStay('stay-2', '1B'));
  clock.at = at('09:40');
  await ward.enter('record-session', aSession('stay-1', '2026-11-25T08:30:00Z'), 'ada');
  const refused = { outcome: 'not-done', activities: [], notDone: { group: 'said-no' }, metres: undefined };
  await ward.enter('record-session', aSession('stay-1', '2026-11-25T09:15:00Z', refused), 'ada');
  await ward.enter('record-trigger', { stay: 'stay-1', kind: 'fall' }, 'ada');
  clock.at = at('10:00');
});
afterAll(() => ward.footboard.close());

const hours = async (query = '') =>
  wardHours.parse((await ward.get(`/api/wards/${WARD}/hours${query}`)).body);

describe('what pictures are drawn from', () => {
  it('GAP-1 given one of two people with entries, the day by the hour counts the other as not recorded', async () => {
    const page = await hours();
    expect(page).toMatchObject({ day: '2026-11-25', from: at('07:00'), at: at('10:00'), stays: 2 });
    const said = page.hours.map(({ done, notDone, nothingYet }) => ({ done, notDone, nothingYet }));
    expect(said.slice(0, 5)).toEqual([
      { done: 0, notDone: {}, nothingYet: 2 },
      { done: 1, notDone: {}, nothingYet: 1 },
      { done: 0, notDone: { 'said-no': 1 }, nothingYet: 1 },
      { done: 0, notDone: {}, nothingYet: 1 },
      { done: 0, notDone: {}, nothingYet: null },
    ]);
  });

  it('an earlier ward day is asked for by its date; what is no date is refused with what to do', async () => {
    expect(await hours('?day=2026-11-24')).toMatchObject({ day: '2026-11-24', to: at('07:00') });
    const sent = await ward.get(`/api/wards/${WARD}/hours?day=yesterday`);
    expect(asProblem(sent)).toMatchObject({ status: 422, remedy: 'Write the day like 2026-10-25.' });
  });

  it('given a day before anybody came, no stay is in it and every hour is empty', async () => {
    const page = await hours('?day=2026-11-20');
    expect(page.stays).toBe(0);
    expect(page.hours.every((h) => h.done === 0 && h.nothingYet === 0)).toBe(true);
  });

  it('the course of a stay agrees with the board of now', async () => {
    const { body } = await ward.get(`/api/wards/${WARD}/stays/stay-1/course`);
    const course = stayCourse.parse(body);
    expect(course).toMatchObject({ from: at('06:00'), to: at('10:00'), ended: false, whole: true });
    expect(course.triggers.map((one) => one.kind)).toEqual(['fall']);
    expect(course.sessions.map((one) => one.outcome)).toEqual(['done', 'not-done']);
    // 06:00 belongs to the ward day before: nothing was recorded on it.
    expect(course.days.map((day) => day.recorded)).toEqual([false, true]);
    const board = (await ward.get(`/api/wards/${WARD}/board`)).body as {
      board: { beds: { stay: { tier: { word: string }; trust: { state: string } } | null }[] };
    };
    const row = board.board.beds[0]!.stay!;
    expect(course.standing.at(-1)).toMatchObject({ tier: row.tier.word, trust: row.trust.state });
  });

  it('of a stay that is not of this ward there is no course', async () => {
    const sent = await ward.get(`/api/wards/${WARD}/stays/nobody/course`);
    expect(asProblem(sent)).toMatchObject({ status: 404, type: '/problems/no-such-stay' });
  });
});
