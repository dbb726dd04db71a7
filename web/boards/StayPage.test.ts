import { createPinia, setActivePinia } from 'pinia';
import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { EventId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { StayPage as Page, TimelineEntry } from '@footboard/shared/wire/http';
import { beatOf, bedRow, HOUR, NOON, planFor, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from '../sync/board-store.ts';
import StayPage from './StayPage.vue';

const line = (event: string, words: string): TimelineEntry => ({
  event: event as EventId,
  type: 'order-changed',
  occurred: NOON,
  precision: 'exact',
  recorded: NOON,
  late: false,
  author: { staff: 'n1' as never, role: 'nurse', name: 'Ines Alder' },
  source: { kind: 'person' },
  words,
  changedBy: [],
  target: null,
  counts: true,
  confirmation: null,
  cosign: null,
});

let mounted: VueWrapper | null = null;
async function open(view: StayView | null, over: Partial<Page> = {}) {
  const page: Page = {
    ward: 'w1' as WardId,
    stay: 's1' as StayId,
    position: 40,
    ended: null,
    identity: { name: 'Vasco Rill' },
    bed: view ? bedRow('7', view) : null,
    texts: {},
    erased: false,
    previous: null,
    next: null,
    timeline: [line('e1', 'Order: activity up to walk'), line('e2', 'Order: activity up to bed')],
    ...over,
  };
  vi.stubGlobal('fetch', async (path: string) =>
    path.includes('/stays/')
      ? new Response(JSON.stringify(page))
      : new Response(JSON.stringify({ staff: [] })),
  );
  const pinia = createPinia();
  setActivePinia(pinia);
  const board = useBoardStore();
  board.join('w1' as WardId, {
    mono: () => 0,
    open: (_, reports) => {
      const snapshot = snapshotOf(view ? [bedRow('7', view)] : [bedRow('7', null)]);
      queueMicrotask(() => reports.answer({ answer: 'snapshot', requestId: 'r', snapshot, beat: beatOf() }));
      return { join: () => undefined, painted: () => undefined, close: () => undefined };
    },
  });
  await flushPromises();
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<i />' } }],
  });
  mounted = mount(StayPage, { props: { ward: 'w1', stay: 's1' }, global: { plugins: [pinia, router] } });
  await flushPromises();
  return { wrapper: mounted, text: () => mounted!.text().replace(/\s+/g, ' ') };
}
afterEach(() => {
  mounted?.unmount();
  useBoardStore().leave();
  document.body.innerHTML = '';
  vi.unstubAllGlobals();
});

