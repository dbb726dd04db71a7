import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { Me } from '@footboard/shared/wire/access';
import SignPad from './SignPad.vue';
import { mayGoUnconfirmed } from './may-go-unconfirmed.ts';
import { useMeStore } from './me-store.ts';
import { needsSignIn, onSignedIn, settleSignIn, signInAsked } from './sign-in-first.ts';
import { ownPath } from './ways-back.ts';
import { useWhoStore } from './who-store.ts';

const W = 'w1' as WardId;
const NOW = Date.UTC(2026, 10, 25, 12, 0);
const device = { device: 'd1', kind: 'shared', ward: W, level: 'whole', place: 'phone 1' } as const;
const nobody: Me = {
  access: 'accounts',
  firstRun: false,
  singleSignOn: null,
  person: null,
  device,
  wards: [{ ward: W, name: 'Alder', actor: 'device', level: 'whole', actions: ['read-board'] }],
};
const noor = (until: number): Me => ({
  ...nobody,
  person: { staff: 'noor' as StaffId, name: 'Noor Winfield', wide: false, via: 'signing', until },
  wards: [{ ...nobody.wards[0]!, actor: 'aide', actions: ['read-board', 'place-hold'] }],
});
const staff = [
  { staff: 'carla', name: 'Carla Vane', role: 'charge-nurse', active: true, standing: 'own' },
  { staff: 'noor', name: 'Noor Winfield', role: 'aide', active: true, standing: 'own' },
  { staff: 'gone', name: 'Ida Gone', role: 'nurse', active: false, standing: 'own' },
];
const wrong = (code: string, status: number) =>
  Response.json(
    {
      type: `/problems/${code}`,
      title: 'The code is not right',
      status,
      detail: 'Not right',
      remedy: 'Again',
    },
    { status },
  );

