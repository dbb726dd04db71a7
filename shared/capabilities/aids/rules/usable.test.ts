import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { EventId, StaffId, StayId, WardId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription, type ItemDescription } from '../values.ts';
import { foldItem, NOTHING_SEEN } from './item-state.ts';
import { usableAt } from './usable.ts';

const T0 = Date.UTC(2026, 2, 3, 8);
const LIFT: ItemDescription = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'Model A',
  powered: true,
  safeLoadKg: 200,
  inspectionDue: '2026-09-01',
  home: 'Store room',
});
const rules = DEFAULT_RULES.aids;

let position = 0;
const at = (h: number, type: string, payload: object = {}): LoggedEvent =>
  ({
    ward: 'w' as WardId,
    position: ++position,
    stream: 'item/lift-1',
    version: position,
    id: `e${position}` as EventId,
    type,
    payload: { item: 'lift-1', ...payload },
    occurred: T0 + h * HOUR,
    precision: 'exact',
    entered: T0 + h * HOUR,
    enteredOffsetMinutes: 0,
    recorded: T0 + h * HOUR,
    author: { staff: 'aide' as StaffId, role: 'aide' },
    source: { kind: 'person' },
  }) as LoggedEvent;

const READY = [
  at(0, 'item-seen', { place: 'Store room' }),
  at(0, 'item-cleaning', { clean: true }),
  at(0, 'battery-read', { band: 'full' }),
];
const judged = (events: readonly LoggedEvent[], h: number, is = LIFT, today = '2026-03-03') => {
  const notes: number[] = [];
  const answer = usableAt(is, events.reduce(foldItem, NOTHING_SEEN), T0 + h * HOUR, today, rules, (n) =>
    notes.push(n),
  );
  return { ...answer, next: notes.length === 0 ? null : (Math.min(...notes) - T0) / HOUR };
};

describe('whether a lift can be used', () => {
  it('says usable of one seen, clean, charged and in date; and unknown of one that nobody has spoken of', () => {
    expect(judged(READY, 1)).toEqual({
      word: 'usable',
      against: [],
      unknown: [],
      next: rules.batteryHours.value,
    });
    expect(judged([], 1)).toMatchObject({
      word: 'unknown',
      against: ['nobody has said where it is', 'nobody has said that it is clean', 'battery not read'],
    });
  });

  it('turns what was seen into unknown when it gets old, and says when that will be', () => {
    const { batteryHours, placeHours, cleanHours } = rules;
    expect(judged(READY, batteryHours.value - 0.01).word).toBe('usable');
    expect(judged(READY, batteryHours.value)).toMatchObject({
      word: 'unknown',
      against: ['battery not read'],
      next: Math.min(placeHours.value, cleanHours.value),
    });
  });

  it.each([
    [
      'broken',
      [at(1, 'item-out-of-service', { defect: 'brake-or-wheel' })],
      'out of service (brake or wheel)',
    ],
    ['not there', [at(1, 'item-not-there')], 'not there when looked for'],
    ['dirty', [at(1, 'item-cleaning', { clean: false })], 'dirty'],
    ['flat', [at(1, 'battery-read', { band: 'flat' })], 'battery flat'],
  ])('is not usable when %s, however long ago, until somebody says otherwise', (_how, events, words) => {
    for (const h of [2, 200]) {
      const { word, against } = judged([...READY, ...events], h);
      expect(word).toBe('not-usable');
      expect(against).toContain(words);
    }
  });

  it('is not usable past its examination', () => {
    expect(judged(READY, 1, LIFT, '2026-09-01').word).toBe('usable');
    expect(judged(READY, 1, LIFT, '2026-09-02')).toMatchObject({
      word: 'not-usable',
      against: ['examination was due 1 Sep 2026'],
    });
    expect(judged(READY, 1, { ...LIFT, inspectionDue: null })).toMatchObject({ word: 'unknown' });
  });

  it('is in use while somebody has it, and unknown when it was never said to be back', () => {
    const taken = [...READY, at(1, 'item-taken', { usedBy: 'anna', isolation: false })];
    expect(judged(taken, 2)).toMatchObject({ word: 'in-use' });
    expect(judged(taken, 1 + rules.inUseHours.value)).toMatchObject({
      word: 'unknown',
      against: ['taken long ago, not said to be back'],
    });
    expect(judged([...taken, at(2, 'item-back')], 3).word).toBe('usable');
  });

  it('is dirty after a room with infection steps, until it was cleaned; bringing it back is not cleaning', () => {
    const back = [...READY, at(1, 'item-taken', { usedBy: 'anna', isolation: true }), at(2, 'item-back')];
    expect(judged(back, 3)).toMatchObject({ word: 'not-usable', against: ['dirty'] });
    const again = [...back, at(3, 'item-taken', { isolation: false }), at(4, 'item-back')];
    expect(judged(again, 5)).toMatchObject({ word: 'not-usable', against: ['dirty'] });
    expect(judged([...again, at(5, 'item-cleaning', { clean: true })], 6).word).toBe('usable');
  });

  it('is not known to be clean when it comes back from nobody knows where', () => {
    const back = [...READY, at(1, 'item-taken', { isolation: false }), at(2, 'item-back')];
    expect(judged(back, 3)).toMatchObject({ word: 'unknown', against: ['nobody has said that it is clean'] });
    // Brought back without having been said to be taken: what was known of it stands.
    expect(judged([...READY, at(1, 'item-back')], 2).word).toBe('usable');
  });

  it('lets no entry that comes late cover a newer one, and none of before the coordinator', () => {
    const newer = [at(4, 'item-back', { place: 'Bay 2' }), at(4, 'battery-read', { band: 'low' })];
    const late = [
      at(3, 'item-taken', { isolation: true }),
      at(2, 'battery-read', { band: 'flat' }),
      at(1, 'item-not-there'),
      at(1, 'item-seen', { place: 'elsewhere' }),
    ];
    const state = [...READY, ...newer, ...late].reduce(foldItem, NOTHING_SEEN);
    expect(state).toMatchObject({
      inUse: null,
      missing: null,
      place: { words: 'Bay 2' },
      battery: { band: 'low' },
    });
    const served = [...READY, at(5, 'item-in-service'), at(4, 'item-out-of-service', { defect: 'other' })];
    expect(judged(served, 6).word).toBe('usable');
    expect(judged([...served, at(6, 'item-out-of-service', { defect: 'other' })], 7).word).toBe('not-usable');
  });

  it('keeps a sling for whom it was kept last', () => {
    const kept = [at(1, 'item-bound', { keptFor: 'anna' }), at(0, 'item-bound', { keptFor: 'ben' })];
    expect(kept.reduce(foldItem, NOTHING_SEEN).keptFor).toBe('anna' as StayId);
  });
});
