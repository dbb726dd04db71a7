/**
 * One entry on a sheet, from "being written" to "recorded": checks it by the command's own schema,
 * asks when the person in the bed has changed, sends it, and keeps it when the network is gone.
 */
import { computed, inject, shallowRef, type ComputedRef, type InjectionKey, type ShallowRef } from 'vue';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toIso, type EpochMs, type Precision } from '@footboard/shared/kernel/times';
import type { CommandAccepted, Problem } from '@footboard/shared/wire/http';
import { prepareCommand, type Ask, type PreparedCommand, type Sent } from '../../commanding/send-command.ts';
import { checkBeforeSending, faultsOf, type Fault } from './check.ts';
import { useSender, useUnsent } from './outgoing.ts';
import type { PersonAtTheBed } from './person-at-the-bed.ts';

/** What a sheet needs to know of the page it lies on. */
export interface EntryContext {
  readonly ward: WardId;
  /** The server's clock, as last heard and carried on by this device. */
  readonly now: () => EpochMs;
  /** Whether the stay that the entry is for is still in the bed the page shows. */
  readonly person: (stay: string) => PersonAtTheBed;
  /** Called once with each entry that was recorded. */
  readonly recorded: (accepted: CommandAccepted, says: string) => void;
}
export const ENTRY_CONTEXT: InjectionKey<EntryContext> = Symbol('EntryContext');
export function useEntryContext(): EntryContext {
  const context = inject(ENTRY_CONTEXT);
  if (!context) throw new Error('no entry context: mount this under the bedside or the stay page');
  return context;
}

export type EntryState =
  | { readonly at: 'writing' }
  | { readonly at: 'person-changed'; readonly nowIn: string | null; readonly bedEmpty: boolean }
  | { readonly at: 'sending' }
  | { readonly at: 'recorded'; readonly shown: boolean }
  | { readonly at: 'refused'; readonly problem: Problem }
  | { readonly at: 'not-sent'; readonly problem: Problem };

export interface SubmitOptions {
  /** How the entry is named while it waits, for example "Session, done". */
  readonly says: string;
  /** The stay the entry is for; null for an arrival. */
  readonly stay: string | null;
  /** When it happened, if not now. */
  readonly occurred?: EpochMs;
  readonly precision?: Precision;
  readonly expect?: NonNullable<Ask['expect']>;
}

export interface Entry {
  readonly state: Readonly<ShallowRef<EntryState>>;
  readonly faults: Readonly<ShallowRef<readonly Fault[]>>;
  readonly busy: ComputedRef<boolean>;
  submit(data: object, options: SubmitOptions): Promise<void>;
  /** After "person changed": send it all the same, for the stay it was begun for. */
  sendAllTheSame(): Promise<void>;
  /** After "not sent": the same command once more. */
  tryAgain(): Promise<void>;
}

export function useEntry(command: CommandType): Entry {
  const context = useEntryContext();
  const sender = useSender();
  const unsent = useUnsent();
  const state = shallowRef<EntryState>({ at: 'writing' });
  const faults = shallowRef<readonly Fault[]>([]);
  let held: { command: PreparedCommand; says: string } | null = null;

  async function go(says: string, sending: Promise<Sent | null>): Promise<void> {
    state.value = { at: 'sending' };
    const sent = await sending;
    if (sent?.kind === 'accepted') {
      state.value = { at: 'recorded', shown: sent.accepted.shown };
      context.recorded(sent.accepted, says);
    } else if (sent?.kind === 'problem') {
      faults.value = faultsOf(sent.problem);
      state.value = { at: 'refused', problem: sent.problem };
    } else if (sent) {
      state.value = { at: 'not-sent', problem: sent.problem };
    }
  }

  return {
    state,
    faults,
    busy: computed(() => state.value.at === 'sending'),
    async submit(data, options) {
      // A second tap while the first is on its way, or before "not sent" is settled, must not make a second entry.
      if (state.value.at === 'sending' || state.value.at === 'not-sent') return;
      faults.value = checkBeforeSending(command, data);
      if (faults.value.length > 0) {
        state.value = { at: 'writing' };
        return;
      }
      const prepared = prepareCommand({
        ward: context.ward,
        name: command.name,
        data,
        occurred: {
          at: toIso(Math.round(options.occurred ?? context.now())),
          precision: options.precision ?? 'exact',
        },
        ...(options.expect ? { expect: options.expect } : {}),
      });
      held = { command: prepared, says: options.says };
      const person = options.stay === null ? { same: true as const } : context.person(options.stay);
      if (!person.same) {
        state.value = { at: 'person-changed', nowIn: person.nowIn, bedEmpty: person.bedEmpty };
        return;
      }
      await go(options.says, unsent.send(prepared, options.says, sender));
    },
    async sendAllTheSame() {
      if (!held || state.value.at !== 'person-changed') return;
      await go(held.says, unsent.send(held.command, held.says, sender));
    },
    async tryAgain() {
      if (!held || state.value.at !== 'not-sent') return;
      await go(held.says, unsent.send(held.command, held.says, sender));
    },
  };
}
