/** A reading of a check that was taken before it is typed: its time is that of the taking. */
import { afterEach, describe, expect, it } from 'vitest';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { judgeRising } from '@footboard/shared/capabilities/assessments/rules/pressure';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { NOON } from '../../board/rows.testkit.ts';
import { chooseLanguage, keepLanguage } from '../../i18n/language.ts';
import { phrasesReady, told } from '../../i18n/told.ts';
import {
  clear,
  given,
  noSymptoms,
  pressureInto,
  slotOf,
  wellDone,
  WITH_SET,
  type Form,
} from './check-flow.testkit.ts';

keepLanguage();
afterEach(() => chooseLanguage(null));

const MINUTE = 60_000;
const LATE = 9;
const group = (form: Form, slot: string) => slotOf(form, slot).find('[role=group]');
const says = (form: Form, slot: string) => {
  const id = group(form, slot).attributes('aria-labelledby')!;
  return slotOf(form, slot).find(`[id="${id}"]`).text();
};
const takenAgo = (form: Form, slot: string, words: string) =>
  group(form, slot)
    .findAll('button')
    .find((b) => b.text().replace('✓', '') === words)!
    .trigger('click');
const minutesAgo = async (form: Form, slot: string, minutes: string) => {
  await takenAgo(form, slot, 'Earlier');
  const field = slotOf(form, slot).findAll('input').at(-1)!;
  await field.setValue(minutes);
  await field.trigger('change');
};
/** At the standing, with the lying pressure typed at noon and the one at 1 minute standing four minutes later. */
const standing = async () => {
  const form = given();
  await form.tap(WITH_SET);
  await pressureInto(form)('Pressure lying', '130', '80');
  await clear(form);
  await wellDone(form, true);
  await wellDone(form, true);
  form.tick(4 * MINUTE);
  await pressureInto(form)('Pressure standing, 1 min', '128', '79');
  return form;
};
/** The pressure at 3 minutes, typed nine minutes after it was taken. */
const typedLate = async () => {
  const form = await standing();
  form.tick((2 + LATE) * MINUTE);
  await pressureInto(form)('Pressure standing, 3 min', '127', '79');
  await noSymptoms(form);
  return form;
};
const sendIt = async (form: Form) => {
  await form.tap('All the rest met');
  await form.tap('Free, on their own');
  await form.tap('Stage met, go on');
  await form.tap('Stop before this');
  await form.tap('Record this check');
  return recordAssessment.data.parse(form.sent[0]!.body.data);
};

describe('a reading typed later than it was taken', () => {
  it('given nothing is said of it, when it is typed, then it stands at that time and says so', async () => {
    const form = await standing();
    expect(says(form, 'Pressure standing, 1 min')).toBe('Taken at 12:04');
    expect(
      group(form, 'Pressure standing, 1 min')
        .findAll('[aria-pressed=true]')
        .map((b) => b.text()),
    ).toEqual(['✓When typed']);
  });

  it('given nothing was typed yet, then no time is asked', async () => {
    const form = given();
    await form.tap(WITH_SET);
    expect(slotOf(form, 'Pressure lying').findAll('[role=group]')).toHaveLength(0);
  });

  it('given the 3 minutes are typed 9 minutes late, when one tap says so, then the set is whole', async () => {
    const form = await typedLate();
    expect(form.wrapper.text()).toContain('standing 3 min (its time does not fit)');
    await takenAgo(form, 'Pressure standing, 3 min', '10 min ago');
    expect(form.wrapper.text()).not.toContain('its time does not fit');
    expect(says(form, 'Pressure standing, 3 min')).toBe('Taken at 12:05');

    const data = await sendIt(form);
    const at = (minute: number) =>
      data.readings.find((r) => r.kind === 'pressure' && r.minute === minute)!.at;
    expect([at(1), at(3)].map((one) => (Date.parse(one) - NOON) / MINUTE)).toEqual([4, 5]);
    const { missing, fall } = judgeRising({
      readings: data.readings,
      symptoms: [],
      demanded: true,
      set: DEFAULT_PROTOCOL.pressureSet,
      rules: DEFAULT_RULES.rising,
    });
    expect({ missing, fall }).toEqual({ missing: [], fall: 'no' });
  });

  it('given any other minute, when it is typed, then that is its time, and "When typed" takes it back', async () => {
    const form = await typedLate();
    await minutesAgo(form, 'Pressure standing, 3 min', '9');
    expect(says(form, 'Pressure standing, 3 min')).toBe('Taken at 12:06');
    await takenAgo(form, 'Pressure standing, 3 min', 'When typed');
    expect(says(form, 'Pressure standing, 3 min')).toBe('Taken at 12:15');
  });

  it('given a figure is put right afterwards, then the time that was said of it stays', async () => {
    const form = await typedLate();
    await takenAgo(form, 'Pressure standing, 3 min', '10 min ago');
    form.tick(MINUTE);
    await pressureInto(form)('Pressure standing, 3 min', '126', '78');
    expect(says(form, 'Pressure standing, 3 min')).toBe('Taken at 12:05');
  });
});

