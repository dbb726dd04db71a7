/** Mounts a form as the bedside page does, with an invented ward and a sender that a test can read. */
import { createPinia, setActivePinia } from 'pinia';
import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { nextTick, type Component } from 'vue';
import type { EventId, WardId } from '@footboard/shared/kernel/ids';
import type { CommandAccepted, Problem } from '@footboard/shared/wire/http';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import type { PreparedCommand, Sent } from '../../commanding/send-command.ts';
import { NOON, bedRow } from '../../board/rows.testkit.ts';
import { SENDER } from './outgoing.ts';
import { personAtTheBed } from './person-at-the-bed.ts';
import { ENTRY_CONTEXT, UNDO_FOR } from './use-entry.ts';

export interface Bench {
  readonly wrapper: VueWrapper;
  /** Every command that left, in order, tries included. */
  readonly sent: PreparedCommand[];
  /** What the next tries come to; accepted when empty. */
  readonly answers: ('unreachable' | Problem)[];
  /** The ward as the board shows it; a test may change it under the hands. */
  beds: BedView[];
  readonly recorded: string[];
  /** The server's clock goes on. */
  tick(ms: number): void;
  tap(words: string): Promise<void>;
  type(legend: string, text: string): Promise<void>;
}

const accepted = (command: PreparedCommand): CommandAccepted => ({
  commandId: command.commandId,
  outcome: 'accepted',
  position: 41,
  events: [
    { ward: command.ward, stream: 'stay/s1', version: 5, id: 'e9' as EventId, type: 'session-recorded' },
  ],
  shown: true,
  repeated: false,
});
const unreachable: Problem = {
  type: '/problems/unreachable',
  title: 'No answer',
  status: 0,
  detail: 'The server did not answer.',
  remedy: 'Check the network and try again.',
};
const words = (text: string) => text.replace(/\s+/g, ' ').replace('✓', '').trim();

/** An entry goes by way of the outbox: a few turns until it has settled. */
const settle = async () => {
  await flushPromises();
  await nextTick();
};

/** `undoFor`: how long an entry may be undone, ms; by default it goes out at once. */
export function bench(form: Component, props: Record<string, unknown>, undoFor = 0): Bench {
  const pinia = createPinia();
  setActivePinia(pinia);
  const sent: PreparedCommand[] = [];
  const answers: Bench['answers'] = [];
  const recorded: string[] = [];
  const clock = { now: NOON };
  const made: { beds: BedView[] } = { beds: [bedRow('7'), bedRow('8', null)] };
  const wrapper = mount(form, {
    props,
    global: {
      plugins: [pinia],
      provide: {
        [SENDER as symbol]: async (command: PreparedCommand): Promise<Sent> => {
          sent.push(command);
          const answer = answers.shift();
          if (answer === 'unreachable') return { kind: 'not-sent', problem: unreachable, command };
          if (answer) return { kind: 'problem', problem: answer };
          return { kind: 'accepted', accepted: accepted(command) };
        },
        [UNDO_FOR as symbol]: undoFor,
        [ENTRY_CONTEXT as symbol]: {
          ward: 'w1' as WardId,
          now: () => clock.now,
          person: (stay: string) => personAtTheBed(stay, 'bed-7', made.beds),
          recorded: (_: CommandAccepted, says: string) => recorded.push(says),
        },
      },
    },
  });
  return {
    wrapper,
    sent,
    answers,
    recorded,
    get beds() {
      return made.beds;
    },
    set beds(beds) {
      made.beds = beds;
    },
    tick(ms) {
      clock.now += ms;
    },
    async tap(label) {
      const all = wrapper.findAll('button, summary');
      const button =
        all.find((b) => words(b.text()) === label) ?? all.find((b) => words(b.text()).startsWith(label));
      if (!button) {
        throw new Error(
          `no button says "${label}"; there are: ${all.map((b) => words(b.text())).join(' | ')}`,
        );
      }
      if ((button.element as HTMLButtonElement).type === 'submit')
        await wrapper.find('form').trigger('submit');
      else await button.trigger('click');
      await settle();
    },
    async type(legend, text) {
      const label = wrapper.findAll('label').find((l) => words(l.text()).startsWith(legend));
      if (!label) throw new Error(`no field is called "${legend}"`);
      const field = wrapper.find(`[id="${label.attributes('for')}"]`);
      await field.setValue(text);
      await field.trigger('change');
      await settle();
    },
  };
}
