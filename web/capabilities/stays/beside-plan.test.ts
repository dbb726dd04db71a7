import { afterEach, describe, expect, it } from 'vitest';
import { mount } from '@vue/test-utils';
import { nextTick } from 'vue';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { EventId, StaffId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE } from '@footboard/shared/kernel/times';
import { NOON, stayRow } from '../../board/rows.testkit.ts';
import { chooseLanguage, keepLanguage } from '../../i18n/language.ts';
import { followWardUnits } from '../../units/ward-units.ts';
import { bench } from '../entry/entry.testkit.ts';
import BesidePlan from './BesidePlan.vue';
import IsolationForm from './IsolationForm.vue';
import { dateAhead, leavingTimes } from './leaving-times.ts';
import LeavingForm from './LeavingForm.vue';
import TherapistLineForm from './TherapistLineForm.vue';
import WeightForm from './WeightForm.vue';

keepLanguage();
const zone = 'Europe/Berlin';
const event = 'e1' as EventId;
const form = (over: Partial<StayView> = {}) => ({ stay: 's1', view: stayRow(over), zone });
afterEach(() => {
  chooseLanguage(null);
  followWardUnits({ weight: 'kg', length: 'm' });
});

describe('infection steps', () => {
  it('given none, two taps set them', async () => {
    const b = bench(IsolationForm, form());
    await b.tap('Record the infection steps');
    expect(b.sent).toMatchObject([{ name: 'set-isolation', body: { data: { stay: 's1', on: true } } }]);
  });
  it('given they apply, the form begins with ending them', async () => {
    const b = bench(IsolationForm, form({ isolation: true }));
    await b.tap('Record the infection steps');
    expect(b.sent).toMatchObject([{ body: { data: { on: false } } }]);
  });
});

describe('expected to leave', () => {
  it('is one tap for the days asked for most, on the ward’s clock', async () => {
    const [first] = leavingTimes(zone, NOON);
    const b = bench(LeavingForm, form());
    await b.tap(`Today, ${first!.time}`);
    await b.tap('Record the expected time');
    // The invented noon is in winter: the ward's clock is an hour ahead of UTC.
    expect(b.sent).toMatchObject([
      { name: 'expect-leaving', body: { data: { at: `${dateAhead(zone, NOON, 0)}T15:00:00.000Z` } } },
    ]);
  });
  it('leaves out a day whose hour has passed, and counts days on the calendar', () => {
    expect(leavingTimes(zone, NOON + 8 * HOUR).map(({ day }) => day)).toEqual(['tomorrow', 'after']);
    // The clocks of Berlin go back in the night to 25 October 2026: that day has 25 hours.
    const before = Date.parse('2026-10-24T21:30:00Z');
    expect([0, 1, 2].map((n) => dateAhead(zone, before, n))).toEqual([
      '2026-10-24',
      '2026-10-25',
      '2026-10-26',
    ]);
  });
  it('given nothing is chosen, says what to do and sends nothing', async () => {
    const b = bench(LeavingForm, form());
    await b.tap('Record the expected time');
    expect(b.wrapper.text()).toContain('Choose a day, or give the day and time.');
    expect(b.sent).toEqual([]);
  });
  it('given an expectation, takes it back', async () => {
    const b = bench(LeavingForm, form({ leaving: { at: NOON + HOUR, event } }));
    await b.tap('Not expected to leave any more');
    expect(b.sent).toMatchObject([{ body: { data: { stay: 's1', at: null } } }]);
  });
});

describe('the line for the bedside', () => {
  const legend = 'One line for whoever moves the person';
  it('counts the signs that are left and sends the line', async () => {
    const b = bench(TherapistLineForm, form());
    await b.type(legend, 'Left foot first');
    expect(b.wrapper.text()).toContain('45 signs left');
    await b.tap('Show this line');
    expect(b.sent).toMatchObject([
      { name: 'set-therapist-line', body: { data: { line: 'Left foot first' } } },
    ]);
  });
  it('says how many are too many and sends nothing', async () => {
    const b = bench(TherapistLineForm, form());
    await b.type(legend, 'x'.repeat(61));
    expect(b.wrapper.text()).toContain('1 sign too many');
    await b.tap('Show this line');
    expect(b.wrapper.text()).toContain('Write the line, in up to 60 signs.');
    expect(b.sent).toEqual([]);
  });
});

describe('what stands beside the plan', () => {
  const show = (over: Partial<StayView>, line: string | null = null) =>
    mount(BesidePlan, {
      props: { view: stayRow(over), now: NOON, zone, line, nameOf: () => 'Tarn Wickes' },
    });
  const chair = { since: NOON - 70 * MINUTE, backBy: NOON - 10 * MINUTE, event };

  it('is nothing at all where nothing is recorded', () => {
    expect(show({}).find('dl').exists()).toBe(false);
  });
  it('says each, and marks only the chair spell that is over its time', () => {
    const page = show(
      {
        isolation: true,
        chair,
        toilet: [NOON - 2 * HOUR],
        leaving: { at: NOON + 26 * HOUR, event },
        therapistLine: {
          line: { ref: 't1' } as never,
          by: 'st1' as StaffId,
          at: NOON - HOUR,
          event,
        },
      },
      'Left foot first',
    );
    const text = page.text().replace(/\s+/g, ' ');
    for (const part of [
      'Left foot first',
      'Tarn Wickes',
      'apply in the room',
      'back to bed by',
      'Toilet today',
    ]) {
      expect(text).toContain(part);
    }
    expect(page.findAll('.needs')).toHaveLength(1);
    expect(show({ chair: { ...chair, backBy: NOON + MINUTE } }).findAll('.needs')).toHaveLength(0);
  });
  it('speaks German where the screen does', async () => {
    chooseLanguage('de');
    await nextTick();
    expect(show({ isolation: true }).text()).toContain('Hygienemaßnahmen');
  });
});

describe('a weight in the ward’s unit', () => {
  it('is typed in pounds, said back in kilograms and sent in kilograms', async () => {
    followWardUnits({ weight: 'lb', length: 'ft' });
    const b = bench(WeightForm, { stay: 's1' });
    await b.type('Body weight', '154');
    expect(b.wrapper.text()).toContain('That is 69.9 kg, or 11 st 0 lb.');
    await b.tap('Record the weight');
    // 154 lb of 0.45359237 kg each (exact), to the gram.
    expect(b.sent).toMatchObject([{ body: { data: { weight: { kg: 69.853, how: 'measured' } } } }]);
  });
});