describe('the stay page', () => {
  it('gives every task by day and by night, each with its why', async () => {
    const page = await open(stayRow());
    const rows = page.wrapper.findAll('table.plans tbody tr');
    expect(rows.map((row) => row.find('th').text())).toEqual(['Bed to chair', 'Toilet']);
    const whys = (row: (typeof rows)[number]) =>
      row.findAll('button.why').map((b) => b.attributes('aria-label'));
    expect(whys(rows[1]!)).toEqual(['Why: toilet, by day', 'Why: toilet, at night']);
    expect(rows[1]!.findAll('td').map((td) => td.text())).toEqual([
      expect.stringContaining('1 person'),
      expect.stringContaining('2 people'),
    ]);
  });

  it('shows both entries of a conflict and which of them stands', async () => {
    const row = stayRow();
    const conflict = {
      question: 'activity',
      safer: 'e2' as EventId,
      other: 'e1' as EventId,
      words: 'two orders',
    };
    const page = await open({ ...row, trust: { ...row.trust, conflicts: [conflict] } });
    expect(page.text()).toContain('Stands: Order: activity up to bed');
    expect(page.text()).toContain('Does not: Order: activity up to walk');
  });

  it('of a stay that has ended shows no plan, and says that it is history', async () => {
    const page = await open(null, {
      ended: NOON,
      next: { ward: 'w2' as WardId, stay: 's9' as StayId },
      previous: { ward: 'w3' as WardId, stay: 's0' as StayId },
    });
    expect(page.text()).toContain('What follows is history');
    expect(page.wrapper.find('table.plans').exists()).toBe(false);
    const links = page.wrapper.findAll('a.link').map((a) => [a.attributes('href'), a.text()]);
    expect(links).toEqual([
      ['/wards/w3/stays/s0', 'The stay before this one (history, not a plan)'],
      ['/wards/w2/stays/s9', 'The next stay'],
    ]);
    expect(page.text()).toContain('Order: activity up to walk');
  });

  it('of a stay that was erased reads "(text removed)" where the name stood, and asks nobody for a name', async () => {
    const page = await open(null, { ended: NOON, identity: null, erased: true });
    expect(page.wrapper.find('.now').text()).toContain('(text removed)');
    expect(page.text()).not.toContain('No name is recorded');
    expect(page.text()).toContain('Order: activity up to walk');
    mounted?.unmount();
    const never = await open(null, { ended: NOON, identity: null });
    expect(never.text()).not.toContain('(text removed)');
    expect(never.text()).toContain('No name is recorded');
  });

  it('says "not recorded" where nothing was recorded today', async () => {
    const row = stayRow();
    const page = await open({ ...row, today: { ...row.today, recorded: false, timesUp: 0 } });
    expect(page.text()).toContain('so far not recorded');
    expect(page.text()).not.toContain('0 of 3');
  });

  it('says each sign in words, with its entries one tap away', async () => {
    const because = [{ rule: 'signs/stages-lost', facts: ['e2' as EventId], words: 'Edge at 08:00' }];
    const words = 'two stages lost in 24 h: Stand, then Upright';
    const page = await open(stayRow({ signs: [{ kind: 'stages-lost', words, because }] }));
    expect(page.text()).toContain('Two stages lost in 24 h: Stand, then Upright');
    await page.wrapper.find(`[aria-label="Why: sign: ${words}"]`).trigger('click');
    await flushPromises();
    expect(document.body.querySelector('.why-card a')?.getAttribute('href')).toBe('#entry-e2');
  });

  it('says waking time since last up, and what would clear it once it is owed', async () => {
    const debt = {
      since: NOON - 6 * HOUR,
      sleptMs: HOUR,
      pausedAt: null,
      owed: true,
      clears: 'one time up clears it',
      because: [],
    };
    const page = await open(stayRow({ debt }));
    expect(page.text()).toContain('5 waking hours since last up');
    expect(page.text()).toContain('One time up clears it');
    mounted?.unmount();
    const before = await open(stayRow({ debt: { ...debt, owed: false } }));
    expect(before.text()).toContain('5 waking hours since last up');
    expect(before.text()).not.toContain('clears it');
  });

  it('shows the early-warning number with its age, and what it is not behind the why', async () => {
    const earlyWarning = { score: 6, anyThree: true, at: NOON - HOUR, event: 'e1' as EventId };
    const page = await open(stayRow({ earlyWarning }));
    expect(page.text()).toContain('Score 6, one parameter at 3, 1 h ago');
    await page.wrapper.find('[aria-label="Why: early-warning score"]').trigger('click');
    await flushPromises();
    const card = document.body.querySelector('.why-card')!;
    expect(card.textContent).toContain('Royal College of Physicians');
    expect(card.textContent?.replace(/\s+/g, ' ')).toContain('Not a substitute for clinical judgement');
    expect(card.querySelector('a')?.getAttribute('href')).toBe('#entry-e1');
  });

  it('says how deep the next check is and where it begins', async () => {
    const nextCheck = { depth: 'full' as const, from: 'edge', because: [] };
    expect((await open(stayRow({ nextCheck }))).text()).toContain('Full, from Edge');
  });

  it('records "asleep" in one tap, for this stay', async () => {
    const page = await open(stayRow());
    const sent: { path: string; body: { data: unknown } }[] = [];
    vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
      const body = JSON.parse(String(init?.body));
      sent.push({ path, body });
      return Response.json({
        commandId: body.commandId,
        outcome: 'accepted',
        position: 41,
        events: [],
        shown: true,
        repeated: false,
      });
    });
    await page.wrapper
      .findAll('button')
      .find((b) => b.text() === 'Asleep now')!
      .trigger('submit');
    await flushPromises();
    expect(sent[0]!.path).toBe('/api/wards/w1/commands/record-asleep');
    expect(sent[0]!.body.data).toEqual({ stay: 's1' });
    expect(page.text()).toContain('Recorded: Seen asleep.');
  });

  it('offers "asleep" for nobody who is away or has left', async () => {
    const away = { since: NOON - HOUR, reason: 'test', dueBack: null };
    expect((await open(stayRow({ away }))).text()).not.toContain('Asleep now');
    mounted?.unmount();
    expect((await open(null, { ended: NOON })).text()).not.toContain('Asleep now');
  });

  it('has a row of the plan for moving up in the chair', async () => {
    const plan = [planFor('in-chair', { people: 'two', aid: 'sling-lift' })];
    const page = await open(stayRow({ plan: { day: plan, night: plan } }));
    expect(page.wrapper.find('table.plans tbody tr').text()).toMatch(
      /Move up in the chair.*2 people, sling lift/,
    );
  });
});
