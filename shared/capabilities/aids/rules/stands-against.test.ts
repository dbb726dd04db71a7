/** What stands against equipment that a visit was planned with. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import type { StayId } from '../../../kernel/ids.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription } from '../values.ts';
import { after, clock, entry, hour, hourOf, READY } from './item-told.testkit.ts';
import { standsAgainst } from './stands-against.ts';

const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'Model A',
  powered: true,
  safeLoadKg: 200,
  inspectionDue: '2026-09-01',
  home: 'Store room',
});
const SLING = itemDescription.parse({
  label: 'Sling 4',
  kind: 'sling',
  model: 'Model B',
  home: 'Store room',
});

/** Planned for Anna; asked at an hour after eight. */
function planned(entries: readonly LoggedEvent[], { h = 6, is = LIFT, today = '2026-03-03' } = {}) {
  const askAgain: number[] = [];
  const rules = DEFAULT_RULES.aids;
  const words = standsAgainst(
    is,
    after(...entries),
    { stay: 'anna' as StayId, t: hour(h), today, rules, say: clock },
    (at) => askAgain.push(hourOf(at)),
  );
  return { words, askAgain };
}
const NOTHING = { words: null, askAgain: [] };

describe('what stands against a lift that a visit was planned with', () => {
  it('is nothing when it was found, wiped and charged', () => {
    expect(planned(READY)).toEqual(NOTHING);
    expect(planned([...READY, entry(2, 'battery-read', { band: 'low' })])).toEqual(NOTHING);
  });
  it('is nothing when nobody has spoken of it, not lately, or somebody has it just now', () => {
    expect(planned([])).toEqual(NOTHING);
    expect(planned(READY, { h: 500 })).toEqual(NOTHING);
    expect(planned([...READY, entry(5, 'item-taken', { usedBy: 'ben' })])).toEqual(NOTHING);
  });

  describe.each([
    [
      'a broken brake',
      entry(2, 'item-out-of-service', { defect: 'brake-or-wheel' }),
      'Lift 1 is out of service since 10:00 (brake or wheel)',
    ],
    ['not being there', entry(2, 'item-not-there'), 'Lift 1 was looked for 10:00 and is not there'],
    ['being dirty', entry(2, 'item-cleaning', { clean: false }), 'Lift 1 is dirty since 10:00'],
    [
      'an empty battery',
      entry(2, 'battery-read', { band: 'flat' }),
      'the battery of Lift 1 is flat since 10:00',
    ],
  ])('%s', (_what, found, words) => {
    it('stands from the minute it was found, however long ago', () => {
      for (const h of [2, 3, 500]) expect(planned([...READY, found], { h })).toEqual({ words, askAgain: [] });
    });
    it('says nothing of the time before, and when to ask again', () => {
      expect(planned([...READY, found], { h: 1 })).toEqual({ words: null, askAgain: [2] });
    });
  });

  it('is what keeps it from the ward first, then what the ward puts right', () => {
    const flat = entry(1, 'battery-read', { band: 'flat' });
    const dirty = entry(2, 'item-cleaning', { clean: false });
    const broken = entry(3, 'item-out-of-service', { defect: 'does-not-run' });
    expect(planned([flat, dirty, broken]).words).toBe('Lift 1 is out of service since 11:00 (does not run)');
    expect(planned([flat, dirty]).words).toBe('Lift 1 is dirty since 10:00');
  });

  it('is its examination from the day after it was due, and not a date that nobody knows', () => {
    expect(planned(READY, { today: '2026-09-01' })).toEqual(NOTHING);
    expect(planned(READY, { today: '2026-09-02' })).toEqual({
      words: 'Lift 1 was due for its examination 1 Sep 2026',
      askAgain: [],
    });
    expect(planned(READY, { is: { ...LIFT, inspectionDue: null }, today: '2026-09-02' })).toEqual(NOTHING);
  });

  it('is no battery where there is none to charge', () => {
    const flat = entry(2, 'battery-read', { band: 'flat' });
    expect(planned([flat], { is: { ...LIFT, powered: false } })).toEqual(NOTHING);
  });
});

describe('what stands against a sling that a visit was planned with', () => {
  const keptFor = (h: number, stay: string | null) => entry(h, 'item-bound', { keptFor: stay });

  it('is that it is kept for another person, from when it is', () => {
    expect(planned([keptFor(2, 'ben')], { is: SLING })).toEqual({
      words: 'Sling 4 is kept for another person since 10:00',
      askAgain: [],
    });
    expect(planned([keptFor(2, 'ben')], { is: SLING, h: 1 })).toEqual({ words: null, askAgain: [2] });
  });
  it('is nothing when it is kept for the person herself, or for nobody any more', () => {
    expect(planned([keptFor(2, 'anna')], { is: SLING })).toEqual(NOTHING);
    expect(planned([keptFor(2, 'ben'), keptFor(3, null)], { is: SLING })).toEqual(NOTHING);
  });
});
