/** Who this browser is for the server, and what may be done here: asked for anew after every change. */
import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import { z } from 'zod';
import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import {
  me as meShape,
  signingAnswer,
  type acceptInvitationRequest,
  type changeSecretRequest,
  type Me,
} from '@footboard/shared/wire/access';
import type { Problem } from '@footboard/shared/wire/http';
import { tellSignedIn } from './sign-in-first.ts';
import { tellServer, type Told } from './tell-server.ts';
import { useWhoStore } from './who-store.ts';

/** Answers whose body says nothing this page needs. */
const anything = z.unknown();
/** A window no longer counts here so long before its end: an entry has a way to go yet. */
const SPARE_MS = 1_500;

export const useMeStore = defineStore('me', () => {
  const who = useWhoStore();
  const page = shallowRef<Me | null>(null);
  const problem = shallowRef<Problem | null>(null);
  /** When the signing window closes, on this device's clock; null without one. */
  const closesAt = ref<number | null>(null);
  let closing: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  let first: Promise<void> | null = null;

  const accounts = computed(() => page.value?.access === 'accounts');
  const person = computed(() => page.value?.person ?? null);
  const device = computed(() => page.value?.device ?? null);
  const shared = computed(() => device.value?.kind === 'shared');
  /** Somebody proven is here: a session, or a code within its two minutes. With sign-in off, always. */
  const proven = computed(() => !accounts.value || person.value !== null);

  async function load(): Promise<void> {
    const turn = ++asked;
    const answer = await tellServer('GET', '/api/me', meShape);
    if (turn !== asked) return;
    problem.value = answer.ok ? null : answer.problem;
    if (answer.ok) take(answer.page, answer.clock ?? Date.now());
  }
  /** The first answer is waited for once; a page may call this as often as it likes. */
  function ready(): Promise<void> {
    if (page.value) return Promise.resolve();
    first ??= load().finally(() => (first = null));
    return first;
  }

  function take(next: Me, serverNow: number): void {
    const news = page.value === null;
    page.value = next;
    clearTimeout(closing);
    closesAt.value = null;
    if (next.access === 'open') return;
    const { person: here } = next;
    if (here) {
      const role = here.wide ? ('administrator' as const) : ('aide' as const);
      who.speakFor({ staff: here.staff, name: here.name, role, active: true, standing: 'own' });
      if (here.via === 'signing') {
        // Only a window closes by this page's clock. To ask whether a session has ended would prolong it.
        const left = Math.max(0, here.until - serverNow - SPARE_MS);
        closesAt.value = Date.now() + left;
        closing = setTimeout(closeWindow, left);
      }
    } else if (news || next.device?.kind === 'shared') {
      // A session that ran out keeps its name for what is still on this page; a shared device keeps none.
      who.speakFor(null);
    }
  }

  function closeWindow(): void {
    clearTimeout(closing);
    if (closesAt.value === null) return;
    closesAt.value = null;
    who.speakFor(null);
    if (page.value) page.value = { ...page.value, person: null };
    void load();
  }

  // A device that slept has missed its timer.
  const judge = () => {
    if (closesAt.value !== null && Date.now() >= closesAt.value) closeWindow();
  };
  window.addEventListener('focus', judge);
  window.addEventListener('pageshow', judge);
  document.addEventListener('visibilitychange', judge);

  /** Done, and everybody who waits for a proven person may go on. */
  async function cameIn(told: Told<unknown>): Promise<Problem | null> {
    if (!told.ok) return told.problem;
    await load();
    tellSignedIn();
    return null;
  }
  const signIn = async (signInName: string, password: string): Promise<Problem | null> =>
    cameIn(await tellServer('POST', '/api/session', anything, { signInName, password }));
  const acceptInvitation = async (
    request: z.input<typeof acceptInvitationRequest>,
  ): Promise<Problem | null> =>
    cameIn(await tellServer('POST', '/api/invitations/accept', anything, request));

  async function changeSecret(request: z.input<typeof changeSecretRequest>): Promise<Problem | null> {
    const told = await tellServer('POST', '/api/session/secret', anything, request);
    if (!told.ok) return told.problem;
    // A new password may end this session with all the others.
    await load();
    return null;
  }

  /** Two minutes for one person on this device of the ward. */
  async function sign(by: { staff: StaffId } | { badge: string }, code: string): Promise<Problem | null> {
    const told = await tellServer('POST', '/api/signing', signingAnswer, { ...by, code });
    if (told.ok) who.usedBy(told.page.staff);
    return cameIn(told);
  }

  /** Signs off, whichever way this person came in. What is unsent stays on the device. */
  async function signOff(): Promise<Problem | null> {
    const path = person.value?.via === 'signing' ? '/api/signing' : '/api/session';
    const told = await tellServer('DELETE', path, anything);
    if (!told.ok) return told.problem;
    who.speakFor(null);
    await load();
    return null;
  }

  const wardOf = (ward: string) => page.value?.wards.find((one) => one.ward === ward) ?? null;
  /**
   * May this browser do that on this ward? While nothing is known, and with sign-in off, yes: the
   * server decides in any case. A command of nobody known asks for a sign-in first; then the role counts.
   */
  function may(action: string, ward: WardId | string): boolean {
    if (!accounts.value) return true;
    if (!person.value && policyRow(action)?.kind === 'command') return true;
    return wardOf(ward)?.actions.includes(action) ?? false;
  }

  return {
    page,
    problem,
    accounts,
    person,
    device,
    shared,
    closesAt,
    proven,
    load,
    ready,
    signIn,
    acceptInvitation,
    changeSecret,
    sign,
    signOff,
    wardOf,
    may,
  };
});

/** What somebody does instead whose role may not, in the policy's words. */
export const insteadOf = (action: string): string => policyRow(action)?.instead || 'Ask the charge nurse.';
