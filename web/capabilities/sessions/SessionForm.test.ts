import { afterEach, describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import { recordSession } from '@footboard/shared/capabilities/sessions/commands';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { bedRow, NOON, stayRow } from '../../board/rows.testkit.ts';
import { chooseLanguage, keepLanguage } from '../../i18n/language.ts';
import { bench } from '../entry/entry.testkit.ts';
import SessionForm from './SessionForm.vue';

const HOUR = 3_600_000;
const given = (view = stayRow()) => bench(SessionForm, { stay: 's1', view });

describe('the ordinary session', () => {
  it('is one command after the activity and Done: with "Session", three taps', async () => {
    const form = given();
    await form.tap('Walk');
    await form.tap('Done');
    expect(form.sent).toHaveLength(1);
    const [command] = form.sent;
    expect(command).toMatchObject({ ward: 'w1', name: 'record-session' });
    expect(command!.body).toMatchObject({
      occurred: { at: new Date(NOON).toISOString(), precision: 'exact' },
      expect: 'latest',
    });
    expect(recordSession.data.parse(command!.body.data)).toEqual({
      stay: 's1',
      session: {
        outcome: 'done',
        occasion: 'planned',
        activities: ['walk'],
        startedAt: new Date(NOON).toISOString(),
        events: [],
        firstTimeUp: false,
      },
    });
    expect(form.recorded).toEqual(['Session, done']);
    expect(form.wrapper.emitted('recorded')).toHaveLength(1);
  });

  it('has the goal activity chosen beforehand, so that the usual one needs no chip', async () => {
    const form = given();
    await form.tap('Done');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { activities: ['stand'] } });
  });

  it('adds a second activity once the first was chosen by hand', async () => {
    const form = given();
    await form.tap('Stand');
    await form.tap('Walk');
    await form.tap('Done');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { activities: ['stand', 'walk'] } });
  });

  it('is with care after one tap', async () => {
    const form = given();
    await form.tap('With toilet');
    await form.tap('Done');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { occasion: 'toilet' } });
  });

  it('leaves an amount that nobody typed out, and never sends it as nought', async () => {
    const form = given();
    await form.tap('Done');
    const { session } = form.sent[0]!.body.data as { session: object };
    expect(Object.keys(session)).not.toContain('minutesOutOfBed');
    expect(Object.keys(session)).not.toContain('metres');
  });

  it('says when it happened if that is not now', async () => {
    const form = given();
    await form.tap('About 1 h ago');
    await form.tap('Done');
    expect(form.sent[0]!.body.occurred).toEqual({
      at: new Date(NOON - HOUR).toISOString(),
      precision: 'about',
    });
  });

  it('gives a chair spell a time by which the person is back in bed', async () => {
    const form = given();
    await form.tap('In the chair');
    await form.tap('Done');
    expect(form.sent[0]!.body.data).toMatchObject({
      session: { left: 'chair', backToBedBy: new Date(NOON + HOUR).toISOString() },
    });
  });

  it('with no activity is not sent, and says what is missing', async () => {
    const form = given(stayRow({ lastUp: null, today: { ...stayRow().today, goal: null } }));
    await form.tap('Done');
    expect(form.sent).toHaveLength(0);
    expect(form.wrapper.text()).toContain('Say what was done.');
  });

  it('keeps an impossible amount at its field, with the unit', async () => {
    const form = given();
    await form.type('or in metres', '9000');
    await form.tap('Done');
    expect(form.sent).toHaveLength(0);
    const field = form.wrapper.findAll('input').find((i) => i.attributes('aria-invalid') === 'true')!;
    expect(field.element.value).toBe('9000');
    expect(form.wrapper.text()).toContain('Distance (metres) is at most 5000.');
  });
});

describe('a session that did not go as meant', () => {
  it('not done is a group of reasons first, the example after it if wanted', async () => {
    const form = given();
    await form.tap('Not done');
    await form.tap('The person said no');
    await form.tap('Tired');
    await form.tap('Record not done');
    expect(recordSession.data.parse(form.sent[0]!.body.data)).toMatchObject({
      session: { outcome: 'not-done', notDone: { group: 'said-no', example: 'tired' }, activities: [] },
    });
  });

  it('stopped reminds to make safe before it asks what happened', async () => {
    const form = given();
    await form.tap('Stopped');
    expect(form.wrapper.text()).toContain('First make the person safe');
    await form.tap('Dizzy');
    await form.tap('Record stopped');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { outcome: 'stopped', events: ['dizzy'] } });
  });
});

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

