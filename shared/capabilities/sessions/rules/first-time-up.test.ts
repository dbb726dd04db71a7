/** First time up after surgery: design, "first time up" row and "free, secured" (common practice). */
import { describe, expect, it } from 'vitest';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import {
  begun,
  check,
  hours,
  recordOf,
  hold,
  order,
  session,
  trigger,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { firstTimeUpAt, firstTimeUpPending } from './first-time-up.ts';

const soFar = (...told: readonly Told[]) =>
  firstTimeUpPending(effectiveFacts(recordOf([begun(), ...told])).facts, protocolLookup([]), DEFAULT_RULES);
const pending = (...told: readonly Told[]) => soFar(...told).pending;
const back = { ...trigger('return-from-surgery', 1), id: 'back' };
/** A check in which these stages were held safe. */
const held = (last: StageId, at: number, ...stages: readonly StageId[]) =>
  check(last, at, Object.fromEntries(stages.map((s) => [s, { how: 'secured' as const }])));
const first = (at: number, extra: object = {}, more: Partial<Told> = {}): Told => ({
  ...session(at, { firstTimeUp: true, activities: ['stand'], ...extra }),
  role: 'nurse',
  ...more,
});

describe('first time up after surgery', () => {
  it('is ahead from the return, or from an arrival straight from theatre', () => {
    expect(pending()).toBeNull();
    expect(pending(back)).toEqual({ value: true, fact: 'back', at: hours(1) });
    expect(pending(trigger('return-from-dialysis', 1))).toBeNull();
    const fromTheatre = { ...begun(), payload: { ...(begun().payload as object), from: 'theatre' } };
    expect(
      firstTimeUpPending(effectiveFacts(recordOf([fromTheatre])).facts, protocolLookup([]), DEFAULT_RULES)
        .pending,
    ).toMatchObject({ value: true, at: hours(0) });
  });
  it('is done by a check that cleared standing held safe, not by one that stayed in bed', () => {
    expect(pending(back, held('stand', 2, 'stand'))).toBeNull();
    expect(pending(back, check('edge', 2))).toMatchObject({ value: true });
    expect(pending(back, check('stand', 2, { stand: { outcome: 'not-met' } }))).toMatchObject({
      value: true,
    });
  });
  it('is not done by someone who may not free, nor by a check from before', () => {
    expect(pending(back, { ...held('stand', 2, 'stand'), role: 'aide' })).toMatchObject({ value: true });
    expect(pending(back, held('stand', 1, 'stand'))).toMatchObject({ value: true });
    expect(pending(held('stand', 0.5, 'stand'), back)).toMatchObject({ value: true });
  });
  it('is to be repeated when the first standing or stepping was free; a second free one ends it', () => {
    const free = { ...check('stand', 2), id: 'free' };
    expect(pending(back, free)).toEqual({ value: 'to-be-repeated', fact: 'free', at: hours(2) });
    expect(pending(back, free, check('stand', 3))).toBeNull();
    expect(pending(back, free, held('stand', 3, 'stand'))).toBeNull();
    expect(pending(back, free, check('turn', 3))).toMatchObject({ value: 'to-be-repeated', at: hours(3) });
    expect(pending(back, held('turn', 2, 'stand'))).toMatchObject({ value: 'to-be-repeated' });
    expect(pending(back, held('turn', 2, 'stand', 'turn'))).toBeNull();
  });
  it('is not done by a check of the instant of the arrival, or of the end of the rest', () => {
    const fromTheatre = { ...begun(), payload: { ...(begun().payload as object), from: 'theatre' } };
    const at = (when: number) =>
      firstTimeUpPending(
        effectiveFacts(recordOf([fromTheatre, { ...held('stand', when, 'stand'), id: 'z' }])).facts,
        protocolLookup([]),
        DEFAULT_RULES,
      ).pending;
    expect(at(0)).toMatchObject({ value: true });
    expect(at(0.1)).toBeNull();
  });
  it('is done by turning or walking held safe, whatever was said of standing', () => {
    const failed = { outcome: 'not-met' as const };
    const safe = { how: 'secured' as const };
    expect(pending(back, check('turn', 2, { stand: failed, turn: safe }))).toBeNull();
    expect(pending(back, check('walk', 2, { stand: failed, turn: failed, walk: safe }))).toBeNull();
  });
  it('is not done by a check under a protocol that nobody here can read', () => {
    const foreign = check('walk', 2, {}, { protocol: { id: 'elsewhere', version: 9 } });
    expect(pending(back, foreign)).toMatchObject({ value: true });
  });
  it('begins again with another return', () => {
    const again = { ...trigger('return-from-surgery', 4), id: 'again' };
    expect(pending(back, check('stand', 2), check('stand', 3), again)).toMatchObject({
      value: true,
      fact: 'again',
    });
    expect(pending(back, check('stand', 2), again, check('stand', 5))).toMatchObject({
      value: 'to-be-repeated',
    });
  });
  it('is done by a session that a qualified person records as that, done with nothing wrong', () => {
    expect(pending(back, first(2))).toBeNull();
    expect(pending(back, first(2, {}, { role: 'aide' }))).not.toBeNull();
    expect(pending(back, first(2, { firstTimeUp: false }))).not.toBeNull();
    expect(pending(back, first(2, { outcome: 'part' }))).not.toBeNull();
    expect(pending(back, first(2, { events: ['dizzy'] }))).not.toBeNull();
    expect(pending(back, first(1))).not.toBeNull();
  });
});

describe('first time up after bed rest', () => {
  const placed = (at: number, scope = 'out-of-bed', id = 'placed', name = 'hold-1'): Told => {
    const told = hold(at, scope, at + 48);
    return { ...told, id, payload: { ...(told.payload as object), hold: name } };
  };
  const ended = (at: number, more: Partial<Told> = {}, placedBy = 'placed', name = 'hold-1'): Told => ({
    type: 'hold-ended',
    at,
    id: 'ended',
    payload: { hold: name, placedBy },
    ...more,
  });
  const inBed = order(1, { about: 'activity', most: 'bed' });
  const up = (at: number, role: 'nurse' | 'aide' = 'nurse') =>
    ({ ...order(at, { about: 'activity', most: 'walk' }, role), id: 'freed' }) as const;

  it('is ahead once a rest of a day has ended, and not after a shorter one', () => {
    expect(pending(placed(1))).toBeNull();
    expect(pending(placed(1), ended(25))).toEqual({ value: true, fact: 'ended', at: hours(25) });
    expect(pending(placed(1), ended(24.99))).toBeNull();
    expect(pending(placed(1), ended(25), held('stand', 26, 'stand'))).toBeNull();
  });
  it('counts a hold that keeps the person in bed, not one that stops standing', () => {
    expect(pending(placed(1, 'raising-the-back'), ended(30))).not.toBeNull();
    expect(pending(placed(1, 'all-including-turning'), ended(30))).not.toBeNull();
    expect(pending(placed(1, 'standing'), ended(30))).toBeNull();
  });
  it('counts an order to stay in bed in the same way', () => {
    expect(pending(inBed, up(25))).toEqual({ value: true, fact: 'freed', at: hours(25) });
    expect(pending(inBed, up(24.5))).toBeNull();
    expect(pending(inBed, order(30, { about: 'brace', on: true }))).toBeNull();
  });
  it('lasts from the first of them to the last', () => {
    const second = placed(20, 'out-of-bed', 'second', 'hold-2');
    expect(pending(placed(1), second, ended(25))).toBeNull();
    const both = [placed(1), second, ended(25), { ...ended(26, {}, 'second', 'hold-2'), id: 'last' }];
    expect(pending(...both)).toMatchObject({ fact: 'last' });
    expect(pending(inBed, placed(2), up(26), ended(27))).toMatchObject({ fact: 'ended' });
  });
  it('is ended by a qualified person alone, who names the hold', () => {
    expect(pending(placed(1), ended(30, { role: 'aide' }))).toBeNull();
    expect(pending(placed(1), ended(30, {}, 'other'))).toBeNull();
    expect(pending(inBed, up(30, 'aide'))).toBeNull();
    expect(pending(inBed, up(30, 'aide'), { ...up(31), id: 'nurse' })).toMatchObject({ fact: 'nurse' });
  });
  it('counts while it goes on, from the hour in which it is long', () => {
    const noted: number[] = [];
    const ahead = (h: number, ...told: readonly Told[]) =>
      firstTimeUpAt(soFar(...told), hours(h), DEFAULT_RULES, (at) => noted.push(at));
    expect(ahead(24.99, placed(1))).toBeNull();
    expect(noted).toEqual([hours(25)]);
    expect(ahead(25, placed(1))).toEqual({ value: true, fact: 'placed', at: hours(25) });
    expect(ahead(30, placed(1), ended(20))).toBeNull();
    expect(ahead(30, back, placed(2))).toMatchObject({ fact: 'placed' });
    expect(ahead(20, back, placed(2))).toMatchObject({ fact: 'back' });
    expect(ahead(30, back)).toMatchObject({ fact: 'back' });
  });
});
