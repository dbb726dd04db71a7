import { createPinia, setActivePinia } from 'pinia';
import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { EventId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import type { StayPage as Page, TimelineEntry } from '@footboard/shared/wire/http';
import { beatOf, bedRow, NOON, snapshotOf, stayRow } from '../board/rows.testkit.ts';
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
      return { join: () => undefined, close: () => undefined };
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

  it('says "not recorded" where nothing was recorded today', async () => {
    const row = stayRow();
    const page = await open({ ...row, today: { ...row.today, recorded: false, timesUp: 0 } });
    expect(page.text()).toContain('so far not recorded');
    expect(page.text()).not.toContain('0 of 3');
  });
});