describe('an entry and the network', () => {
  it('is kept as "not sent yet", and a further try is the same command with the same id', async () => {
    const form = given();
    form.answers.push('unreachable');
    await form.tap('Done');
    expect(form.wrapper.text()).toContain('Not sent yet');
    expect(form.recorded).toEqual([]);
    await form.tap('Try again');
    expect(form.sent).toHaveLength(2);
    const [first, second] = form.sent;
    expect(second).toEqual({ ...first, body: { ...first!.body, fromOutbox: true } });
    expect(form.recorded).toEqual(['Session, done']);
  });

  it('is not doubled by a second tap while it is being sent', async () => {
    const form = given();
    const done = form.wrapper.findAll('button').find((b) => b.text() === 'Done')!;
    void done.trigger('click');
    await form.tap('Done').catch(() => undefined);
    expect(form.sent).toHaveLength(1);
  });

  it("shows a refusal's words and remedy, and lets the entry be put right", async () => {
    const form = given();
    form.answers.push({
      type: '/problems/stay-ended',
      title: 'The stay has ended',
      status: 422,
      detail: 'This person left the ward at 11:40.',
      remedy: 'Enter it with the time it happened.',
      errors: [{ pointer: '/data/session/metres', detail: 'too far' }],
    });
    await form.tap('Done');
    expect(form.wrapper.text()).toContain('This person left the ward at 11:40.');
    expect(form.wrapper.text()).toContain('Enter it with the time it happened.');
    await form.tap('Done');
    expect(form.sent).toHaveLength(2);
    expect(form.sent[1]!.commandId).not.toBe(form.sent[0]!.commandId);
  });
});

// Acceptance scenario: beds are swapped while a nurse is mid-entry; the entry lands on the person, not the bed.
describe('the person in the bed changes while the entry is written', () => {
  it('says so before sending, and sends to the stay it was begun for', async () => {
    const form = given();
    form.beds = [bedRow('7', stayRow({ stay: 's2' as never })), bedRow('8', stayRow())];
    await form.tap('Done');
    expect(form.sent).toHaveLength(0);
    expect(form.wrapper.text()).toContain('The person in this bed has changed');
    expect(form.wrapper.text()).toContain('now in bed 8');
    await form.tap('Send it for the person I began it for');
    expect(form.sent).toHaveLength(1);
    expect(form.sent[0]!.body.data).toMatchObject({ stay: 's1' });
  });

  it('can be given up without anything being sent', async () => {
    const form = given();
    form.beds = [bedRow('7', null)];
    await form.tap('Done');
    expect(form.wrapper.text()).toContain('no longer on this board');
    await form.tap('Do not send it');
    expect(form.sent).toHaveLength(0);
    expect(form.wrapper.emitted('discard')).toHaveLength(1);
  });
});

describe('the language of an open form', () => {
  keepLanguage();
  afterEach(() => chooseLanguage(null));

  it('follows the screen in its choices too, and keeps what was chosen', async () => {
    const form = given();
    await form.tap('Stand');
    chooseLanguage('de');
    await nextTick();
    const said = form.wrapper.findAll('button').map((button) => button.text().replace('✓', '').trim());
    expect(said).toEqual(expect.arrayContaining(['Stehen', 'Gehen', 'Beim Toilettengang', 'Gemacht']));
    expect(said.filter((one) => /^(Stand|Walk|Done|With toilet)/.test(one))).toEqual([]);
    await form.tap('Gemacht');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { activities: ['stand'] } });
  });
});

describe('COORD-3 the equipment of the plan', () => {
  const lifted = () => {
    const view = stayRow();
    const day = view.plan!.day.map((one) => ({ ...one, aid: 'sling-lift' as const }));
    return given({ ...view, plan: { ...view.plan!, day } });
  };
  const sent = (form: ReturnType<typeof given>) =>
    (form.sent[0]!.body.data as { session: Record<string, unknown> }).session;

  it('is named, and one tap says that it was not used and one why', async () => {
    const form = lifted();
    await form.tap('Chair');
    expect(form.wrapper.text()).toContain('The plan’s equipment: sling lift');
    await form.tap('It was not used');
    await form.tap('Not to hand');
    await form.tap('Done');
    expect(sent(form)['aidNotUsed']).toEqual({ planned: 'sling-lift', because: 'not-to-hand' });
    expect(recordSession.data.safeParse(form.sent[0]!.body.data).success).toBe(true);
  });

  it('asks for nothing when nobody taps, and is not asked of an activity that has none', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('Done');
    expect(Object.keys(sent(form))).not.toContain('aidNotUsed');
    const walking = lifted();
    await walking.tap('Walk');
    expect(walking.wrapper.text()).not.toContain('The plan’s equipment');
  });

  it('asks why where other equipment was used; left open it goes without a reason', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('3 or more');
    await form.tap('Belt');
    expect(form.wrapper.text()).toContain('Why not sling lift?');
    await form.tap('Done');
    expect(sent(form)).toMatchObject({
      help: { people: 3, aid: 'belt' },
      aidNotUsed: { planned: 'sling-lift' },
    });
  });

  it('forgets the tap when the activity turns out to be another', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('It was not used');
    await form.tap('Chair');
    await form.tap('Walk');
    await form.tap('Done');
    expect(Object.keys(sent(form))).not.toContain('aidNotUsed');
  });
});
