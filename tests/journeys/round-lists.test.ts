/** The list as it was: acted on by one phone, kept beside the log, and made again from the log to the byte. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { roundActs, roundPage, roundThen, type RoundPage } from '@footboard/shared/wire/round';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toIso } from '@footboard/shared/kernel/times';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { roundAt, roundText, weightsOf } from '@footboard/server/capabilities/dayplan/round';
import { hashText } from '@footboard/server/log/canonical';
import { beginStay, openWard, StillClock, WARD, type Ward } from './http-kit.ts';

/** Monday 11:00 on the ward's clock. */
const clock = new StillClock(hours(40));
const alder = WARD as WardId;
let ward: Ward;
const envelope = { source: { kind: 'import', serial: 'old-1' } } as const;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  for (const [stay, bed] of [
    ['stay-1', '1A'],
    ['stay-2', '1B'],
  ] as const) {
    const at = (h: number) => ({ ...envelope, occurred: { at: toIso(hours(h)) }, fromOutbox: false });
    await ward.enter('begin-stay', beginStay(stay, bed), 'noor', at(38));
    await ward.enter('record-weight', { stay, weight: { kg: 70, how: 'measured' } }, 'noor', at(38));
    await ward.enter('record-assessment', { stay, ...(check('walk', 39).payload as object) }, 'noor', at(39));
  }
});
afterAll(() => ward?.footboard.close());

async function round(who: string): Promise<RoundPage> {
  const answer = await fetch(`${ward.footboard.url}/api/wards/${WARD}/round`, {
    headers: { 'x-footboard-staff': who },
  });
  return roundPage.parse(await answer.json());
}
const acts = async () => roundActs.parse((await ward.get(`/api/wards/${WARD}/round/acts`)).body).acts;

/** The bytes of the list, made from the first event of the log on. */
async function replayed({ position, at }: RoundPage, asker: string): Promise<string> {
  const board = await ward.footboard.boards.boardAsOf(alder, position, at);
  const { ward: state, calendar } = await ward.footboard.boards.wardThen(alder, position);
  return roundText(roundAt({ ward: state!, calendar: calendar!, board, t: at, asker: asker as never }));
}
const listOf = ({ entries, notListed, empty }: RoundPage): string =>
  roundText({ entries, notListed, empty } as never);

describe('the list as it was', () => {
  it('ROUND-1 names each bed of the ward once: listed, not listed, or empty', async () => {
    const { entries, notListed, empty } = await round('ada');
    const beds = [...entries, ...notListed, ...empty].map(({ label }) => label);
    expect(beds.toSorted()).toEqual(['1A', '1B', '2A']);
    expect(empty.map(({ label }) => label)).toEqual(['2A']);
  });

  it('ROUND-2 is made again from the log at its position and instant, to the byte, after the ward has moved on', async () => {
    const page = await round('ada');
    const shown = listOf(page);
    expect(page.entries.map((e) => e.label)).toEqual(['1A', '1B']);
    expect(page.seen).toMatchObject({ position: page.position, digest: hashText(shown) });
    expect(page.seen.weights).toEqual(weightsOf(DEFAULT_RULES));

    clock.at += 20_000;
    await ward.enter(
      'take-visit',
      { stay: 'stay-2', visit: 'v-2', list: page.seen, instead: 'already-in-the-bay' },
      'ada',
    );
    clock.at += 3_600_000;
    await ward.enter('publish-rules', {
      document: {
        ...DEFAULT_RULES,
        version: 2,
        round: { ...DEFAULT_RULES.round, missedPoints: { ...DEFAULT_RULES.round.missedPoints, value: 40 } },
      },
    });
    expect(await replayed(page, 'ada')).toBe(shown);

    await expect.poll(async () => (await acts()).length).toBe(1);
    const [one] = await acts();
    expect(one).toMatchObject({
      act: 'taken',
      label: '1B',
      place: 2,
      listed: 2,
      first: '1A',
      instead: 'already-in-the-bay',
    });
    const then = roundThen.parse((await ward.get(`/api/wards/${WARD}/round/acts/${one!.event}`)).body);
    expect(then).toMatchObject({ asShown: true, sameAgain: true, position: page.position });
    expect(then.entries.map((e) => e.label)).toEqual(['1A', '1B']);
    expect(then.weights).toEqual(weightsOf(DEFAULT_RULES));
    const { state } = { state: (await ward.footboard.boards.wardThen(alder, 9_999)).ward };
    expect(weightsOf(rulesOf(state!))).not.toEqual(then.weights);
  });

  it('ROUND-3 tells what was done by the list without a word of who did it', async () => {
    const page = await round('bea');
    const list = page.seen;
    const session = {
      outcome: 'not-done',
      notDone: { group: 'bad-moment' },
      occasion: 'planned',
      activities: [],
      startedAt: toIso(clock.at),
      events: [],
    };
    await ward.enter('record-session', { stay: 'stay-1', session, list }, 'bea');
    await expect.poll(async () => (await acts()).length).toBe(2);
    const answer = await ward.get(`/api/wards/${WARD}/round/acts`);
    // As words of their own: an id may well hold these letters.
    expect(JSON.stringify(answer.body)).not.toMatch(/\b(ada|bea|noor|ines)\b|Ada|Bea|Noor|Ines/);
    const [one] = await acts();
    expect(one).toMatchObject({ act: 'not-now', label: '1A', place: 1, instead: null });
    const then = await ward.get(`/api/wards/${WARD}/round/acts/${one!.event}`);
    expect(JSON.stringify(then.body)).not.toMatch(/"(ada|bea|noor|ines)"/);
  });

  it('is kept as it is: the database refuses to change it', async () => {
    const change = ward.footboard.database.query("update round_list set instead = 'other'", []);
    await expect(change).rejects.toThrow(/nothing recorded is lost or overwritten/);
  });

  it('is not there for an entry that is none of them, in words', async () => {
    const { status, body } = await ward.get(`/api/wards/${WARD}/round/acts/nothing`);
    expect(status).toBe(422);
    expect(body).toMatchObject({ detail: 'No list was kept for that entry.' });
  });
});
