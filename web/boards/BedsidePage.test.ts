import { createPinia, setActivePinia } from 'pinia';
import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { JoinAnswer } from '@footboard/shared/wire/messages';
import type { StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import { beatOf, bedRow, NOON, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from '../sync/board-store.ts';
import type { LinkReports } from '../sync/connection.ts';
import { UNDO_FOR } from '../capabilities/entry/use-entry.ts';
import BedsidePage from './BedsidePage.vue';

/** Answers of the ward's server, invented; commands are kept to be read. */
function server(names: Record<string, string>) {
  const commands: {
    name: string;
    headers: Record<string, string>;
    body: { commandId: string; data: object };
  }[] = [];
  let reachable = true;
  const answer = (body: unknown) => new Response(JSON.stringify(body), { status: 200 });
  const fetched = async (path: string, init?: RequestInit): Promise<Response> => {
    if (!reachable) throw new TypeError('network');
    const [, name] = /\/commands\/(.+)$/.exec(path) ?? [];
    if (name) {
      const body = JSON.parse(String(init?.body));
      commands.push({ name, headers: init?.headers as Record<string, string>, body });
      return answer({
        commandId: body.commandId,
        outcome: 'accepted',
        position: 41,
        events: [],
        shown: true,
        repeated: false,
      });
    }
    if (path.endsWith('/staff')) {
      return answer({ staff: [{ staff: 'n1', name: 'Ines Alder', role: 'nurse', active: true }] });
    }
    const [, stay] = /\/stays\/(.+)$/.exec(path) ?? [];
    if (stay) {
      return answer({
        ward: 'w1',
        stay,
        position: 40,
        ended: null,
        identity: { name: names[stay], born: '1942-10-25', recordNumber: 'T-1' },
        bed: null,
        texts: {},
        erased: false,
        previous: null,
        next: null,
        timeline: [],
      });
    }
    return new Response('{}', { status: 404 });
  };
  vi.stubGlobal('fetch', fetched);
  return { commands, cut: () => (reachable = false), restore: () => (reachable = true) };
}

let mounted: VueWrapper | null = null;
async function open(beds: BedView[], bed: string | undefined = 'bed-7', undoFor = 0) {
  const pinia = createPinia();
  setActivePinia(pinia);
  localStorage.setItem('footboard.staff', 'n1' satisfies string as StaffId);
  const reports: LinkReports[] = [];
  let feed = 7;
  const show = (now: BedView[]) => {
    feed += 1;
    const snapshot = { ...snapshotOf(now), feed };
    const answered: JoinAnswer = { answer: 'snapshot', requestId: 'r', snapshot, beat: beatOf({ feed }) };
    reports.at(-1)!.answer(answered);
  };
  useBoardStore().join('w1' as WardId, {
    open: (_, r) => {
      reports.push(r);
      return { join: () => undefined, painted: () => undefined, close: () => undefined };
    },
    mono: () => 0,
  });
  show(beds);
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<i />' } }],
  });
  const wrapper = mount(BedsidePage, {
    props: { ward: 'w1', ...(bed ? { bed } : {}) },
    global: { plugins: [pinia, router], provide: { [UNDO_FOR as symbol]: undoFor } },
    attachTo: document.body,
  });
  mounted = wrapper;
  await flushPromises();
  const text = () => document.body.textContent!.replace(/\s+/g, ' ');
  let taps = 0;
  const tap = async (words: string) => {
    const buttons = [...document.body.querySelectorAll('button')];
    const button = buttons.findLast((b) => b.textContent!.replace('✓', '').trim() === words);
    if (!button) throw new Error(`no button "${words}"`);
    taps += 1;
    button.click();
    await flushPromises();
  };
  /** One tap for each of the two identifiers, where they are asked for. */
  const confirm = async () => {
    for (let i = 0; i < 2; i += 1) {
      const facts = [...document.body.querySelectorAll<HTMLButtonElement>('.fact')];
      facts.find((fact) => fact.getAttribute('aria-pressed') === 'false')!.click();
      await flushPromises();
    }
  };
  return { wrapper, show, text, tap, confirm, taps: () => taps };
}

