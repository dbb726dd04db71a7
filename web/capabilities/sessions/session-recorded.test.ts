/** A session on the sheet: the ordinary one, and one that did not go as meant. */
import { describe, expect, it } from 'vitest';
import { recordSession } from '@footboard/shared/capabilities/sessions/commands';
import { HOUR, NOON, stayRow } from '../../board/rows.testkit.ts';
import { given } from './session-form.testkit.ts';

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
