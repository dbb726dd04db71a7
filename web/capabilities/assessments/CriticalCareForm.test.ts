import { describe, expect, it } from 'vitest';
import { recordCriticalCareSigns } from '@footboard/shared/capabilities/assessments/commands';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { NOON } from '../../board/rows.testkit.ts';
import { moreOf } from '../bedside/sheets.ts';
import { bench } from '../entry/entry.testkit.ts';
import CriticalCareForm from './CriticalCareForm.vue';

const given = () => bench(CriticalCareForm, { stay: 's1' });

describe('critical-care signs', () => {
  it('sends what was taken and nothing else: oxygen in percent becomes a fraction', async () => {
    const form = given();
    await form.type('Oxygen saturation', '91');
    await form.type('Oxygen given', '40');
    await form.type('Temperature', '38,2');
    await form.tap('−1');
    await form.tap('Steady');
    await form.tap('Lying prone');
    await form.tap('30 min ago');
    await form.tap('Record these signs');
    const { data, occurred } = form.sent[0]!.body;
    expect(recordCriticalCareSigns.data.parse(data)).toEqual({
      stay: 's1',
      saturation: 91,
      oxygenFraction: 0.4,
      temperature: 38.2,
      sedation: -1,
      vasoactive: 'steady',
      bars: ['lying-prone'],
    });
    expect(occurred).toEqual({ at: new Date(NOON - 30 * 60_000).toISOString(), precision: 'about' });
    expect(form.recorded).toEqual(['Critical-care signs']);
  });

  it('asks for at least one sign, and names a figure that cannot be', async () => {
    const form = given();
    await form.tap('Record these signs');
    expect(form.wrapper.text()).toContain('Enter at least one sign.');
    await form.type('Heart rate', '900');
    await form.tap('Record these signs');
    expect(form.sent).toEqual([]);
    expect(form.wrapper.text()).toMatch(/Heart rate\s*per min\s*▲/);
  });

  it('speaks of oxygen in the percent that was typed', async () => {
    const form = given();
    await form.type('Oxygen given', '0,4');
    await form.tap('Record these signs');
    expect(form.sent).toEqual([]);
    expect(form.wrapper.text()).toContain('Oxygen given is 21 to 100 %');
  });

  it('takes back a chip that was tapped by mistake', async () => {
    const form = given();
    await form.tap('Steady');
    await form.tap('Steady');
    await form.type('Breathing rate', '18');
    await form.tap('Record these signs');
    expect(form.sent[0]!.body.data).toEqual({ stay: 's1', breathing: 18, bars: [] });
  });

  it('stands in the menu only where the ward turned its limits on', () => {
    const sheets = (on: boolean) => {
      const { criticalCare } = DEFAULT_RULES;
      const rules = {
        ...DEFAULT_RULES,
        criticalCare: { ...criticalCare, on: { ...criticalCare.on, value: on } },
      };
      return moreOf(rules).flatMap((group) => group.sheets);
    };
    expect(sheets(false)).not.toContain('critical-care');
    expect(sheets(true)).toContain('critical-care');
  });
});