const go = (form: Form) => form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;

describe('what is wrong with a reading, in German', () => {
  it.each([
    [
      'Timed before “Pressure standing, 1 min”. Say fewer minutes here, or more at that one.',
      'Liegt zeitlich vor „Blutdruck im Stehen, 1 Min.“. Hier weniger Minuten angeben oder dort mehr.',
    ],
    [
      'Timed after “Second try, standing 1 min”. Say more minutes here, or fewer at that one.',
      'Liegt zeitlich nach „Zweiter Versuch, Stehen 1 Min.“. Hier mehr Minuten angeben oder dort weniger.',
    ],
    [
      'Type the systolic (mmHg) too, or clear the other figure.',
      'Auch diesen Wert eingeben: systolisch (mmHg); oder den anderen löschen.',
    ],
    [
      'Type the heart rate (per min) too, or clear the other figure.',
      'Auch diesen Wert eingeben: Puls (pro Min.); oder den anderen löschen.',
    ],
    [
      'Stand not met: systolic 85 at 1 min standing (limit 90)',
      'Stehen nicht erfüllt: systolisch 85, 1 Min. im Stehen (Grenze 90)',
    ],
  ])('given German is chosen, then "%s" is said in German', async (english, german) => {
    chooseLanguage('de');
    await phrasesReady();
    expect(told(english)).toBe(german);
  });
});

describe('a time that cannot be', () => {
  it('given a time still to come, then it is refused in words, and nothing to come is ever recorded', async () => {
    const form = await standing();
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    expect(go(form).attributes('disabled')).toBeUndefined();
    await minutesAgo(form, 'Pressure standing, 1 min', '-5');
    const slot = slotOf(form, 'Pressure standing, 1 min');
    expect(slot.text()).toContain('That is still to come. Type how many minutes ago it was taken.');
    expect(slot.findAll('input').at(-1)!.attributes('aria-invalid')).toBe('true');
    expect(go(form).attributes('disabled')).toBeDefined();
    expect(says(form, 'Pressure standing, 1 min')).toBe('Taken at 12:04');
  });

  it('given standing is put before lying, then it is refused, and saying fewer minutes mends it', async () => {
    const form = await standing();
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    await takenAgo(form, 'Pressure standing, 1 min', '5 min ago');
    expect(slotOf(form, 'Pressure standing, 1 min').text()).toContain(
      'Timed before “Pressure lying”. Say fewer minutes here, or more at that one.',
    );
    expect(go(form).attributes('disabled')).toBeDefined();
    await takenAgo(form, 'Pressure standing, 1 min', '2 min ago');
    expect(slotOf(form, 'Pressure standing, 1 min').text()).not.toContain('Timed before');
    expect(go(form).attributes('disabled')).toBeUndefined();
  });

  it('given the other way round, then the lying pressure says what stands against it', async () => {
    const form = await standing();
    await takenAgo(form, 'Pressure standing, 1 min', '2 min ago');
    for (let stage = 0; stage < 3; stage += 1) await form.tap('Back');
    form.tick(5 * MINUTE);
    await takenAgo(form, 'Pressure lying', '2 min ago');
    expect(slotOf(form, 'Pressure lying').text()).toContain(
      'Timed after “Pressure standing, 1 min”. Say more minutes here, or fewer at that one.',
    );
    await minutesAgo(form, 'Pressure lying', '20');
    expect(slotOf(form, 'Pressure lying').text()).not.toContain('Timed after');
  });

  it('given German is chosen, then the choice and the refusal are in German', async () => {
    chooseLanguage('de');
    await phrasesReady();
    const form = given();
    await form.tap('Voll mit Blutdruckreihe');
    await pressureInto(form)('Blutdruck im Liegen', '130', '80');
    expect(says(form, 'Blutdruck im Liegen')).toBe('Gemessen um 12:00');
    await takenAgo(form, 'Blutdruck im Liegen', 'Früher');
    const field = slotOf(form, 'Blutdruck im Liegen').findAll('input').at(-1)!;
    await field.setValue('-1');
    await field.trigger('change');
    expect(slotOf(form, 'Blutdruck im Liegen').text()).toContain(
      'Das liegt in der Zukunft. Eingeben, vor wie vielen Minuten gemessen wurde.',
    );
  });
});
