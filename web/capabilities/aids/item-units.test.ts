import { mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { itemDescription, type ItemDescription } from '@footboard/shared/capabilities/aids/values';
import { itemLine } from '@footboard/shared/wire/items';
import { followWardUnits, weightsOf } from '../../units/ward-units.ts';
import ItemCard from './ItemCard.vue';
import ItemForm from './ItemForm.vue';

afterEach(() => followWardUnits({ weight: 'kg', length: 'm' }));

const sling = itemDescription.parse({
  label: 'Sling 1',
  model: 'Invented M',
  kind: 'sling',
  safeLoadKg: 200,
  attachment: 'loops',
  style: 'whole-body',
  fitsFromKg: 50,
  fitsToKg: 90,
  home: 'store',
});

describe('loads of equipment', () => {
  it('stand in the units of the ward on its card', () => {
    const nothing = {
      place: null,
      missing: null,
      inUse: null,
      clean: null,
      battery: null,
      outOfService: null,
    };
    const usable = { word: 'unknown', against: [] };
    const examination = { due: '2027-01-15', everyMonths: 6 };
    const line = itemLine.parse({
      item: 'i1',
      is: sling,
      ...nothing,
      keptFor: null,
      borrowed: null,
      usable,
      examination,
    });
    const facts = () =>
      mount(ItemCard, { props: { line, zone: 'Europe/Lisbon', now: 0 } })
        .find('.facts')
        .text();
    expect(facts()).toContain('bears 200 kg');
    expect(facts()).toContain('examination due 15 Jan 2027 (every 6 months)');
    followWardUnits({ weight: 'lb', length: 'ft' });
    // 200 kg / 0.45359237 kg a pound = 440.92 (international pound, 1959); 50 kg = 110.2, 90 kg = 198.4.
    // A load is rounded down: never more is read than the piece bears.
    expect(facts()).toContain('bears 440 lb');
    expect(facts()).toMatch(/110 lb.*198 lb/);
  });

  it('are typed in the units of the ward and kept in kilograms', async () => {
    followWardUnits({ weight: 'lb', length: 'ft' });
    const form = mount(ItemForm, { props: { is: sling, bays: [], busy: false } });
    const load = form.findAll('input').find((one) => one.element.value === '440.9')!;
    await load.setValue('500');
    await form.find('form').trigger('submit');
    const [saved] = form.emitted<[ItemDescription]>('save')![0]!;
    // 500 lb = 226.796185 kg, kept to the gram.
    expect(saved.safeLoadKg).toBe(226.796);
    expect([saved.fitsFromKg, saved.fitsToKg]).toEqual([50, 90]);
  });

  it('that cannot be right are refused in the units of the ward', async () => {
    followWardUnits({ weight: 'lb', length: 'ft' });
    const form = mount(ItemForm, { props: { is: sling, bays: [], busy: false } });
    await form
      .findAll('input')
      .find((one) => one.element.value === '440.9')!
      .setValue('10');
    await form.find('form').trigger('submit');
    // 20 kg = 44.09 lb, 1000 kg = 2204.6 lb (international pound, 1959).
    expect(form.text()).toContain('A safe working load is 44 to 2205 lb');
    expect(weightsOf('Weight estimated: counted as 84.6 kg')).toBe('Weight estimated: counted as 187 lb');
    followWardUnits({ weight: 'kg', length: 'm' });
    expect(weightsOf('Weight estimated: counted as 84.6 kg')).toBe('Weight estimated: counted as 84.6 kg');
  });
});
