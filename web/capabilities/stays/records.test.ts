import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Component } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { Role } from '@footboard/shared/kernel/author';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { POLICY } from '@footboard/shared/capabilities/people/policy/document';
import type { Me } from '@footboard/shared/wire/access';
import { useMeStore } from '../../people/me-store.ts';
import RecordsStaff from '../people/RecordsStaff.vue';
import RecordsKept from './RecordsKept.vue';
import RecordsSection from './RecordsSection.vue';

const W = 'w1' as WardId;
const NOON = Date.UTC(2026, 10, 25, 12, 0);
const meAs = (role: Role): Me => ({
  access: 'accounts',
  firstRun: false,
  singleSignOn: null,
  person: { staff: 'rita' as StaffId, name: 'Rita Sorel', wide: false, via: 'session', until: NOON * 2 },
  device: null,
  wards: [
    {
      ward: W,
      name: 'Alder',
      actor: role,
      level: 'whole',
      // From the policy document itself, as the server makes it.
      actions: POLICY.filter((row) => row.actors.includes(role)).map((row) => row.action),
    },
  ],
});
const member = (staff: string, name: string, active: boolean) => ({
  staff,
  name,
  role: 'nurse',
  active,
  standing: 'own',
});
const refusal = (code: string, detail: string, remedy: string) =>
  Response.json(
    { type: `/problems/${code}`, title: 'Not possible now', status: 409, detail, remedy },
    { status: 409 },
  );

let me: Me;
let kept: object;
let staff: object[];
let told: { path: string; body: unknown }[];
let answer: () => Response | Promise<Response>;
let part: VueWrapper | null = null;
beforeEach(() => {
  setActivePinia(createPinia());
  me = meAs('records');
  kept = { keepDays: null, over: [] };
  staff = [];
  told = [];
  answer = () => new Response(null, { status: 204 });
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    if (path === '/api/me') return Response.json(me);
    if (path.endsWith('/retention')) return Response.json(kept);
    if (path.endsWith('/staff')) return Response.json({ staff });
    told.push({ path, body: JSON.parse(String(init?.body)) });
    return answer();
  });
});
afterEach(() => {
  part?.unmount();
  part = null;
  document.body.innerHTML = '';
  vi.unstubAllGlobals();
});

async function show(component: Component, props: Record<string, unknown>): Promise<VueWrapper> {
  await useMeStore().load();
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<i />' } }],
  });
  part = mount(component, { props, global: { plugins: [router] }, attachTo: document.body });
  await flushPromises();
  return part;
}
const section = (over: object = {}) =>
  show(RecordsSection, { ward: W, stay: 's1', ended: NOON, erased: false, ...over });
const text = () => document.body.textContent.replace(/\s+/g, ' ');
const buttons = () => [...document.body.querySelectorAll('button')];
const named = (words: string) =>
  buttons().find((one) => (one.getAttribute('aria-label') ?? one.textContent.trim()) === words);
async function tap(words: string) {
  const button = named(words);
  if (!button) throw new Error(`no button says "${words}": ${text()}`);
  button.click();
  await flushPromises();
}
async function write(words: string) {
  const field = document.body.querySelector('textarea')!;
  field.value = words;
  field.dispatchEvent(new Event('input'));
  await flushPromises();
}
async function choose(words: string) {
  const label = [...document.body.querySelectorAll('label.choice')].find((one) =>
    one.textContent.includes(words),
  );
  label!.querySelector('input')!.click();
  await flushPromises();
}

describe('one stay, for the records role', () => {
  it('given the records role, when the stay is shown, then the file is one link away and saved, not opened', async () => {
    await section();
    const link = document.body.querySelector('a')!;
    expect(link.textContent).toBe('Hand over everything there is');
    expect(link.getAttribute('href')).toBe('/api/wards/w1/stays/s1/export');
    expect(link.hasAttribute('download')).toBe(true);
  });

  it('given any other role, or sign-in off, then there is nothing of this', async () => {
    for (const role of ['nurse', 'charge-nurse', 'manager', 'administrator'] as const) {
      me = meAs(role);
      await section();
      expect(text().trim()).toBe('');
      part!.unmount();
    }
    me = { ...meAs('records'), access: 'open', person: null };
    await section();
    expect(text().trim()).toBe('');
  });

  it('given a stay that goes on, then it is handed over but not erased, and the page says what first', async () => {
    await section({ ended: null });
    expect(text()).toContain('can be erased once the stay has ended');
    expect(document.body.querySelector('a')).not.toBeNull();
    expect(buttons()).toEqual([]);
  });

  it('given a stay that was erased, then it is handed over as it is now and not erased again', async () => {
    await section({ erased: true });
    expect(document.body.querySelector('a')).not.toBeNull();
    expect(buttons()).toEqual([]);
  });

  it('given no reason and no words, when it would be erased, then each is asked for and nothing is sent', async () => {
    await section();
    await tap('Erase names and texts');
    await write(' x ');
    await tap('Erase the names and texts');
    expect(text()).toContain('Choose the reason.');
    expect(text()).toContain('Say in a few words why.');
    expect(named('Yes, erase for good')).toBeUndefined();
    expect(told).toEqual([]);
  });

  it('given a reason and words, when tapped once, then nothing is sent; a second tap elsewhere erases, once', async () => {
    let release = (): void => undefined;
    answer = () => new Promise((done) => (release = () => done(new Response(null, { status: 204 }))));
    await section();
    await tap('Erase names and texts');
    expect(text()).toContain('What goes:');
    expect(text()).toContain('a backup from before still holds it');
    await choose('The person asked for it');
    await write('Asked in writing ');
    await tap('Erase the names and texts');
    expect(text()).toContain('This cannot be undone');
    expect(document.activeElement).toBe(named('No, go back'));
    expect(told).toEqual([]);
    named('Yes, erase for good')!.click();
    named('Yes, erase for good')!.click();
    await flushPromises();
    expect(told).toEqual([
      {
        path: '/api/wards/w1/stays/s1/erase',
        body: { reason: 'asked-by-person', words: 'Asked in writing' },
      },
    ]);
    expect(part!.emitted('erased')).toBeUndefined();
    release();
    await flushPromises();
    expect(part!.emitted('erased')).toHaveLength(1);
    expect(text()).not.toContain('This cannot be undone');
  });

  it('given second thoughts, when it is kept, then nothing is sent and the words are still there', async () => {
    await section();
    await tap('Erase names and texts');
    await choose('Entered by mistake');
    await write('Wrong ward');
    await tap('Erase the names and texts');
    await tap('No, go back');
    expect(told).toEqual([]);
    expect(document.body.querySelector('textarea')!.value).toBe('Wrong ward');
    await tap('Close');
    await tap('Erase names and texts');
    expect(document.body.querySelector('textarea')!.value).toBe('');
  });

  it('given the server says no, when it was told, then its remedy stands there, nothing is called erased and it may be tried again', async () => {
    answer = () => refusal('stay-not-ended', 'The person is still in a bed.', 'End the stay first.');
    await section();
    await tap('Erase names and texts');
    await choose('Kept long enough');
    await write('Over its time');
    await tap('Erase the names and texts');
    await tap('Yes, erase for good');
    expect(text()).toContain('The person is still in a bed. End the stay first.');
    expect(part!.emitted('erased')).toBeUndefined();
    expect(named('Yes, erase for good')).toBeUndefined();
    await tap('Erase the names and texts');
    expect(text()).not.toContain('End the stay first.');
  });
});

