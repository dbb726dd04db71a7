import { mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ItemToSee as ItemLine, StayToSee as StayLine } from '@footboard/shared/wire/coordinator';
import { chooseLanguage } from '../../i18n/language.ts';
import { phrasesReady } from '../../i18n/told.ts';
import ItemToSee from './ItemToSee.vue';
import StayToSee from './StayToSee.vue';

const NOW = Date.parse('2026-11-30T10:00:00Z');
const about = { ward: 'w1', zone: 'Europe/Berlin', now: NOW };
const global = { stubs: { RouterLink: { template: '<a :href="to"><slot/></a>', props: ['to'] } } };
const person = (over: Partial<StayLine>) =>
  mount(StayToSee, {
    props: {
      ...about,
      line: {
        stay: 'stay-1',
        bed: 'C6',
        matter: 'no-sling',
        since: NOW - 3_600_000,
        closes: 'bring-a-sling',
        tasks: ['bed-chair'],
        aids: ['sling-lift'],
        over: [],
        countsKg: 80,
        failed: [],
        lifts: [],
        ...over,
      } as StayLine,
    },
    global,
  });
const item = (over: Partial<ItemLine>) =>
  mount(ItemToSee, {
    props: {
      ...about,
      line: {
        item: 'lift-1',
        label: 'Lift 1',
        matter: 'out-of-service',
        since: NOW - 3_600_000,
        closes: 'look-and-return',
        against: [],
        due: null,
        ...over,
      } as ItemLine,
    },
    global,
  });

describe('a line of the coordinator’s list', () => {
  it('names person, matter, since when, the plan, the failed question, and what closes it, and leads to the stay', () => {
    const shown = person({
      failed: [
        { item: 's', label: 'Sling 2', against: ['made for toileting'] },
      ] as unknown as StayLine['failed'],
      lifts: [{ item: 'l', label: 'Lift 1' }] as unknown as StayLine['lifts'],
    });
    expect(shown.text()).toMatch(
      /Bed C6: No sling fits.*since 10:00.*sling lift \(Bed to chair\); counts as 80 kg/s,
    );
    expect(shown.findAll('li li').map((one) => one.text())).toEqual([
      'Sling 2: made for toileting',
      'The lifts that bear this person: Lift 1',
    ]);
    expect(shown.find('a').attributes('href')).toBe('/wards/w1/stays/stay-1');
  });

  it('never rounds down what a piece bears too little', () => {
    const over = [{ item: 'l', label: 'Lift 1', bearsKg: 130, overKg: 0.01 }] as unknown as StayLine['over'];
    expect(person({ matter: 'over-limit', closes: 'use-another', over }).text()).toContain(
      'Lift 1 bears 130 kg: 0.1 kg too little',
    );
  });

  it('leads to the piece, and writes the date of an examination with its year', () => {
    const shown = item({ matter: 'examination-overdue', closes: 'examine', due: '2026-10-24' });
    expect(shown.text()).toContain('due 24 Oct 2026');
    expect(shown.find('a').attributes('href')).toBe('/wards/w1/equipment/lift-1');
  });
});

describe('in German', () => {
  beforeEach(async () => {
    chooseLanguage('de');
    await phrasesReady('de');
  });
  afterEach(() => chooseLanguage(null));

  // Every sentence with which the fit rules refuse a piece (shared/capabilities/aids/rules/fit.ts).
  it.each([
    ['its safe working load is not known', 'Traglast nicht bekannt'],
    ['bears 140 kg, the person counts as 150.5 kg', 'trägt 140 kg, die Person zählt als 150,5 kg'],
    ['the weight is not known, and another bears more', 'Gewicht nicht bekannt, und ein anderes trägt mehr'],
    ['its track does not reach Bay 1', 'die Schiene reicht nicht bis Bay 1'],
    ['kept for another person', 'für eine andere Person reserviert'],
    ['nobody has entered what it is made for', 'nicht eingetragen, wofür es gemacht ist'],
    ['made for toileting', 'nur für die Toilette gemacht'],
    ['made for whole body', 'für den ganzen Körper gemacht'],
    ['made for standing', 'zum Stehen gemacht'],
    ['made for turning', 'zum Drehen gemacht'],
    ['the weight is not known: weigh or estimate', 'Gewicht nicht bekannt: wiegen oder schätzen'],
    ['the body weight it is made for is not known', 'Körpergewicht, für das es gemacht ist, nicht bekannt'],
    [
      'made for 50 kg to 70 kg, the person counts as 80 kg',
      'gemacht für 50 bis 70 kg, die Person zählt als 80 kg',
    ],
    ["not on the maker's list for Lift 1", 'nicht auf der Liste des Herstellers für Lift 1'],
    ['hangs by clips, Lift 1 takes loops', 'hängt mit Clips, Lift 1 nimmt Schlaufen'],
  ])('%s', (english, german) => {
    const failed = [{ item: 's', label: 'S', against: [english] }] as unknown as StayLine['failed'];
    expect(person({ failed }).find('li li').text()).toBe(`S: ${german}`);
  });

  it.each([
    ['out of service (brake or wheel)', 'außer Betrieb (Bremse oder Rad)'],
    ['out of service (strap or stitching)', 'außer Betrieb (Band oder Naht)'],
    ['battery not read', 'Akku nicht abgelesen'],
  ])('%s', (english, german) => {
    expect(item({ against: [english] }).text()).toContain(german);
  });
});
