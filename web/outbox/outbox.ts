/**
 * The outbox of this browser. Every entry is kept here before it is sent, and leaves when the server
 * has taken it or a person has closed it; a reload, a crash, an expired session or signing out takes
 * nothing away. An entry gets its command id once: a further try is the same command, so that it can
 * never count twice.
 */
import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import type { CommandId, StaffId } from '@footboard/shared/kernel/ids';
import type { Problem } from '@footboard/shared/wire/http';
import { deliverCommand, type PreparedCommand, type Sent } from '../commanding/send-command.ts';
import { newId } from '../people/device.ts';
import { after, laneOf, toSend, type OutboxEntry } from './entry.ts';
import { amongTabs, inOneTab } from './one-tab.ts';
import { inMemory, openOutboxStorage, type OutboxStorage } from './storage.ts';

export type Sender = (command: PreparedCommand) => Promise<Sent>;
/** Called when an entry that nobody was waiting for has been settled. */
export type Settled = (entry: OutboxEntry, sent: Sent) => void;

const toTheServer: Sender = (command) => deliverCommand(command);

export const useOutbox = defineStore('outbox', () => {
  const entries = shallowRef<readonly OutboxEntry[]>([]);
  /** Ids of what is on its way from this tab. */
  const trying = shallowRef<ReadonlySet<string>>(new Set());
  /** False when a reload would lose what is unsent. */
  const lasting = ref(true);
  let storage: OutboxStorage = inMemory();
  let opened: Promise<void> | null = null;
  let others: ReturnType<typeof amongTabs> | null = null;
  let sender: Sender = toTheServer;
  const lanes = new Map<string, Promise<void>>();
  const waiters = new Map<string, (sent: Sent) => void>();
  /** Ids that are on this page alone so far, or for good where the storage is full. */
  const unkept = new Set<string>();
  const notBefore = new Map<string, number>();
  const done = new Map<string, Sent>();
  const listeners = new Set<Settled>();

  const find = (commandId: string) => entries.value.find((e) => e.command.commandId === commandId);
  const listed = (entry: OutboxEntry, inPlaceOf = entry.command.commandId as string) => {
    const id = entry.command.commandId;
    const rest = entries.value.filter(
      ({ command }) => command.commandId !== id && command.commandId !== inPlaceOf,
    );
    entries.value = [...rest, entry].toSorted((a, b) => a.turn - b.turn || a.made - b.made);
  };

  /** Opens what this browser has kept; once. */
  function open(choose: () => Promise<OutboxStorage> = openOutboxStorage): Promise<void> {
    return (opened ??= (async () => {
      storage = await choose();
      lasting.value = storage.lasting;
      if (storage.lasting) others = amongTabs(() => void reread());
      await reread();
    })());
  }

  async function reread(): Promise<void> {
    if (!storage.lasting && entries.value.length > 0) return;
    const kept = await storage.all().catch(() => null);
    if (!kept) return;
    const here = new Map(entries.value.map((e) => [e.command.commandId as string, e]));
    const known = kept.map((e) => {
      const mine = here.get(e.command.commandId);
      // Kept before this page knew it: whatever became of its first try, it comes from the outbox now.
      if (mine && trying.value.has(e.command.commandId)) return mine;
      return { ...e, tries: e.tries || (mine?.tries ?? 1) };
    });
    const ids = new Set(known.map((e) => e.command.commandId as string));
    const putting = entries.value.filter(
      ({ command }) => !ids.has(command.commandId) && unkept.has(command.commandId),
    );
    entries.value = [...known, ...putting].toSorted((a, b) => a.turn - b.turn || a.made - b.made);
  }

  async function keep(entry: OutboxEntry, inPlaceOf?: string): Promise<void> {
    unkept.add(entry.command.commandId);
    listed(entry, inPlaceOf);
    await open();
    try {
      await storage.put(entry, inPlaceOf);
      unkept.delete(entry.command.commandId);
    } catch {
      // The browser's storage is full or gone: the page keeps it, and says what a reload would do.
      lasting.value = false;
    }
    others?.tell();
  }
  async function away(commandId: string): Promise<void> {
    unkept.delete(commandId);
    entries.value = entries.value.filter((e) => e.command.commandId !== commandId);
    await storage.take(commandId).catch(() => undefined);
    others?.tell();
  }

  const made = (command: PreparedCommand, says: string): OutboxEntry => ({
    command,
    says,
    state: 'waiting',
    made: Date.now(),
    turn: Math.max(0, ...entries.value.map((e) => e.turn)) + 1,
    tries: 0,
    problem: null,
  });

  /** Keeps an entry until its author signs in. `inPlaceOf`: the refused one that it puts right. */
  const hold = (command: PreparedCommand, says: string, inPlaceOf?: string): Promise<void> =>
    keep({ ...made(command, says), state: 'needs-sign-in' }, inPlaceOf);

  /**
   * Keeps an entry that may still be undone until `sendsAt`. If nobody sends it before or takes it back,
   * it goes out by itself then, also after a reload or a crash.
   */
  async function keepBack(command: PreparedCommand, says: string, sendsAt: number): Promise<void> {
    await keep({ ...made(command, says), sendsAt });
    setTimeout(() => void run(laneOf(command)), Math.max(0, sendsAt - Date.now()) + 50);
  }

  /** Keeps an entry and sends it, after those of the same lane that wait. */
  async function send(command: PreparedCommand, says: string, inPlaceOf?: string): Promise<Sent> {
    const { commandId } = command;
    const answer = new Promise<Sent>((resolve) => waiters.set(commandId, resolve));
    await keep(made(command, says), inPlaceOf);
    void run(laneOf(command));
    return answer;
  }

  /** Sends a listed entry again, as it is; null when it is gone and nothing is known of it. */
  async function again(commandId: string): Promise<Sent | null> {
    const entry = find(commandId);
    if (!entry) return done.get(commandId) ?? null;
    notBefore.delete(laneOf(entry.command));
    const before = waiters.get(commandId);
    const answer = new Promise<Sent>((resolve) =>
      waiters.set(commandId, (sent) => {
        before?.(sent);
        resolve(sent);
      }),
    );
    if (entry.state !== 'waiting') await keep({ ...entry, state: 'waiting' });
    void run(laneOf(entry.command));
    return answer;
  }

  /** The same with nobody waiting for the answer: `onSettled` tells. */
  async function retry(commandId: string): Promise<void> {
    const entry = find(commandId);
    if (!entry) return;
    notBefore.delete(laneOf(entry.command));
    const { sendsAt, ...ready } = entry;
    if (entry.state !== 'waiting' || sendsAt !== undefined) await keep({ ...ready, state: 'waiting' });
    await run(laneOf(entry.command));
  }

  /** A refused entry once more, as a new command: what was refused stays refused under its id. */
  async function anew(commandId: string): Promise<void> {
    const entry = find(commandId);
    if (entry?.state !== 'refused') return;
    const id = newId() as CommandId;
    const { command, says } = entry;
    const next = { ...command, commandId: id, body: { ...command.body, commandId: id } };
    await keep({ ...made(next, says), tries: entry.tries }, commandId);
    await run(laneOf(command));
  }

  /** Puts a name to an entry that was never sent under one. Never changes whose an entry is. */
  async function claim(commandId: string, staff: StaffId): Promise<void> {
    const entry = find(commandId);
    if (!entry || (entry.command.staff !== null && entry.tries > 0)) return;
    await keep({ ...entry, command: { ...entry.command, staff } });
  }

  /** One pass over a lane, after the one that is under way. */
  function run(lane: string): Promise<void> {
    const pass = (lanes.get(lane) ?? Promise.resolve())
      .then(async () => {
        const waited = entries.value.some(
          (e) => laneOf(e.command) === lane && waiters.has(e.command.commandId),
        );
        const ran = await inOneTab(lane, waited, () => sendLane(lane));
        if (!ran) leaveWaiting(lane, busyElsewhere);
      })
      .catch(() => leaveWaiting(lane, busyElsewhere));
    lanes.set(lane, pass);
    return pass;
  }

  async function sendLane(lane: string): Promise<void> {
    await open();
    if (storage.lasting) await reread();
    for (;;) {
      const entry = entries.value.find(
        (e) => e.state === 'waiting' && laneOf(e.command) === lane && (e.sendsAt ?? 0) <= Date.now(),
      );
      if (!entry) break;
      const sent =
        (notBefore.get(lane) ?? 0) > Date.now() && entry.problem
          ? ({ kind: 'not-sent', problem: entry.problem, command: entry.command } as const)
          : await sendOne(entry);
      // Those behind it keep their place: they are not sent past it.
      if (sent.kind === 'not-sent') return leaveWaiting(lane, sent.problem);
    }
    // Whoever waits for an entry that another tab has sent meanwhile.
    for (const [id, tell] of waiters) {
      if (find(id) || trying.value.has(id)) continue;
      waiters.delete(id);
      tell(done.get(id) ?? { kind: 'problem', problem: sentElsewhere });
    }
  }

  async function sendOne(entry: OutboxEntry): Promise<Sent> {
    const { commandId } = entry.command;
    trying.value = new Set([...trying.value, commandId]);
    const sent = await sender(toSend(entry)).catch((): Sent => ({
      kind: 'not-sent',
      problem: busyElsewhere,
      command: entry.command,
    }));
    trying.value = new Set([...trying.value].filter((id) => id !== commandId));
    if (sent.kind === 'not-sent' && sent.again !== undefined) {
      notBefore.set(laneOf(entry.command), Date.now() + sent.again);
    }
    const next = after(entry, sent);
    // Known before the entry leaves the list: whoever asks meanwhile must not find neither.
    if (sent.kind !== 'not-sent') done.set(commandId, sent);
    if (next) await keep(next);
    else await away(commandId);
    if (sent.kind !== 'not-sent') {
      const waiter = waiters.get(commandId);
      waiters.delete(commandId);
      if (waiter) waiter(sent);
      else for (const listener of listeners) listener(next ?? entry, sent);
    }
    return sent;
  }

  function leaveWaiting(lane: string, problem: Problem): void {
    // Those behind it were not sent themselves, but no longer go out at once: they count as kept.
    entries.value = entries.value.map((e) =>
      e.state === 'waiting' && e.tries === 0 && laneOf(e.command) === lane ? { ...e, tries: 1 } : e,
    );
    for (const { command, problem: own } of entries.value.filter((e) => laneOf(e.command) === lane)) {
      waiters.get(command.commandId)?.({ kind: 'not-sent', problem: own ?? problem, command });
      waiters.delete(command.commandId);
    }
  }

  /** Everything that waits, each lane in its order. */
  async function flush(): Promise<void> {
    await open();
    const waiting = new Set(entries.value.filter((e) => e.state === 'waiting').map((e) => laneOf(e.command)));
    await Promise.all([...waiting].map(run));
  }
  /** Somebody has signed in: what they made goes out; what others made waits on. */
  async function flushOf(staff: StaffId): Promise<void> {
    await open();
    for (const entry of entries.value) {
      if (entry.state === 'needs-sign-in' && entry.command.staff === staff)
        await keep({ ...entry, state: 'waiting' });
    }
    await flush();
  }

  /** "I have dealt with it", or "do not send it": a person's own decision, and nobody else's. */
  const close = (commandId: string): Promise<void> =>
    trying.value.has(commandId) ? Promise.resolve() : away(commandId);

  const of = (state: OutboxEntry['state']) => computed(() => entries.value.filter((e) => e.state === state));
  return {
    entries,
    trying,
    lasting,
    waiting: of('waiting'),
    needSignIn: of('needs-sign-in'),
    refused: of('refused'),
    open,
    hold,
    keepBack,
    send,
    again,
    anew,
    retry,
    claim,
    flush,
    flushOf,
    close,
    /** Another way to deliver, for a page without a server. */
    deliverBy: (by: Sender) => void (sender = by),
    onSettled(listener: Settled): () => void {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
});

const busyElsewhere: Problem = {
  type: '/problems/unreachable',
  title: 'Not sent yet',
  status: 0,
  detail: 'Another window of this browser is sending.',
  remedy: 'It goes out by itself; nothing is lost.',
};
const sentElsewhere: Problem = {
  ...busyElsewhere,
  title: 'Sent from another window',
  detail: 'Another window of this browser has settled this entry.',
  remedy: 'Look at the entries of the stay before you enter it again.',
};