afterEach(() => {
  mounted?.unmount();
  useBoardStore().leave();
  document.body.innerHTML = '';
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const swapped = [
  bedRow('7', stayRow({ stay: 's2' as StayId })),
  bedRow('8', stayRow({ stay: 's1' as StayId })),
];
const before = [
  bedRow('7', stayRow({ stay: 's1' as StayId })),
  bedRow('8', stayRow({ stay: 's2' as StayId })),
];

describe('the bedside page', () => {
  it('asks for two identifiers and gives people and equipment before anything else', async () => {
    server({ s1: 'Vasco Rill' });
    const page = await open(before);
    expect(page.text()).toContain('Vasco Rill');
    expect(page.text()).toContain('ask for name and date of birth');
    expect(page.text()).toContain('1 person');
    expect(page.text().indexOf('1 person')).toBeLessThan(page.text().indexOf('Tier'));
    expect(page.text()).toContain('Not an alarm. Check before you move.');
  });

  it('records an ordinary session in three taps: one command, under the name on the device', async () => {
    const { commands } = server({ s1: 'Vasco Rill' });
    const page = await open(before);
    await page.tap('Confirm the person');
    await page.confirm();
    await page.tap('Session');
    await page.tap('Walk');
    await page.tap('Done');
    // The bed is open and the person confirmed: sheet, activity, done.
    expect(page.taps() - 1).toBe(3);
    expect(commands).toHaveLength(1);
    expect(commands[0]).toMatchObject({
      name: 'record-session',
      headers: { 'x-footboard-staff': 'n1' },
      body: {
        occurred: { at: new Date(NOON).toISOString(), precision: 'exact' },
        source: { kind: 'person' },
        expect: 'latest',
        data: { stay: 's1', session: { outcome: 'done', occasion: 'planned', activities: ['walk'] } },
      },
    });
    expect(page.text()).toContain('Recorded: Session, done.');
  });

  // Acceptance scenario: two beds are swapped while a nurse is mid-entry on one of them.
  it('keeps an entry with its person when the beds are swapped under the hands', async () => {
    const { commands } = server({ s1: 'Vasco Rill', s2: 'Mira Tolle' });
    const page = await open(before);
    await page.tap('Session');
    await page.confirm();
    page.show(swapped);
    await flushPromises();
    expect(page.text()).toContain('The person in this bed has changed');
    expect(page.text()).toContain('still for Vasco Rill, now in bed 8');
    await page.tap('Done');
    expect(commands).toHaveLength(0);
    await page.tap('Send it for the person I began it for');
    expect(commands.map((c) => c.body.data)).toMatchObject([{ stay: 's1' }]);
  });

  it('keeps an entry that did not reach the server listed after its sheet is closed, and sends the same one', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    const { commands, cut, restore } = server({ s1: 'Vasco Rill' });
    const page = await open(before);
    await page.tap('Session');
    await page.confirm();
    cut();
    await page.tap('Done');
    await vi.runAllTimersAsync();
    await flushPromises();
    expect(page.text()).toContain('Not sent yet');
    await page.tap('Close');
    expect(page.text()).toContain('1 waits for the network');
    await page.tap('Show them');
    expect(page.text()).toContain('Session, done, bed 7');
    expect(commands).toHaveLength(0);
    restore();
    await page.tap('Try again');
    expect(commands).toMatchObject([{ body: { fromOutbox: true } }]);
    expect(page.text()).toContain('Recorded: Session, done.');
    expect(page.text()).not.toContain('Not on the board');
  });

  it('asks who it is before what is seen is written down, and not before raising caution', async () => {
    server({ s1: 'Vasco Rill', s2: 'Mira Tolle' });
    const page = await open(before);
    await page.tap('Session');
    expect(page.text()).toContain('Who is in front of you?');
    expect(page.text()).not.toContain('What was done?');
    await page.confirm();
    expect(page.text()).toContain('What was done?');
    await page.tap('Close');
    await page.tap('Check');
    expect(page.text()).not.toContain('Who is in front of you?');
    await page.tap('Close');
    // Another occupant is not the one who was confirmed.
    page.show(swapped);
    await flushPromises();
    expect(page.text()).toContain('Not confirmed yet.');
    await page.tap('Something happened');
    expect(page.text()).not.toContain('Who is in front of you?');
    await page.tap('Close');
    await page.tap('Session');
    expect(page.text()).toContain('Who is in front of you?');
  });

  it('stops in words when it is somebody else', async () => {
    const { commands } = server({ s1: 'Vasco Rill' });
    const page = await open(before);
    await page.tap('Session');
    await page.tap('It is somebody else');
    expect(page.text()).toContain('This page is for Vasco Rill in bed 7. Nothing was entered.');
    expect(page.text()).not.toContain('What was done?');
    expect(commands).toHaveLength(0);
  });

  it('lets a session be undone before it is sent, and sends what is left alone', async () => {
    vi.useFakeTimers({
      toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'Date'],
      now: NOON,
    });
    const { commands } = server({ s1: 'Vasco Rill' });
    const page = await open(before, 'bed-7', 5_000);
    await page.tap('Session');
    await page.confirm();
    await page.tap('Walk');
    await page.tap('Done');
    expect(page.text()).toContain('Session, done: recorded in 5 s');
    await vi.advanceTimersByTimeAsync(3_000);
    expect(page.text()).toContain('recorded in 2 s');
    await page.tap('Undo');
    await vi.advanceTimersByTimeAsync(60_000);
    expect(commands).toHaveLength(0);
    expect(page.text()).toContain('What was done?');
    await page.tap('Done');
    await vi.advanceTimersByTimeAsync(5_100);
    await flushPromises();
    expect(commands).toMatchObject([{ body: { data: { session: { activities: ['walk'] } } } }]);
    expect(page.text()).toContain('Recorded: Session, done.');
  });

  it('sends at once what is closed within the seconds of undo: leaving is no undo', async () => {
    vi.useFakeTimers({
      toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'Date'],
      now: NOON,
    });
    const { commands } = server({ s1: 'Vasco Rill' });
    const page = await open(before, 'bed-7', 5_000);
    await page.tap('Session');
    await page.confirm();
    await page.tap('Done');
    await page.tap('Close');
    await vi.advanceTimersByTimeAsync(100);
    await flushPromises();
    expect(commands).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(commands).toHaveLength(1);
  });

  it('does not show one person’s name over another’s plan while the page of the new one is read', async () => {
    server({ s1: 'Vasco Rill', s2: 'Mira Tolle' });
    const page = await open(before);
    page.show(swapped);
    await page.wrapper.vm.$nextTick();
    expect(page.text()).not.toContain('Vasco Rill');
    await flushPromises();
    expect(page.text()).toContain('Mira Tolle');
  });

  it('offers an arrival, and nothing else, at an empty bed', async () => {
    server({});
    const page = await open([bedRow('7', null)]);
    expect(page.text()).toContain('A person arrives here');
    expect(page.text()).not.toContain('Something happened');
  });

  it('says why offline entry and the camera are off when the page came over plain http', async () => {
    server({ s1: 'Vasco Rill' });
    vi.stubGlobal('isSecureContext', false);
    const page = await open(before);
    expect(page.text()).toContain('Offline entry and the camera are off here');
    expect(page.text()).toContain('only over https');
  });
});