/** A server: what it says of me, and what it answers to a code. */
let me: Me = nobody;
let answer: () => Response;
let told: { path: string; method: string; body: unknown }[] = [];
let pad: VueWrapper | null = null;
beforeEach(() => {
  vi.useFakeTimers({ now: NOW, toFake: ['Date', 'setTimeout', 'clearTimeout'] });
  localStorage.clear();
  setActivePinia(createPinia());
  me = nobody;
  told = [];
  answer = () => {
    me = noor(NOW + 120_000);
    return Response.json({ staff: 'noor', until: NOW + 120_000 });
  };
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    const method = init?.method ?? 'GET';
    if (method !== 'GET') told.push({ path, method, body: JSON.parse(init?.body as string) });
    const date = new Date(NOW).toUTCString();
    if (path === '/api/me') return Response.json(me, { headers: { date } });
    if (path.endsWith('/staff')) return Response.json({ staff });
    return answer();
  });
});
afterEach(() => {
  pad?.unmount();
  pad = null;
  if (signInAsked.value) settleSignIn('not-now');
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function show(props: Record<string, unknown> = {}): Promise<VueWrapper> {
  await useMeStore().load();
  pad = mount(SignPad, { props: { ward: W, ...props } });
  await flushPromises();
  return pad;
}
const tap = async (words: string) => {
  const button = pad!.findAll('button').find((one) => one.text().startsWith(words));
  if (!button) throw new Error(`no button says "${words}": ${pad!.text()}`);
  await (button.attributes('type') === 'submit'
    ? pad!.find('form.pad').trigger('submit')
    : button.trigger('click'));
  await flushPromises();
};
const type = async (code: string) => {
  for (const digit of code) await tap(digit);
};

describe('signing by name and code on a shared device', () => {
  it('offers active staff, asks for the code of the one chosen, and sends both', async () => {
    await show();
    expect(pad!.text()).not.toContain('Ida Gone');
    await tap('Noor Winfield');
    expect(pad!.find('label').text()).toBe('Code of Noor Winfield');
    await type('407318');
    await tap('Sign');
    expect(told).toEqual([{ path: '/api/signing', method: 'POST', body: { staff: 'noor', code: '407318' } }]);
    expect(pad!.emitted('signed')).toHaveLength(1);
    expect(useWhoStore().chosenId).toBe('noor');
    expect(useWhoStore().recentFirst[0]!.staff).toBe('noor');
  });
  it('takes a badge as a scanner types it: text, then Enter', async () => {
    await show();
    await pad!.find('input').setValue('B-0042');
    await pad!.find('form').trigger('submit');
    await type('407318');
    await tap('Sign');
    expect(told[0]!.body).toEqual({ badge: 'B-0042', code: '407318' });
    expect(pad!.html()).not.toContain('B-0042');
  });
  it('given a wrong code, empties the field, says what the server says and stays', async () => {
    answer = () => wrong('wrong-code', 403);
    await show({ staff: 'noor' });
    await type('111111');
    await tap('Sign');
    expect(pad!.text()).toContain('Not right. Again.');
    expect(pad!.find<HTMLInputElement>('input').element.value).toBe('');
    expect(pad!.emitted('signed')).toBeUndefined();
  });
  it('given a locked person, offers the full sign-in, and caution without the code where it only makes safer', async () => {
    answer = () => wrong('code-locked', 423);
    await show({ staff: 'noor', caution: true });
    await type('111111');
    await tap('Sign');
    expect(pad!.find('form.pad').exists()).toBe(false);
    await tap('Sign in with your password');
    await tap('Raise caution without the code');
    expect(pad!.emitted('full')).toHaveLength(1);
    expect(pad!.emitted('unconfirmed')).toEqual([['noor']]);
  });
  it('offers caution without the code for nothing that makes freer', () => {
    expect(['record-trigger', 'place-hold', 'remove-on-own'].map(mayGoUnconfirmed)).toEqual([
      true,
      true,
      true,
    ]);
    expect(
      ['end-hold', 'set-on-own', 'record-assessment', 'record-session', undefined].map(mayGoUnconfirmed),
    ).toEqual([false, false, false, false, false]);
  });
});

describe('who is here', () => {
  it('closes a signing window by itself and keeps no name', async () => {
    me = noor(NOW + 120_000);
    const store = useMeStore();
    await store.load();
    expect(store.proven).toBe(true);
    me = nobody;
    await vi.advanceTimersByTimeAsync(117_000);
    expect(store.proven).toBe(true);
    await vi.advanceTimersByTimeAsync(3_000);
    expect(store.proven).toBe(false);
    expect(useWhoStore().chosenId).toBeNull();
    expect(JSON.stringify({ ...localStorage })).not.toContain('Noor');
  });
  it('counts the window on the server’s clock, whatever this device’s clock says', async () => {
    vi.setSystemTime(NOW + 3_600_000);
    me = noor(NOW + 120_000);
    await useMeStore().load();
    expect(useMeStore().closesAt).toBeGreaterThan(NOW + 3_600_000 + 100_000);
  });
  it('says what a role may; of nobody known, commands are asked for and queries are not', async () => {
    const store = useMeStore();
    expect(store.may('end-hold', W)).toBe(true);
    await store.load();
    expect(store.may('end-hold', W)).toBe(true);
    expect(store.may('read-stay', W)).toBe(false);
    me = noor(NOW + 120_000);
    await store.load();
    expect(store.may('place-hold', W)).toBe(true);
    expect(store.may('end-hold', W)).toBe(false);
  });
});

describe('asking for a sign-in', () => {
  it('puts one question for all who need it, and lets only the first go out unconfirmed', async () => {
    const first = needsSignIn({ command: 'place-hold' });
    const second = needsSignIn({ command: 'end-hold' });
    expect(signInAsked.value).toEqual({ command: 'place-hold' });
    settleSignIn('unconfirmed');
    expect(await Promise.all([first, second])).toEqual(['unconfirmed', 'not-now']);
    expect(signInAsked.value).toBeNull();
  });
  it('tells what waited as soon as a code was right', async () => {
    const heard = vi.fn<() => void>();
    const stop = onSignedIn(heard);
    await useMeStore().load();
    await useMeStore().sign({ staff: 'noor' as StaffId }, '407318');
    stop();
    expect(heard).toHaveBeenCalledTimes(1);
  });
});

// OWASP ASVS 5.0, on open redirects (from memory): only places of this site.
describe('the way back after signing in', () => {
  it.each(['/wards/w1/bedside', '/wards/w1/stays/s1?x=1#entry-e1'])('goes to %s', (path) => {
    expect(ownPath(path)).toBe(path);
  });
  it.each([
    'https://elsewhere.example/',
    '//elsewhere.example/',
    '/\\elsewhere.example/',
    '/\t/elsewhere.example/',
    'javascript:alert(1)',
    '/sign-in?back=/x',
    '/api/sign-on/begin',
    undefined,
    ['/a', '/b'],
  ])('does not go to %s', (asked) => {
    expect(ownPath(asked)).toBe('/');
  });
});
