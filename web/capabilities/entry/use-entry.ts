/**
 * One entry on a sheet, from "being written" to "recorded": checks it by the command's own schema,
 * asks when the person in the bed has changed, asks who signs it, and sends it by way of the outbox,
 * which keeps it when the network is gone, nobody is signed in, or the server says no.
 */
import {
  computed,
  inject,
  onMounted,
  onScopeDispose,
  ref,
  shallowRef,
  type ComputedRef,
  type InjectionKey,
  type ShallowRef,
} from 'vue';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toIso, type EpochMs, type Precision } from '@footboard/shared/kernel/times';
import type { CommandAccepted, Problem } from '@footboard/shared/wire/http';
import { prepareCommand, type Ask, type PreparedCommand, type Sent } from '../../commanding/send-command.ts';
import { useMeStore } from '../../people/me-store.ts';
import { needsSignIn } from '../../people/sign-in-first.ts';
import { useWhoStore } from '../../people/who-store.ts';
import { useBoardStore } from '../../sync/board-store.ts';
import { checkBeforeSending, faultsOf, type Fault } from './check.ts';
import { useOutgoing } from './outgoing.ts';
import { useSentLate } from './sent-late.ts';
import type { PersonAtTheBed } from './person-at-the-bed.ts';

/** What a sheet needs to know of the page it lies on. */
export interface EntryContext {
  readonly ward: WardId;
  /** The server's clock, as last heard and carried on by this device. */
  readonly now: () => EpochMs;
  /** Whether the stay that the entry is for is still in the bed the page shows. */
  readonly person: (stay: string) => PersonAtTheBed;
  /** Serial of the paper sheet that is keyed in here: `now` is then the time written on it. */
  readonly paper?: () => string;
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
  /** Kept, and not sent before `until` (this device's clock): it can still be undone. */
  | { readonly at: 'undo'; readonly until: number }
  | { readonly at: 'sending' }
  | { readonly at: 'recorded'; readonly shown: boolean }
  | { readonly at: 'refused'; readonly problem: Problem }
  /** In the outbox: it goes out by itself when the network is back. */
  | { readonly at: 'not-sent'; readonly problem: Problem }
  /** In the outbox until the one who made it signs in. */
  | { readonly at: 'needs-sign-in'; readonly problem: Problem | null };

export interface SubmitOptions {
  /** How the entry is named while it waits, for example "Session, done". */
  readonly says: string;
  /** The stay the entry is for; null for an arrival. */
  readonly stay: string | null;
  /** When it happened, if not now. */
  readonly occurred?: EpochMs;
  readonly precision?: Precision;
  readonly expect?: NonNullable<Ask['expect']>;
  /** It waits a few seconds in sight, so that a slip of the hand can be undone before anything is sent. */
  readonly undo?: boolean;
}

/** How long an entry may be undone, ms. Practice, no source: long enough to read one line. */
const UNDO_MS = 5_000;
/** Another length, for a page that is tested. */
export const UNDO_FOR: InjectionKey<number> = Symbol('UndoFor');

export interface Entry {
  readonly state: Readonly<ShallowRef<EntryState>>;
  readonly faults: Readonly<ShallowRef<readonly Fault[]>>;
  readonly busy: ComputedRef<boolean>;
  /** What the entry under way is called. */
  readonly says: ComputedRef<string>;
  /** Within the seconds after the last tap: nothing is sent, the form is as it was. */
  undo(): Promise<void>;
  /** Does not wait for them to pass. */
  sendNow(): Promise<void>;
  submit(data: object, options: SubmitOptions): Promise<void>;
  /** After "person changed": send it all the same, for the stay it was begun for. */
  sendAllTheSame(): Promise<void>;
  /** After "not sent": the same command once more. */
  tryAgain(): Promise<void>;
  /** After "needs sign-in": ask once more who signs it. */
  sign(): Promise<void>;
}

export function useEntry(command: CommandType): Entry {
  const context = useEntryContext();
  const outbox = useOutgoing();
  const late = useSentLate();
  const me = useMeStore();
  const board = useBoardStore();
  const state = shallowRef<EntryState>({ at: 'writing' });
  const at = (): EntryState['at'] => state.value.at;
  const faults = shallowRef<readonly Fault[]>([]);
  const undoFor = inject(UNDO_FOR, UNDO_MS);
  const saysNow = ref('');
  let leaving: ReturnType<typeof setTimeout> | undefined;
  let keptBack: Promise<void> = Promise.resolve();
  let held: { command: PreparedCommand; says: string; inPlaceOf: string | undefined } | null = null;

  function settle(sent: Sent | null): void {
    if (sent?.kind === 'accepted') {
      state.value = { at: 'recorded', shown: sent.accepted.shown };
    } else if (sent?.kind === 'problem') {
      faults.value = faultsOf(sent.problem);
      // With nobody named at all there is nobody to wait for: the form stays open for whoever writes.
      const signs = sent.problem.status === 401 && (me.accounts || held?.command.staff);
      state.value = { at: signs ? 'needs-sign-in' : 'refused', problem: sent.problem };
    } else if (sent) {
      state.value = { at: 'not-sent', problem: sent.problem };
    }
  }
  async function go(sending: Promise<Sent | null>): Promise<void> {
    state.value = { at: 'sending' };
    const sent = await sending;
    settle(sent);
    if (sent?.kind === 'accepted' && held) {
      context.recorded(sent.accepted, held.says);
      // The beds may have been changed in the seconds in which it could be undone.
      late.settled(held.command, held.says, Date.now(), sent);
    } else if (at() === 'needs-sign-in') await sign();
  }
  // It may go out by itself while the form is still open; the page hears of that from the outbox.
  onScopeDispose(
    outbox.onSettled(({ command: { commandId } }, sent) => {
      if (held?.command.commandId === commandId) settle(sent);
    }),
  );

  /** In sight for a few seconds, and kept meanwhile: whatever becomes of the page, it goes out. */
  async function waitForUndo(): Promise<void> {
    if (!held) return;
    const until = Date.now() + undoFor;
    state.value = { at: 'undo', until };
    leaving = setTimeout(() => void sendNow(), undoFor);
    // A moment later by itself, should this page be gone by then.
    keptBack = outbox.keepBack(held.command, held.says, until + 1_000);
    await keptBack;
  }
  async function sendNow(): Promise<void> {
    clearTimeout(leaving);
    if (at() === 'undo') await send();
  }
  const hidden = () => {
    if (document.visibilityState === 'hidden') void sendNow();
  };
  onMounted(() => document.addEventListener('visibilitychange', hidden));
  onScopeDispose(() => {
    clearTimeout(leaving);
    document.removeEventListener('visibilitychange', hidden);
    // Leaving the sheet is no undo: what was tapped as done goes out.
    if (at() !== 'undo' || !held) return;
    state.value = { at: 'sending' };
    void leave(held);
  });
  async function leave({ command: left, says, inPlaceOf }: NonNullable<typeof held>): Promise<void> {
    await keptBack;
    if (asksFirst(left)) return outbox.hold(left, says, inPlaceOf);
    await outbox.retry(left.commandId);
    if (inPlaceOf !== undefined) await outbox.close(inPlaceOf);
  }

  const asksFirst = ({ staff }: PreparedCommand): boolean =>
    me.accounts && !me.proven && (staff === null || board.age.state === 'live');
  async function send(): Promise<void> {
    if (!held) return;
    const { command: prepared, says, inPlaceOf } = held;
    if (!asksFirst(prepared)) return go(outbox.send(prepared, says, inPlaceOf));
    await outbox.hold(prepared, says, inPlaceOf);
    state.value = { at: 'needs-sign-in', problem: null };
    await sign();
  }
  async function sign(): Promise<void> {
    if (!held || at() !== 'needs-sign-in') return;
    const { ward, name, staff, commandId } = held.command;
    const proof = await needsSignIn({ ward, command: name, staff });
    if (proof === 'not-now' || state.value.at !== 'needs-sign-in') return;
    const signs = useWhoStore().chosenId;
    // Never sent so far, it is of whoever has just put their name to it.
    const first = state.value.problem === null && signs !== null && signs !== staff;
    if (first) await outbox.claim(commandId, signs);
    await go(outbox.again(commandId));
  }

  return {
    state,
    faults,
    busy: computed(() => state.value.at === 'sending'),
    says: computed(() => saysNow.value),
    sign,
    sendNow,
    async undo() {
      if (at() !== 'undo' || !held) return;
      clearTimeout(leaving);
      const { commandId } = held.command;
      held = null;
      state.value = { at: 'writing' };
      // Not before it is kept: what is taken back must not be written down after that.
      await keptBack;
      await outbox.close(commandId);
    },
    async submit(data, options) {
      // A second tap while the first is on its way, or before it is settled, must not make a second entry.
      if (['undo', 'sending', 'not-sent', 'needs-sign-in'].includes(at())) return;
      const refused = at() === 'refused' ? held?.command.commandId : undefined;
      faults.value = checkBeforeSending(command, data);
      if (faults.value.length > 0) {
        if (at() !== 'refused') state.value = { at: 'writing' };
        return;
      }
      const prepared = prepareCommand({
        ward: context.ward,
        name: command.name,
        data,
        occurred: {
          at: toIso(Math.round(options.occurred ?? context.now())),
          precision: context.paper ? 'about' : (options.precision ?? 'exact'),
        },
        ...(context.paper ? { paper: context.paper() } : {}),
        ...(options.expect ? { expect: options.expect } : {}),
      });
      held = { command: prepared, says: options.says, inPlaceOf: refused };
      saysNow.value = options.says;
      const person = options.stay === null ? { same: true as const } : context.person(options.stay);
      if (!person.same) {
        state.value = { at: 'person-changed', nowIn: person.nowIn, bedEmpty: person.bedEmpty };
        return;
      }
      if (options.undo && undoFor > 0) await waitForUndo();
      else await send();
    },
    async sendAllTheSame() {
      if (held && state.value.at === 'person-changed') await send();
    },
    async tryAgain() {
      if (held && state.value.at === 'not-sent') await go(outbox.again(held.command.commandId));
    },
  };
}
