import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import type { WardId } from '@footboard/shared/kernel/ids';
import { judgeAge, serverNow as countOn, type Age } from '@footboard/shared/wire/age';
import { applyPatch } from '@footboard/shared/wire/apply';
import type {
  Heartbeat,
  JoinAnswer,
  JoinRequest,
  Patch,
  PutOut,
  Snapshot,
} from '@footboard/shared/wire/messages';
import { useMeStore } from '../people/me-store.ts';
import { openLink, type Link, type OpenLink } from './connection.ts';
import { makeMono } from './mono.ts';

/** Where this screen stands with its ward. */
export type Standing =
  /** Nothing painted yet. */
  | 'joining'
  | 'joined'
  /** The server speaks another version of the messages, or refuses for good: see `refusal`. */
  | 'old-page'
  | 'no-such-ward'
  /** Nobody is signed in here (any more), or not for this ward, or this device was taken off it. */
  | 'sign-in-first'
  | 'not-allowed'
  | 'device-revoked'
  /** Three failures in a row to take in what the server sent. */
  | 'needs-reload';

const JUDGE_EVERY_MS = 500;
/** A tick this late means the tab stood still (frozen, asleep): what it holds is not trusted until asked again. */
const STOOD_STILL_MS = 3_000;
const ASK_AGAIN_MS = 5_000;
const FAILURES_BEFORE_RELOAD = 3;
/** A paired device says what it has painted: soon after a change, and now and then that it still does. */
const RECEIPT_AFTER_MS = 5_000;
const RECEIPT_AGAIN_MS = 60_000;

export interface BoardTools {
  readonly open?: OpenLink;
  /** Milliseconds, only forward, sleep included. */
  readonly mono?: () => number;
}

/**
 * The one store that receives. It holds the last snapshot of one ward, made newer by linked patches
 * (a changed row is a new object, an unchanged one stays the same), the last heartbeat, and the
 * judgement of how old that is. What a device kept from before (web/offline) is given back by
 * `restore`, and is last known until the server has answered. Components only read.
 */
