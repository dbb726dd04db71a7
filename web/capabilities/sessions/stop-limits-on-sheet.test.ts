/** Stop limits beside a session: shown beforehand, judged by the shared rules as figures are typed. */
import { describe, expect, it } from 'vitest';
import { recordSession } from '@footboard/shared/capabilities/sessions/commands';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { HOUR, NOON, stayRow } from '../../board/rows.testkit.ts';
import { given } from './session-form.testkit.ts';

describe('stop limits', () => {
  const stop = DEFAULT_RULES.stop;
  const field = (form: ReturnType<typeof given>, slot: string, legend: string) =>
    form.wrapper
      .findAll('fieldset')
      .find((f) => f.find('legend').text() === slot)!
      .findAll('.amount')
      .find((a) => a.find('label').text() === legend)!
      .find('input');
  const put = async (form: ReturnType<typeof given>, slot: string, legend: string, text: string) => {
    await field(form, slot, legend).setValue(text);
    await field(form, slot, legend).trigger('change');
  };
  const sentReadings = (form: ReturnType<typeof given>) => {
    const { session } = recordSession.data.parse(form.sent[0]!.body.data);
    return { session, readings: session.readings };
  };

  it('stand on the sheet before anything is chosen, each number with its source', () => {
    const text = given().wrapper.find('.stop-limits').text().replace(/\s+/g, ' ');
    expect(text).toContain('Stop if: chest pain, dizzy or faint');
    expect(text).toContain(`Heart rate above ${stop.heartRateAbove.value} a minute`);
    expect(text).toContain(stop.heartRateAbove.source);
  });

  it('name the person’s own oxygen target where an order gives one', () => {
    const order = { about: 'oxygen-target', low: 88, high: 92 } as const;
    const form = given(stayRow({ orders: [{ event: 'e4' as never, order, at: NOON - HOUR }] }));
    expect(form.wrapper.find('.stop-limits').text()).toContain('below 88 %, the own target');
  });

  it('say nothing at a limit, and stop beyond it, with what to do and the source', async () => {
    const form = given();
    await put(form, 'Heart rate', 'Heart rate', String(stop.heartRateAbove.value));
    expect(form.wrapper.text()).not.toContain('Stop now');
    await put(form, 'Heart rate', 'Heart rate', String(stop.heartRateAbove.value + 1));
    const notice = form.wrapper.find('[role=alert]').text().replace(/\s+/g, ' ');
    expect(notice).toContain('Stop now');
    expect(notice).toContain('Sit or lie the person down, call for help, stay with them.');
    expect(notice).toContain(`Heart rate ${stop.heartRateAbove.value + 1} is above`);
    expect(notice).toContain(stop.heartRateAbove.source);
    const main = form.wrapper.findAll('.outcomes .main').map((b) => b.text());
    expect(main).toEqual(['Stopped']);
  });

  it('count what went wrong, too', async () => {
    const form = given();
    await form.tap('Dizzy');
    expect(form.wrapper.find('[role=alert]').text()).toContain('Stop now');
  });

  it('keep what was read with the session, at its time', async () => {
    const form = given();
    await put(form, 'Heart rate', 'Heart rate', '88');
    await form.tap('About 30 min ago');
    await form.tap('Done');
    const { readings, session } = sentReadings(form);
    expect(session.startedAt).toBe(new Date(NOON - HOUR / 2).toISOString());
    expect(readings).toEqual([{ kind: 'heart-rate', perMinute: 88, at: session.startedAt }]);
  });

  it('leave the readings out where nothing was read', async () => {
    const form = given();
    await form.tap('Done');
    expect(sentReadings(form).readings).toBeUndefined();
  });

  it('measure a fall from the pressure before, which is kept as from before the session', async () => {
    const form = given();
    await put(form, 'Pressure before, seated', 'systolic', '140');
    await put(form, 'Pressure before, seated', 'diastolic', '80');
    const during = (systolic: number) =>
      put(form, 'Pressure seated, during or after', 'systolic', String(systolic));
    await put(form, 'Pressure seated, during or after', 'diastolic', '75');
    await during(140 - stop.systolicFallWithEffort.value);
    expect(form.wrapper.text()).not.toContain('Stop now');
    await during(140 - stop.systolicFallWithEffort.value - 1);
    expect(form.wrapper.text()).toContain('Stop now');
    await form.tap('Done');
    const { readings, session } = sentReadings(form);
    const before = readings!.find((r) => r.kind === 'pressure' && r.systolic === 140)!;
    expect(Date.parse(before.at)).toBeLessThan(Date.parse(session.startedAt));
    expect(readings!.filter((r) => r.at === session.startedAt)).toHaveLength(1);
  });

  it('of a session told afterwards do not say "now"', async () => {
    const form = given();
    await form.tap('About 1 h ago');
    await put(form, 'Oxygen', 'saturation', String(stop.saturationBelow.value - 1));
    expect(form.wrapper.text()).toContain('This was beyond a stop limit');
    expect(form.wrapper.text()).not.toContain('Stop now');
  });

  it('are not judged on a figure that cannot be right, and nothing is sent with it', async () => {
    const form = given();
    await put(form, 'Heart rate', 'Heart rate', '880');
    expect(form.wrapper.text()).toContain('Put the figures marked above right first.');
    expect(form.wrapper.text()).not.toContain('Stop now');
    await form.tap('Done');
    expect(form.sent).toHaveLength(0);
  });
});
