import { mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { i18n } from '../i18n/words.ts';
import BedTile from './BedTile.vue';
import { planWall } from './legible.ts';
import { HOUR, NOON, bedRow, holdRow, planFor, stayRow } from './rows.testkit.ts';

const PLAN = planWall(24, 1920, 1080, { inches: 55, metres: 5 });
const tile = (stay: ReturnType<typeof stayRow> | null = stayRow(), over = {}) =>
  mount(BedTile, {
    props: {
      bed: bedRow('A1', stay),
      zone: 'Europe/Lisbon',
      night: false,
      now: NOON,
      old: false,
      plan: PLAN,
      ...over,
    },
  });
const hold = (over = {}) => stayRow({ holds: [holdRow({ scope: 'walking', ...over })] });
const stopped = (over = {}) =>
  stayRow({
    holds: [holdRow(over)],
    plan: { day: [planFor('bed-chair', { hold: true, people: 'two', aid: 'sling-lift' })], night: [] },
  });
const drawn = (of: ReturnType<typeof tile>, place: string) => of.find(`.drawn .${place}`).text();
afterEach(() => (i18n.global.locale.value = 'en'));

describe('a bed’s tile', () => {
  it('SCREEN-1 says people and equipment before the day’s facts, in reading order', () => {
    const text = tile().find('.only-read-aloud').text();
    const order = ['1 person', 'frame', 'current', 'Stand', 'up 2 h ago', '1 of 3', 'check by 14:00'];
    const places = order.map((words) => text.indexOf(words));
    expect(places).not.toContain(-1);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it.each([
    ['that is still to come', NOON + HOUR, false, 'next 13:00', 'next visit 13:00'],
    ['that has begun', NOON - HOUR, false, 'since 11:00', 'somebody is there since 11:00'],
    ['of which nobody knows whether it has begun', NOON - HOUR, true, 'next 11:00', 'next visit 11:00'],
  ])('tells a visit %s', (_which, from, old, short, aloud) => {
    const visit = { visit: 'v1', by: 'n1', second: null, from, until: NOON + 2 * HOUR, event: 'e9' };
    const one = tile(stayRow({ visit: visit as never }), { old });
    expect(drawn(one, 'next')).toBe(short);
    expect(one.find('.only-read-aloud').text()).toContain(aloud);
  });

  it.each([
    ['nothing is booked', null, false, 'next 13:00', 'next visit planned 13:00'],
    ['it is held by now', null, true, 'held 13:00', 'visit planned 13:00, held'],
    ['a later one is booked', NOON + 2 * HOUR, false, 'next 13:00', 'next visit planned 13:00'],
    ['a nearer one is booked', NOON + HOUR / 2, false, 'next 12:30', 'next visit 12:30'],
    ['somebody is there', NOON - HOUR, false, 'since 11:00', 'somebody is there since 11:00'],
  ])('PLANNED-6 tells the next visit of the accepted plan: %s', (_which, booked, held, short, aloud) => {
    const planned = {
      visit: 'p1',
      kind: 'care',
      from: NOON + HOUR,
      until: NOON + 1.5 * HOUR,
      crew: [],
      with: [],
      stopped: held ? { rule: '', facts: [], words: '' } : null,
    } as const;
    const visit =
      booked === null
        ? null
        : { visit: 'v1', by: 'n1', second: null, from: booked, until: booked + 2 * HOUR, event: 'e9' };
    const one = tile(stayRow({ visit: visit as never, planned: [planned as never] }));
    expect(drawn(one, 'next')).toBe(short);
    expect(one.find('.only-read-aloud').text()).toContain(aloud);
  });

  it('SCREEN-1 draws people and equipment as large as the bed, the rest as what is read from nearer', () => {
    const size = (place: string) =>
      parseFloat((tile().find(`.${place} .fit`).element as HTMLElement).style.fontSize);
    expect(size('people')).toBe(size('label'));
    expect(size('aid')).toBe(size('label'));
    expect(size('goal')).toBeLessThan(size('label'));
  });

  it('draws each thing in its place', () => {
    const one = tile();
    const places = ['people', 'aid', 'trust-word', 'under', 'tier', 'goal', 'last-up'];
    expect(places.map((place) => drawn(one, place))).toEqual([
      '1',
      'frame',
      'current',
      'check 5 h ago',
      'Stand',
      '1 of 3',
      'up 2 h ago', // prettier-ignore
    ]);
    expect(one.findAll('.notch-bar')).toHaveLength(1);
  });

  it('marks that more equipment belongs to it than the short word says', () => {
    const plan = [planFor('bed-chair', { aid: 'sling-lift', with: ['slide sheet'] })];
    expect(drawn(tile(stayRow({ plan: { day: plan, night: plan } })), 'aid')).toBe('lift+');
  });

  it('SCREEN-2 under a hold on the move says HOLD across both places; the plan only if it cannot wait', () => {
    const one = tile(stopped());
    expect(drawn(one, 'across')).toBe('HOLD');
    expect(one.find('.people').exists()).toBe(false);
    expect(drawn(one, 'wait')).toBe('if it cannot wait2 lift');
    expect(drawn(one, 'under')).toBe('in bed 13:00');
    expect(one.find('.hold-mark').classes()).toContain('held');
  });

  it('SCREEN-2 keeps the plan under a hold on something else, with the hold’s shape, scope and end', () => {
    const one = tile(hold());
    expect(drawn(one, 'people')).toBe('1');
    expect(drawn(one, 'under')).toBe('no walk 13:00');
    expect(one.find('.hold-mark').exists()).toBe(true);
  });

  it('SCREEN-2 a hold whose review is due has a shape of its own, still stops and still says what', () => {
    const one = tile(stopped({ reviewDue: true }));
    expect(drawn(one, 'across')).toBe('HOLD');
    expect(drawn(one, 'under')).toBe('in bed');
    expect(one.find('.hold-mark').classes()).toContain('review-due');
  });

  it('writes the day beside an end that is far away', () => {
    expect(drawn(tile(hold({ reviewAt: NOON + 40 * HOUR })), 'under')).toBe('no walk Fri');
  });

  it('SCREEN-3 says not recorded, never a number', () => {
    const gap = stayRow({ today: { ...stayRow().today, recorded: false, timesUp: 0 } });
    expect(drawn(tile(gap), 'goal')).toBe('not recorded');
  });

  it('SCREEN-4 under last known never says current, and says instants instead of ages', () => {
    const one = tile(stayRow(), { old: true });
    expect(one.text()).toContain('last known');
    expect(one.text()).not.toContain('current');
    expect(drawn(one, 'last-up')).toBe('up 10:00');
    expect(one.find('.trust-shape').exists()).toBe(false);
  });

  it('draws what is older than its validity lighter, and keeps every word', () => {
    const due = { ...stayRow().due, state: 'overdue' as const, at: NOON - HOUR };
    const one = tile(stayRow({ due }));
    expect(one.find('.tile').classes()).toContain('faded');
    expect(drawn(one, 'aid')).toBe('frame');
    expect(tile().find('.tile').classes()).not.toContain('faded');
  });

  it('is named for a reader by bed, bay and state; nothing drawn is read twice', () => {
    const one = tile();
    expect(one.find('article').attributes('aria-label')).toBe('Bed A1, Bay 1, occupied');
    expect(one.find('.drawn').attributes('aria-hidden')).toBe('true');
  });

  it('tells a reader what changed and when, and marks it', () => {
    const one = tile(stayRow(), { changed: NOON - 60_000 });
    expect(one.find('.tile').classes()).toContain('changed');
    expect(one.find('.only-read-aloud').text()).toContain('changed at 11:59');
  });

  it('says nothing of a person who does not wish it, as strong as a stop', () => {
    const one = tile(stayRow({ shown: 'ask-at-the-bedside', plan: null, wall: 'nothing' }));
    expect(drawn(one, 'across')).toBe('ASK');
    expect(one.find('.stops').exists()).toBe(true);
    expect(one.text()).not.toMatch(/current|Stand|1 of 3/);
  });

  it('speaks German whole', () => {
    i18n.global.locale.value = 'de';
    const one = tile(hold());
    expect(drawn(one, 'under')).toBe('Gehstopp 13:00');
    expect(one.find('.only-read-aloud').text()).toMatch(/1 Person\. Gehgestell\. STOPP: nicht gehen/);
  });
});