export const useBoardStore = defineStore('board', () => {
  const ward = ref<WardId | null>(null);
  const standing = ref<Standing>('joining');
  const refusal = shallowRef<{ detail: string; remedy: string } | null>(null);
  const snapshot = shallowRef<Snapshot | null>(null);
  const heard = shallowRef<{ beat: Heartbeat; at: number } | null>(null);
  const age = shallowRef<Age>({ state: 'last-known', since: null, why: 'never-heard' });
  /** The server's clock in whole seconds, as last judged; null before the first heartbeat. */
  const now = ref<number | null>(null);
  /** True while what is painted has not been judged: draw a cover, not the board. */
  const covered = ref(true);
  /** True while the board is one that this device has kept, and the server has not answered yet. */
  const restored = ref(false);

  const board = computed(() => snapshot.value?.board ?? null);
  const beds = computed<readonly BedView[]>(() => snapshot.value?.board.beds ?? []);
  const bedsById = computed<ReadonlyMap<string, BedView>>(() => new Map(beds.value.map((b) => [b.bed, b])));
  const zone = computed(() => snapshot.value?.board.zone ?? 'UTC');
  const demo = computed(() => heard.value?.beat.demo ?? false);

  let link: Link | null = null;
  let used: BoardTools = {};
  let mono = makeMono();
  let ticking: ReturnType<typeof setInterval> | undefined;
  let lastTick = 0;
  let lastAsked = 0;
  let failures = 0;
  let distrust = false;
  let receipt: { feed: number; at: number } | null = null;
  const me = useMeStore();

  const final = () => standing.value !== 'joining' && standing.value !== 'joined';

  function join(of: WardId, tools: BoardTools = {}): void {
    if (link && ward.value === of && !final()) return;
    leave();
    used = tools;
    ward.value = of;
    mono = tools.mono ?? makeMono();
    lastTick = mono();
    link = (tools.open ?? openLink)(of, {
      up: () => ask(),
      down: () => judge(),
      answer: take,
      patch: takePatch,
      beat: (beat) => hear(beat, false),
      out: putOut,
      unreadable: () => failed(),
      unanswered: () => ask(),
    });
    ticking = setInterval(tick, JUDGE_EVERY_MS);
    document.addEventListener('visibilitychange', onVisibility);
    document.addEventListener('freeze', cover);
    document.addEventListener('resume', wake);
    window.addEventListener('focus', wake);
    window.addEventListener('pageshow', wake);
    window.addEventListener('pagehide', cover);
    judge();
  }

  /** From nothing: who is here has changed, and with it what may be shown. */
  function joinAgain(): void {
    const of = ward.value;
    if (of === null) return;
    leave();
    join(of, used);
  }

  function leave(): void {
    link?.close();
    link = null;
    clearInterval(ticking);
    document.removeEventListener('visibilitychange', onVisibility);
    document.removeEventListener('freeze', cover);
    document.removeEventListener('resume', wake);
    window.removeEventListener('focus', wake);
    window.removeEventListener('pageshow', wake);
    window.removeEventListener('pagehide', cover);
    ward.value = null;
    snapshot.value = null;
    heard.value = null;
    now.value = null;
    refusal.value = null;
    standing.value = 'joining';
    age.value = { state: 'last-known', since: null, why: 'never-heard' };
    covered.value = true;
    failures = 0;
    distrust = false;
    restored.value = false;
    receipt = null;
  }

  /** A board from before this page, when the server does not answer. Never live, whatever its age. */
  function restore(kept: { snapshot: Snapshot; beat: Heartbeat; heardAgo: number }): void {
    if (ward.value !== kept.snapshot.ward || snapshot.value || heard.value || final()) return;
    snapshot.value = kept.snapshot;
    heard.value = { beat: kept.beat, at: mono() - kept.heardAgo };
    restored.value = true;
    distrust = true;
    judge();
  }

  /** How much the rows tell that are here; a row that says nothing tells none. */
  function holds(): JoinRequest['holds'] {
    for (const { stay } of beds.value) {
      if (stay && stay.shown !== 'ask-at-the-bedside') return stay.shown;
    }
    return undefined;
  }

  /** Ask for what is missing; after two failures ask for everything. */
  function ask(): void {
    if (final()) return;
    lastAsked = mono();
    // A kept board may be of another feed: it is never added to.
    if (failures >= 2 || restored.value) link?.join(null, restored.value ? undefined : holds());
    else link?.join(snapshot.value?.feed ?? null, holds());
  }

  function failed(): void {
    failures += 1;
    if (failures >= FAILURES_BEFORE_RELOAD) stop('needs-reload', null);
    else ask();
  }

  function stop(why: Standing, said: { detail: string; remedy: string } | null): void {
    standing.value = why;
    refusal.value = said;
    link?.close();
    judge();
  }

  function putOut(out: PutOut): void {
    if (out.why !== 'join-again') return shutOut(out.why, out);
    // It may be shown less than before: nothing of before stays.
    snapshot.value = null;
    standing.value = 'joining';
    ask();
  }
  /** Whoever may see no more sees no more: what is painted goes at once. */
  function shutOut(why: Standing, said: { detail: string; remedy: string }): void {
    snapshot.value = null;
    stop(why, said);
    // The server knows best who is here now.
    void me.load();
  }

  function take(answer: JoinAnswer): void {
    if (answer.answer === 'refused') {
      if (answer.refused === 'malformed') return failed();
      if (answer.refused === 'sign-in-first' || answer.refused === 'not-allowed') {
        return shutOut(answer.refused, answer);
      }
      return stop(answer.refused === 'no-such-ward' ? 'no-such-ward' : 'old-page', answer);
    }
    if (answer.answer === 'snapshot') {
      if (answer.snapshot.ward !== ward.value) return failed();
      snapshot.value = answer.snapshot;
      restored.value = false;
    } else {
      if (!snapshot.value || restored.value) return failed();
      let state = snapshot.value;
      for (const one of answer.answer === 'changes' ? answer.patches : []) {
        const applied = applyPatch(state, one);
        if (applied.result === 'gap') return failed();
        if (applied.result === 'applied') state = applied.state;
      }
      snapshot.value = state;
    }
    standing.value = 'joined';
    failures = 0;
    distrust = false;
    hear(answer.beat, true);
  }

  function takePatch(one: Patch): void {
    // Before the first answer there is nothing to add to: the answer will hold it.
    if (!snapshot.value || restored.value || final()) return;
    const applied = applyPatch(snapshot.value, one);
    if (applied.result === 'gap') return ask();
    if (applied.result === 'applied') {
      snapshot.value = applied.state;
      failures = 0;
    }
  }

  /**
   * A beat that was held up on its way (a frozen tab gets its old post at once) must not pass for a
   * fresh one: the server's clock is not let run backwards, unless the server has just been asked.
   */
  function hear(beat: Heartbeat, justAsked: boolean): void {
    if (beat.ward !== ward.value || (distrust && !justAsked)) return;
    const arrived = mono();
    const before = heard.value;
    let at = arrived;
    if (before && !justAsked && before.beat.rate === beat.rate) {
      const late = (countOn(before.beat, before.at, arrived) - beat.clock) / beat.rate;
      if (late > 1_000) at = arrived - late;
    }
    heard.value = { beat, at };
    // The server has painted further than this screen and no patch came: one was lost.
    if (snapshot.value && beat.feed > snapshot.value.feed && arrived - lastAsked > ASK_AGAIN_MS) ask();
    judge();
  }

  function judge(): void {
    const at = mono();
    const next = judgeAge({
      beat: heard.value?.beat ?? null,
      heardAtMono: heard.value?.at ?? null,
      nowMono: at,
    });
    const judged: Age =
      distrust && next.state === 'live' ? { ...next, state: 'last-known', why: 'no-heartbeat' } : next;
    const before = age.value;
    if (
      before.state !== judged.state ||
      before.since !== judged.since ||
      (before.state === 'last-known' && judged.state === 'last-known' && before.why !== judged.why)
    ) {
      age.value = judged;
    }
    if (heard.value) now.value = Math.floor(countOn(heard.value.beat, heard.value.at, at) / 1_000) * 1_000;
    if (document.visibilityState !== 'hidden') covered.value = false;
    if (judged.state === 'last-known' && at - lastAsked > ASK_AGAIN_MS) ask();
  }

  function tick(): void {
    const at = mono();
    if (at - lastTick > STOOD_STILL_MS) wake();
    else judge();
    lastTick = at;
    giveReceipt(at);
  }

  /** Only of a frame that is drawn: a hidden tab draws none. */
  function giveReceipt(at: number): void {
    const feed = snapshot.value?.feed;
    if (!me.device || feed === undefined || covered.value || standing.value !== 'joined') return;
    const due = receipt?.feed === feed ? RECEIPT_AGAIN_MS : RECEIPT_AFTER_MS;
    if (receipt && at - receipt.at < due) return;
    receipt = { feed, at };
    requestAnimationFrame(() => link?.painted(feed));
  }

  const cover = (): void => {
    covered.value = true;
  };

  const wake = (): void => {
    const at = mono();
    if (at - lastTick > STOOD_STILL_MS && snapshot.value) {
      distrust = true;
      ask();
    }
    lastTick = at;
    judge();
  };

  const onVisibility = (): void => (document.visibilityState === 'hidden' ? cover() : wake());

  /** The server's clock at this very moment (epoch ms), or null when it was never heard. */
  const serverNow = (): number | null =>
    heard.value ? Math.round(countOn(heard.value.beat, heard.value.at, mono())) : null;

  /** How long ago the last beat came (ms); null when none did. */
  const silentFor = (): number | null => (heard.value ? Math.max(0, mono() - heard.value.at) : null);

  return {
    ward,
    standing,
    refusal,
    snapshot,
    board,
    beds,
    bedsById,
    zone,
    heard,
    age,
    now,
    covered,
    restored,
    demo,
    restore,
    silentFor,
    join,
    joinAgain,
    leave,
    serverNow,
  };
});
