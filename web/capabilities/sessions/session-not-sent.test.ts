/** A session between the tap and the log: no network, a refusal, another person in the bed. */
import { describe, expect, it } from 'vitest';
import { bedRow, stayRow } from '../../board/rows.testkit.ts';
import { given } from './session-form.testkit.ts';

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
