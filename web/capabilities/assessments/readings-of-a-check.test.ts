/** Readings within the staged check, judged by the shared rules as they are typed. */
import { describe, expect, it } from 'vitest';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { stayRow } from '../../board/rows.testkit.ts';
import {
  clear,
  given,
  noSymptoms,
  pressureInto,
  wellDone,
  WITH_SET,
  WITHOUT_SET,
} from './check-flow.testkit.ts';

describe('readings', () => {
  it('an impossible figure is named at its field with its unit, and nothing goes on', async () => {
    const form = given();
    await form.tap(WITH_SET);
    await form.type('systolic', '1300');
    await form.type('diastolic', '80');
    const field = form.wrapper.findAll('.amount').find((a) => a.text().startsWith('systolic'))!;
    expect(field.text()).toContain('Systolic pressure (mmHg) is 40 to 300');
    expect(field.find('input').attributes('aria-invalid')).toBe('true');
    await form.tap('All the rest met');
    const go = form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    expect(go.attributes('disabled')).toBeDefined();
  });

  it('exchanged figures are caught', async () => {
    const form = given();
    await form.tap(WITH_SET);
    await form.type('systolic', '80');
    await form.type('diastolic', '130');
    expect(form.wrapper.text()).toContain('check that they are not exchanged');
  });

  it('below the ward limit the check says "Not now", with the source of the limit', async () => {
    const form = given();
    await form.tap(WITH_SET);
    await form.type('systolic', '84');
    await form.type('diastolic', '50');
    expect(form.wrapper.text()).toContain('Not now');
    expect(form.wrapper.text()).toContain(DEFAULT_RULES.start.systolicBelow.source);
  });

  // Freeman et al., Auton Neurosci 2011;161:46-48: a fall of 20 systolic within 3 minutes of standing.
  it('a fall of 20 on standing is said by the shared rule, and a missing reading is not a "no"', async () => {
    const form = given();
    await form.tap(WITH_SET);
    await form.type('systolic', '130');
    await form.type('diastolic', '80');
    await clear(form);
    await wellDone(form, true);
    await wellDone(form, true);
    const put = pressureInto(form);
    await put('Pressure standing, 1 min', '124', '78');
    expect(form.wrapper.text()).toContain('INCOMPLETE');
    await put('Pressure standing, 3 min', '110', '78');
    await noSymptoms(form);
    expect(form.wrapper.text()).toContain('Pressure falls on rising');
    expect(form.wrapper.text()).toContain('Systolic fell 20: from 130/80 lying to 110/78 at 3 min standing');
    expect(form.wrapper.text()).toContain(DEFAULT_RULES.rising.systolicFall.source);
    expect(form.wrapper.text()).toContain('Sit, then try once more');
    expect(form.wrapper.text()).toContain('Tell the prescriber');
  });

  // Common practice, no source: sit 2 minutes, then once more (design, what pressure on rising does).
  it('asks for a second try after a fall without symptoms, and keeps both tries', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    await clear(form);
    await wellDone(form, true);
    await pressureInto(form)('Pressure seated', '130', '80');
    await wellDone(form, true);
    const put = pressureInto(form);
    expect(form.wrapper.text()).not.toContain('Second try');
    await put('Pressure standing, 1 min', '108', '78');
    expect(form.wrapper.text()).toContain('Second try, standing 1 min');
    await noSymptoms(form);
    form.tick(180_000);
    await put('Second try, standing 1 min', '112', '79');
    expect(form.wrapper.text()).toContain('Standing counts, with the caution');
    expect(form.wrapper.text()).toContain('Second try, standing 1 min');
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    await form.tap('Stage met, go on');
    await form.tap('Stop before this');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    const standing = data.readings.filter((r) => r.kind === 'pressure' && r.posture === 'standing');
    expect(standing.map((r) => r.kind === 'pressure' && [r.systolic, r.minute])).toEqual([
      [108, 1],
      [112, 1],
    ]);
    expect(Date.parse(standing[1]!.at) - Date.parse(standing[0]!.at)).toBe(180_000);
  });

  it('more oxygen than at the check before asks first', async () => {
    const form = given(stayRow(), 'nurse', { oxygenFlowBefore: 2 });
    await form.tap(WITHOUT_SET);
    await form.type('saturation', '96');
    await form.type('oxygen given', '2');
    expect(form.wrapper.text()).not.toContain('Ask first');
    await form.type('oxygen given', '3');
    expect(form.wrapper.text()).toContain('Ask first');
    expect(form.wrapper.text()).toContain('more oxygen than at the last check (2 to 3 litres a minute)');
  });

  it('oxygen now asks first where the check before took the saturation alone', async () => {
    const form = given(stayRow(), 'nurse', { oxygenFlowBefore: 'not-recorded' });
    await form.tap(WITHOUT_SET);
    await form.type('saturation', '96');
    await form.type('oxygen given', '2');
    expect(form.wrapper.text()).toContain('Ask first');
    expect(form.wrapper.text()).toContain('on 2 litres of oxygen a minute; the flow before is not known');
  });
});
