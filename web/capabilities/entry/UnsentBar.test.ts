import { createPinia, setActivePinia } from 'pinia';
import { flushPromises, mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { CommandId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { PreparedCommand, Sent } from '../../commanding/send-command.ts';
import { useOutbox } from '../../outbox/outbox.ts';
import { SENDER } from './outgoing.ts';
import UnsentBar from './UnsentBar.vue';

const entry = (id: string, stay: string): PreparedCommand => ({
  ward: 'w1' as WardId,
  name: 'place-hold',
  commandId: id as CommandId,
  staff: 'ada' as StaffId,
  body: {
    commandId: id as CommandId,
    occurred: { at: '2026-11-25T12:00:00.000Z' },
    entered: { at: '2026-11-25T12:00:00.000Z', offsetMinutes: 0 },
    source: { kind: 'person' },
    expect: 'latest',
    data: { stay, scope: 'walking' },
  },
});
const problem = (status: number) => ({
  type: '/problems/x',
  title: 'No',
  status,
  detail: `Refused with ${status}`,
  remedy: 'Ask a nurse',
});

/** Each entry is answered with the status in its id; 0 is silence, 200 is taken. */
async function bar(...ids: string[]) {
  const pinia = createPinia();
  setActivePinia(pinia);
  const network = { back: false };
  const sender = async (command: PreparedCommand): Promise<Sent> => {
    const status = network.back ? 200 : Number(command.commandId.split('-')[0]);
    if (status === 0) return { kind: 'not-sent', problem: problem(0), command };
    if (status !== 200) return { kind: 'problem', problem: problem(status) };
    const { commandId } = command;
    return {
      kind: 'accepted',
      accepted: { commandId, outcome: 'accepted', position: 1, events: [], shown: true, repeated: false },
    };
  };
  const wrapper = mount(UnsentBar, {
    global: { plugins: [pinia], provide: { [SENDER as symbol]: sender } },
    attachTo: document.body,
  });
  for (const [i, id] of ids.entries()) await useOutbox().send(entry(id, `s${i}`), `Hold ${id}`);
  await flushPromises();
  const text = () => document.body.textContent!.replace(/\s+/g, ' ');
  const tap = async (words: string) => {
    const found = [...document.body.querySelectorAll('button')].find((b) => b.textContent!.trim() === words);
    if (!found) throw new Error(`no button "${words}"`);
    found.click();
    await flushPromises();
  };
  return { wrapper, text, tap, network };
}
afterEach(() => (document.body.innerHTML = ''));

describe('the bar of what is not on the board', () => {
  it('is not there while nothing is unsent', async () => {
    const { text } = await bar('200-a');
    expect(text()).not.toContain('Not on the board');
  });

  it('counts what waits, needs sign-in and was refused, apart', async () => {
    const { text } = await bar('0-a', '0-b', '401-c', '422-d');
    expect(text()).toContain('2 wait for the network, 1 needs sign-in, 1 refused');
    // jsdom has no IndexedDB: the bar says what that means.
    expect(text()).toContain('This browser keeps nothing across a reload');
  });

  it('shows what was entered in words, the reason and the remedy, and lets a person close a refusal', async () => {
    const { text, tap, wrapper } = await bar('422-a');
    await tap('Show them');
    expect(text()).toContain('Hold 422-a');
    expect(text()).toContain('Refused with 422. Ask a nurse.');
    expect(text()).toContain('Scope Walking'.replace(' ', ''));
    await tap('I have dealt with it');
    expect(text()).not.toContain('Refused with 422');
    expect(wrapper.emitted('recorded')).toBeUndefined();
  });

  it('takes two taps not to send what waits, and says what that means', async () => {
    const { text, tap } = await bar('0-a');
    await tap('Show them');
    await tap('Do not send it');
    expect(text()).toContain('It may have reached the server all the same');
    await tap('Keep it');
    expect(text()).toContain('1 waits for the network');
    await tap('Do not send it');
    await tap('Do not send it');
    expect(text()).not.toContain('Hold 0-a');
  });

  it('says what was recorded when the network is back', async () => {
    const { tap, wrapper, network, text } = await bar('0-a', '0-b');
    network.back = true;
    await tap('Try again');
    expect(wrapper.emitted('recorded')).toEqual([['Hold 0-a'], ['Hold 0-b']]);
    expect(text()).not.toContain('Not on the board');
  });
});
