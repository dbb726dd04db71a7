/**
 * Asking whoever holds this device to prove who they are, from anywhere in the program. The question
 * is drawn once, over whatever page is open (SignInSheet.vue), so that a half-written entry stays
 * where it is: the code pad on a shared device, the full sign-in elsewhere.
 *
 * Call needsSignIn() only for something a person has just done: a retry in the background must not
 * put a question on the screen. It listens with onSignedIn() instead.
 */
import { readonly, shallowRef } from 'vue';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';

/**
 * `signed`: proven, go on. `unconfirmed`: send it with the claimed name; it can only raise help.
 * `not-now`: put off; keep the entry until somebody signs in.
 */
export type Proof = 'signed' | 'unconfirmed' | 'not-now';

export interface SignInNeed {
  readonly ward?: WardId | undefined;
  /** Name of the command that waits: where it can only make safer, it may go out unconfirmed. */
  readonly command?: string | undefined;
  /** Who the entry says it is from; their name is chosen beforehand. */
  readonly staff?: StaffId | null | undefined;
}

const asked = shallowRef<SignInNeed | null>(null);
let waiting: ((proof: Proof) => void)[] = [];
const listeners = new Set<() => void>();

/** What is being asked for now; null for nothing. */
export const signInAsked = readonly(asked);

/** A second need while one is asked joins it: one question on the screen, one answer for all. */
export function needsSignIn(need: SignInNeed = {}): Promise<Proof> {
  asked.value ??= need;
  return new Promise((resolve) => waiting.push(resolve));
}

/** The answer, by the sheet that asked. Whoever joined the question takes no part in "unconfirmed". */
export function settleSignIn(proof: Proof): void {
  const [first, ...others] = waiting;
  waiting = [];
  asked.value = null;
  first?.(proof);
  for (const one of others) one(proof === 'unconfirmed' ? 'not-now' : proof);
}

/** Called after every sign-in, signed code and accepted link: what waited may go out now. */
export function onSignedIn(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
export function tellSignedIn(): void {
  for (const listener of listeners) listener();
}