describe('stays kept longer than the ward keeps them', () => {
  const list = () => show(RecordsKept, { ward: W, zone: 'Europe/Lisbon' });
  it('given no time is set, then it says so and names the setting', async () => {
    await list();
    expect(text()).toContain('No time is set');
    expect(text()).toContain('KEEP_DAYS');
  });

  it('given some are over it, then each stands with its day and year and a way to it, those erased apart', async () => {
    // 23:30 UTC on the last of May is the first of June on the ward's clock.
    const ended = Date.UTC(2016, 4, 31, 23, 30);
    kept = {
      keepDays: 3650,
      over: [
        { stay: 's1', ended, erased: false },
        { stay: 's2', ended: ended + 86_400_000, erased: true },
      ],
    };
    await list();
    expect(text()).toContain('3650 days');
    const open = document.body.querySelector('[aria-label="Stays kept too long"]')!;
    expect(open.textContent).toContain('Ended 1 June 2016');
    expect([...open.querySelectorAll('a')].map((one) => one.getAttribute('href'))).toEqual([
      '/wards/w1/stays/s1',
    ]);
    const erased = document.body.querySelector('[aria-label="Stays that were erased"]')!;
    expect(erased.textContent).toContain('Ended 2 June 2016, names and texts erased');
    expect(text()).toContain('Erased already: 1');
  });

  it('given none is over it, then it says that and lists nothing', async () => {
    kept = { keepDays: 1, over: [] };
    await list();
    expect(text()).toContain('kept for 1 day after');
    expect(text()).toContain('No stay is kept longer than that.');
    expect(document.body.querySelector('li')).toBeNull();
  });
});

describe('staff who have left', () => {
  const list = () => show(RecordsStaff, { ward: W });
  it('given the staff list, then only those no longer active stand here, and an erased name is not erased again', async () => {
    staff = [
      member('ida', 'Ida Gone', false),
      member('noor', 'Noor Haddad', true),
      member('old', '(text removed)', false),
    ];
    await list();
    expect(text()).not.toContain('Noor Haddad');
    expect(text()).toContain('(text removed), nurse, name erased');
    expect(buttons().map((one) => one.getAttribute('aria-label'))).toEqual(['Erase the name of Ida Gone']);
  });

  it('given words and a second tap, when a name is erased, then it is told for that member and the list is read anew', async () => {
    staff = [member('ida', 'Ida Gone', false)];
    answer = () => {
      staff = [member('ida', '(text removed)', false)];
      return new Response(null, { status: 204 });
    };
    await list();
    await tap('Erase the name of Ida Gone');
    expect(document.body.querySelector('label.choice')).toBeNull();
    await write('Left in spring');
    await tap('Erase the name');
    expect(told).toEqual([]);
    await tap('Yes, erase for good');
    expect(told).toEqual([{ path: '/api/wards/w1/staff/ida/erase', body: { words: 'Left in spring' } }]);
    expect(text()).toContain('The name is erased.');
    expect(text()).toContain('(text removed), nurse, name erased');
    expect(text()).not.toContain('Ida Gone');
  });

  it('given they are still active on another ward, when the name would be erased, then the server’s words and remedy stand there', async () => {
    staff = [member('ida', 'Ida Gone', false)];
    answer = () =>
      refusal('conflict', 'They are still active on Rowan.', 'Mark them as no longer active first.');
    await list();
    await tap('Erase the name of Ida Gone');
    await write('Left in spring');
    await tap('Erase the name');
    await tap('Yes, erase for good');
    expect(text()).toContain('They are still active on Rowan. Mark them as no longer active first.');
    expect(text()).not.toContain('The name is erased.');
  });

  it('given nobody has left, then it says so', async () => {
    staff = [member('noor', 'Noor Haddad', true)];
    await list();
    expect(text()).toContain('Nobody on the staff list is marked as gone.');
  });
});
