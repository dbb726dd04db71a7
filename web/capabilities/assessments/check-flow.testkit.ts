/** The staged check on the sheet, opened for one person, with the taps that most tests begin with. */
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { boardRow, stayRow } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import CheckFlow from './CheckFlow.vue';

export const given = (view = stayRow(), role = 'nurse', over: Record<string, unknown> = {}) =>
  bench(CheckFlow, {
    stay: 's1',
    view,
    protocol: DEFAULT_PROTOCOL,
    rules: DEFAULT_RULES,
    board: boardRow([]),
    role,
    ...over,
  });
export type Form = ReturnType<typeof given>;
const cooperates = async (form: Form) => {
  const yes = () => form.wrapper.findAll('button').filter((b) => b.text().endsWith('Yes'));
  await yes()[0]!.trigger('click');
  await yes()[1]!.trigger('click');
};
export const clear = async (form: Form) => {
  await cooperates(form);
  await form.tap('All the rest met');
  await form.tap('Stage met, go on');
};
export const wellDone = async (form: Form, asksHow: boolean) => {
  await form.tap('All the rest met');
  if (asksHow) await form.tap('Free, on their own');
  await form.tap('Stage met, go on');
};
export const part = (form: Form, says: string) =>
  form.wrapper.findAll('.part').find((p) => p.text().includes(says))!;

/** The buttons of the two depths; "Full" alone would be whichever stands first. */
export const WITHOUT_SET = 'Fullunder 4 minutes';
export const WITH_SET = 'Full, with pressure set';

/** The fields of one reading, by its name. */
export const slotOf = (form: Form, says: string) =>
  form.wrapper.findAll('fieldset').find((f) => f.find('legend').text() === says)!;
/** Types a pressure: systolic, then diastolic. */
export const pressureInto = (form: Form) => async (says: string, systolic: string, diastolic: string) => {
  const [first, second] = slotOf(form, says).findAll('input');
  await first!.setValue(systolic);
  await first!.trigger('change');
  await second!.setValue(diastolic);
  await second!.trigger('change');
};
export const noSymptoms = (form: Form) =>
  form.wrapper
    .findAll('[role=group]')
    .find((g) => g.text().startsWith('Symptoms on rising'))!
    .findAll('button')
    .find((b) => b.text() === 'None')!
    .trigger('click');

/** A check that stopped at the back raised: the second stage. */
export const stopped = async () => {
  const form = given();
  await form.tap(WITHOUT_SET);
  await clear(form);
  await part(form, 'back raised for 3 minutes')
    .findAll('button')
    .find((b) => b.text() === 'Not met')!
    .trigger('click');
  return form;
};
