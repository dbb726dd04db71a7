import { describe, expect, it } from 'vitest';
import { recordEarlyWarning } from '@footboard/shared/capabilities/assessments/commands';
import { HOUR, NOON } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import AsleepForm from './AsleepForm.vue';
import EarlyWarningForm from './EarlyWarningForm.vue';

const given = () => bench(EarlyWarningForm, { stay: 's1' });
type Form = ReturnType<typeof given>;
const choose = (form: Form, legend: string, says: string) =>
  form.wrapper
    .findAll('[role=group]')
    .find((g) => g.text().startsWith(legend))!
    .findAll('button')
    .find((b) => b.text().replace('✓', '').startsWith(says))!
    .trigger('click');
const sentData = (form: Form) => recordEarlyWarning.data.parse(form.sent[0]!.body.data);
const result = (form: Form) => form.wrapper.find('.result').text().replace(/\s+/g, ' ');

const parts = async (
  form: Form,
  values: { breathing: number; saturation: number; systolic: number; pulse: number; temperature: number },
  [scale, air, level]: readonly [string, string, string],
) => {
  await form.type('Breathing rate', String(values.breathing));
  await form.type('Oxygen saturation', String(values.saturation));
  await form.type('Systolic pressure', String(values.systolic));
  await form.type('Pulse', String(values.pulse));
  await form.type('Temperature', String(values.temperature));
  await choose(form, 'Oxygen scale', scale);
  await choose(form, 'Air or oxygen', air);
  await choose(form, 'Consciousness', level);
};
const normal = { breathing: 18, saturation: 96, systolic: 120, pulse: 80, temperature: 37 };

describe('the early-warning number as it was charted', () => {
  it('is recorded with whether one parameter is at 3, its scale, and when it was charted', async () => {
    const form = given();
    await form.type('NEWS2, the total as charted', '6');
    await choose(form, 'Did any one parameter score 3?', 'Yes');
    await choose(form, 'Oxygen scale it was', 'Scale 2');
    await form.tap('1 h ago');
    await form.tap('Record this score');
    expect(sentData(form)).toEqual({ stay: 's1', score: 6, anyThree: true, scale: 2 });
    expect(form.sent[0]!.body.occurred).toEqual({
      at: new Date(NOON - HOUR).toISOString(),
      precision: 'about',
    });
  });

  it('with a part of it unsaid is not sent, and each is named; nothing is taken for granted', async () => {
    const form = given();
    await form.tap('Record this score');
    expect(form.sent).toHaveLength(0);
    const text = form.wrapper.text();
    expect(text).toContain('Type the number');
    expect(text).toContain('Say yes or no.');
    expect(text).toContain('Choose the scale.');
  });

  it('above 20 is refused at its field', async () => {
    const form = given();
    await form.type('NEWS2, the total as charted', '21');
    await form.tap('Record this score');
    expect(form.wrapper.text()).toContain('The score is 0 to 20, whole');
    expect(form.sent).toHaveLength(0);
  });

  it('carries its acknowledgement and says what it is not', () => {
    const text = given().wrapper.text().replace(/\s+/g, ' ');
    expect(text).toContain(
      'NEWS2: Royal College of Physicians. National Early Warning Score (NEWS) 2. London: RCP, 2017.',
    );
    expect(text).toContain('Not a substitute for clinical judgement');
  });
});

describe('NEWS2 from its parts (Royal College of Physicians 2017, chart 1)', () => {
  it('lists the points of each part in words, and hands the number to the entry', async () => {
    const form = given();
    await form.tap('Work it out from its parts');
    const values = { breathing: 22, saturation: 94, systolic: 105, pulse: 112, temperature: 38.5 };
    await parts(form, values, ['Scale 1', 'On oxygen', 'Alert']);
    // Worked from the chart: 2 + 1 + 2 + 1 + 2 + 0 + 1 = 9.
    expect(result(form)).toContain('NEWS2 9');
    expect(form.wrapper.findAll('.lines li').map((li) => li.text())).toEqual([
      'Breathing rate 22 a minute 2 points',
      'Oxygen saturation 94 % 1 point',
      'On oxygen 2 points',
      'Systolic pressure 105 mmHg 1 point',
      'Pulse 112 a minute 2 points',
      'Alert 0 points',
      'Temperature 38.5 °C 1 point',
    ]);
    await form.tap('Use this number');
    await form.tap('Record this score');
    expect(sentData(form)).toEqual({ stay: 's1', score: 9, anyThree: false, scale: 1 });
  });

  it('says when one part alone scores 3', async () => {
    const form = given();
    await form.tap('Work it out from its parts');
    await parts(form, { ...normal, breathing: 25 }, ['Scale 1', 'On air', 'Alert']);
    expect(result(form)).toContain('NEWS2 3');
    expect(result(form)).toContain('One parameter scores 3.');
    await form.tap('Use this number');
    await form.tap('Record this score');
    expect(sentData(form)).toMatchObject({ score: 3, anyThree: true });
  });

  it('reads oxygen on both scales', async () => {
    const form = given();
    await form.tap('Work it out from its parts');
    // 97 % on oxygen: scale 1 gives 0 + 2, scale 2 gives 3 + 2.
    await parts(form, { ...normal, saturation: 97 }, ['Scale 1', 'On oxygen', 'Alert']);
    expect(result(form)).toContain('NEWS2 2');
    await choose(form, 'Oxygen scale', 'Scale 2');
    expect(result(form)).toContain('NEWS2 5');
  });

  it('gives no number while a part is missing, and names it', async () => {
    const form = given();
    await form.tap('Work it out from its parts');
    await parts(form, normal, ['Scale 1', 'On air', 'Alert']);
    expect(result(form)).toContain('NEWS2 0');
    await form.type('Temperature', '');
    expect(result(form)).toContain('No number yet. Not taken: temperature.');
    expect(result(form)).not.toContain('NEWS2');
    const use = form.wrapper.findAll('button').find((b) => b.text() === 'Use this number')!;
    expect(use.attributes('disabled')).toBeDefined();
  });

  it('counts a figure that cannot be right as not taken', async () => {
    const form = given();
    await form.tap('Work it out from its parts');
    await parts(form, { ...normal, systolic: 12 }, ['Scale 1', 'On air', 'Alert']);
    expect(form.wrapper.text()).toContain('Systolic pressure (mmHg) is 40 to 300');
    expect(result(form)).toContain('Not taken: systolic pressure.');
  });

  it('leaves what was typed alone when somebody goes back without a number', async () => {
    const form = given();
    await form.type('NEWS2, the total as charted', '4');
    await form.tap('Work it out from its parts');
    await form.tap('Back without a number');
    await choose(form, 'Did any one parameter score 3?', 'No');
    await choose(form, 'Oxygen scale it was', 'Scale 1');
    await form.tap('Record this score');
    expect(sentData(form)).toMatchObject({ score: 4 });
  });
});

describe('seen asleep', () => {
  it('is one tap on its sheet', async () => {
    const form = bench(AsleepForm, { stay: 's1' });
    await form.tap('Asleep now');
    expect(form.sent).toMatchObject([{ name: 'record-asleep', body: { data: { stay: 's1' } } }]);
    expect(form.wrapper.emitted('recorded')).toHaveLength(1);
  });
});
