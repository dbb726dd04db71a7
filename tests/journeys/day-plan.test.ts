import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  dayPlanPage,
  peopleOnPage,
  planChecked,
  proposedDay,
  whatIfPage,
} from '@footboard/shared/wire/planning';
import type { ProposedDay } from '@footboard/shared/wire/planning';
import { StillClock, WARD, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

/** Lisbon, in winter on UTC: 09:00 on the ward's clock. */
const at = (time: string) => `2026-11-25T${time}:00Z`;
const clock = new StillClock(Date.parse(at('09:00')));
let ward: Ward;
let proposal: ProposedDay;
beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('rosa'));
  await ward.enter('begin-stay', { ...beginStay('otto', '1B'), identity: { name: 'Otto Reis' } });
});
afterAll(() => ward.footboard.close());

const path = `/api/wards/${WARD}/day-plan`;
const dayPlan = async () => dayPlanPage.parse((await ward.get(path)).body);
const post = (to: string, body: object) =>
  ward.post(to, JSON.stringify(body), {
    'content-type': 'application/json',
    'x-footboard-staff': 'ines',
  });
const accepting = (edit: (of: ReturnType<typeof placements>) => object[]) => ({
  day: proposal.day,
  placements: edit(placements()),
  hash: proposal.hash,
  weightsVersion: proposal.proposal.weightsVersion,
  how: proposal.proposal.how,
  gap: proposal.proposal.gap,
  edited: false,
});
const placements = () =>
  proposal.proposal.placed.map(({ visit, start, crew, items }) => {
    const { stay, kind, length } = proposal.visits.find((one) => one.visit === visit)!;
    const begins = new Date(proposal.start + start * 900_000).toISOString();
    return { visit, stay, kind, start: begins, minutes: length * 15, crew, items };
  });

describe('the plan of a day, from who is on to what if', () => {
  it('given nobody named, the usual staffing stands in, and there is nobody to plan with', async () => {
    const { people, slots } = peopleOnPage.parse((await ward.get(`/api/wards/${WARD}/people-on`)).body);
    expect(people).toEqual([]);
    expect(new Set(slots.map(({ said }) => said))).toEqual(new Set(['usual']));
    expect(await dayPlan()).toMatchObject({ staff: [], accepted: null });
  });

  it('when a nurse is named, each first check gets its time within four hours of the arrival', async () => {
    const breaks = [{ from: at('09:15'), until: at('10:00') }];
    await ward.enter('set-people-on', {
      people: [{ staff: 'noor', from: at('08:00'), until: at('16:00'), breaks }],
    });
    const { position } = await dayPlan();
    proposal = proposedDay.parse((await post(path, {})).body);
    expect(proposal.proposal.unplaced).toEqual([]);
    expect(placements().map(({ stay, crew }) => [stay, crew])).toEqual(
      expect.arrayContaining([
        ['rosa', ['noor']],
        ['otto', ['noor']],
      ]),
    );
    const starts = placements().map(({ start }) => Date.parse(start));
    expect(new Set(starts).size).toBe(2);
    // One of them before her break, at the latest by 13:00.
    expect(Math.max(...starts)).toBeLessThan(Date.parse(at('13:00')));
    expect(starts.filter((one) => one > Date.parse(at('09:00')) && one < Date.parse(at('10:00')))).toEqual(
      [],
    );
    // A proposal writes nothing.
    expect((await dayPlan()).position).toBe(position);
    expect((await dayPlan()).accepted).toBeNull();
  });

  it('PLANNED-5 changed so that a rule breaks, it is refused with the visit and the rule', async () => {
    const wrong = accepting((all) => all.map((one) => ({ ...one, start: at('09:30') })));
    const refused = await ward.send('accept-day-plan', wrong);
    expect(refused.status).toBe(422);
    expect(JSON.stringify(refused.body)).toContain('plan-breaks-rule');
    expect(JSON.stringify(refused.body)).toMatch(/bed 1[AB] at .*09:30: whoever goes is on a break/);
  });

  it('PLANNED-9 while it is changed by hand, each rule that it breaks is said at once; nothing is written', async () => {
    const { position } = await dayPlan();
    const all = proposal.proposal.placed.map(({ visit, crew, items, start }) => ({
      visit,
      crew,
      items,
      start,
    }));
    const asked = async (of: object[]) =>
      planChecked.parse((await post(`${path}/check`, { start: proposal.start, placements: of })).body);
    expect(await asked(all)).toEqual({ breaches: [] });
    const [first] = all;
    // 09:30, in Noor's break.
    const moved = await asked([{ ...first!, start: (Date.parse(at('09:30')) - proposal.start) / 900_000 }]);
    expect(moved.breaches).toContainEqual({
      rule: 'break',
      visit: first!.visit,
      staff: 'noor',
      words: 'whoever goes is on a break',
    });
    const none = await asked([{ ...first!, visit: 'nobody-asks' }]);
    expect(none.breaches.map(({ rule }) => rule)).toEqual(['unknown']);
    expect((await dayPlan()).position).toBe(position);
  });

  it('accepted, it is the plan of the day, and planned anew nothing moves', async () => {
    await ward.enter(
      'accept-day-plan',
      accepting((all) => all),
    );
    const { accepted } = await dayPlan();
    expect(accepted).toMatchObject({ by: 'ines', edited: false, hash: proposal.hash });
    expect(accepted!.placements).toHaveLength(2);
    const again = proposedDay.parse((await post(path, {})).body);
    expect(again.proposal.moves).toEqual([]);
  });

  it('what if the nurse goes home at ten: who would go without; nothing is written', async () => {
    const { position } = await dayPlan();
    const base = proposal.proposal.placed.map(({ visit, start, crew, items }) => ({
      visit,
      start,
      crew,
      items,
    }));
    const change = { kind: 'person-away', staff: 'noor', from: at('10:00') };
    const answer = whatIfPage.parse(
      (await post(`${path}/what-if`, { change, start: proposal.start, base })).body,
    );
    const late = placements().filter(({ start }) => Date.parse(start) >= Date.parse(at('10:00')));
    expect(late.length).toBeGreaterThan(0);
    expect([...answer.without].toSorted()).toEqual(late.map(({ visit }) => visit).toSorted());
    expect((await dayPlan()).position).toBe(position);
  });
});
