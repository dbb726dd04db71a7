/** What a staged check would come to before it is sent, over real HTTP: the same rules, and nothing is written. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { boardPage, stayPage } from '@footboard/shared/wire/http';
import { planPreview } from '@footboard/shared/wire/preview';
import { asProblem, beginStay, openWard, StillClock, WARD, type Envelope, type Ward } from './http-kit.ts';

const clock = new StillClock(hours(0));
let ward: Ward;
beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('rosa'));
  clock.at = hours(2);
});
afterAll(() => ward.footboard.close());

const checked = (last: Parameters<typeof check>[0], more: object = {}) => ({
  stay: 'rosa',
  ...(check(last, 1.9).payload as object),
  ...more,
});
function preview(data: unknown, by: string | null = 'noor', over: Envelope = {}) {
  const now = new Date(clock.now()).toISOString();
  const body = {
    commandId: randomUUID(),
    occurred: { at: now },
    entered: { at: now, offsetMinutes: 60 },
    source: { kind: 'person' },
    expect: 'latest',
    ...over,
    data,
  };
  return ward.post(`/api/wards/${WARD}/previews/record-assessment`, JSON.stringify(body), {
    'content-type': 'application/json',
    ...(by === null ? {} : { 'x-footboard-staff': by }),
  });
}
const board = async () => boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body);
const rosa = async () => (await board()).board.beds.find((bed) => bed.stay?.stay === 'rosa')!.stay!;
const entries = async () =>
  stayPage.parse((await ward.get(`/api/wards/${WARD}/stays/rosa`)).body).timeline.length;
const verified = async () => (await ward.get(`/api/verify/${WARD}`)).body;

/** An entry gets its id when it is recorded; everything else of the plan must be alike. */
const withoutFacts = (plan: unknown): unknown =>
  JSON.parse(JSON.stringify(plan, (key, value: unknown) => (key === 'facts' ? undefined : value)));

describe('the plan before it is signed', () => {
  it('BEDSIDE-1 given a check of a nurse, is the plan that the board shows once the same check is sent', async () => {
    const { status, body } = await preview(checked('stand'));
    expect(status).toBe(200);
    const seen = planPreview.parse(body);
    expect(seen).toMatchObject({ stay: 'rosa', unconfirmed: false, now: { checkBeforeMoving: true } });
    await ward.enter('record-assessment', checked('stand'), 'noor');
    const { tier, plan, cautions, checkBeforeMoving } = await rosa();
    expect(withoutFacts(seen.would.plan)).toEqual(withoutFacts(plan));
    expect(seen.would.plan!.day.length).toBeGreaterThan(5);
    expect(seen.would.tier.word).toBe(tier.word);
    expect(seen.would.cautions.map(({ words }) => words)).toEqual(cautions.map(({ words }) => words));
    expect(seen.would.checkBeforeMoving).toBe(checkBeforeMoving);
  });

  it('BEDSIDE-1 writes nothing: no entry, no outcome, no position', async () => {
    const before = [await entries(), await verified(), (await board()).p];
    const commandId = randomUUID();
    expect((await preview(checked('walk'), 'noor', { commandId })).status).toBe(200);
    expect([await entries(), await verified(), (await board()).p]).toEqual(before);
    // The id is free: what was only looked at never was a command.
    const sent = await ward.enter('record-assessment', checked('walk'), 'noor', { commandId });
    expect(sent.repeated).toBe(false);
  });

  it('is checked as the command is: a stage out of order and a body that does not fit are named', async () => {
    const stages = (check('stand', 1.9).payload as { stages: object[] }).stages;
    const outOfOrder = asProblem(await preview(checked('stand', { stages: [stages[0], stages[3]] })));
    expect(outOfOrder).toMatchObject({ status: 422, type: '/problems/stage-out-of-order' });
    expect(outOfOrder.remedy).not.toBe('');
    const unfit = asProblem(await preview({ stay: 'rosa' }));
    expect(unfit.type).toBe('/problems/invalid-command');
    const elsewhere = asProblem(await preview({ ...checked('stand'), stay: 'nobody' }));
    expect(elsewhere.type).toBe('/problems/stay-unknown');
  });

  it('is refused where the entry would be: an aide is told what to do instead', async () => {
    const refused = asProblem(await preview(checked('stand'), 'ada'));
    expect(refused).toMatchObject({ status: 403, type: '/problems/not-your-role' });
    expect(refused.remedy).toContain('Record what you saw');
    expect(asProblem(await preview(checked('stand'), null)).type).toBe('/problems/no-author');
  });
});
