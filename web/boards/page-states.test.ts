import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia, type Pinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { nextTick, type Component } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { WardId } from '@footboard/shared/kernel/ids';
import { NOON, beatOf, bedRow, snapshotOf } from '../board/rows.testkit.ts';
import AccessGlass from '../capabilities/people/AccessGlass.vue';
import AccessLines from '../capabilities/people/AccessLines.vue';
import ForecastSection from '../capabilities/forecast/ForecastSection.vue';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';
import ChargePage from './ChargePage.vue';
import ConcernsPage from './ConcernsPage.vue';
import CoordinatorPage from './CoordinatorPage.vue';
import DayPlanPage from './DayPlanPage.vue';
import EquipmentPage from './EquipmentPage.vue';
import HomePage from './HomePage.vue';
import PaperPage from './PaperPage.vue';
import FairnessPage from './FairnessPage.vue';
import RoundActsPage from './RoundActsPage.vue';
import RoundPage from './RoundPage.vue';
import SettingsPage from './SettingsPage.vue';

/** Every page says what it waits for, what failed and what is not for whoever looks; none takes that for nothing. */
let pinia: Pinia;
let page: VueWrapper | null = null;
/** What the server answers, by the end of the path; what is not here does not answer. */
let answers: Record<string, { status: number; body: unknown }>;
let askedFor: string[];

const refusal = (status: number) => ({
  status,
  body: {
    type: '/problems/any',
    title: status === 403 ? 'Not for you' : 'Not now',
    status,
    detail: 'The ward was not read',
    remedy: 'Ask the charge nurse',
  },
});

async function show(component: Component, props: Record<string, unknown> = { ward: 'w1' }) {
  const link = fakeLink();
  useBoardStore().join('w1' as WardId, { open: link.open });
  link.reports.up();
  link.answer({ answer: 'snapshot', snapshot: snapshotOf([bedRow('A1', null)]), beat: beatOf({}) });
  const routes = [{ path: '/:rest(.*)*', component: { template: '<i/>' } }];
  const router = createRouter({ history: createMemoryHistory(), routes });
  page = mount(component, { props, global: { plugins: [pinia, router] } });
  await flushPromises();
  return page;
}
async function after(ms: number) {
  vi.advanceTimersByTime(ms);
  await nextTick();
}
const again = (of: VueWrapper) => of.findAll('button').find((one) => one.text() === 'Ask again');

beforeEach(() => {
  vi.useFakeTimers({ now: NOON });
  pinia = createPinia();
  setActivePinia(pinia);
  vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('visible');
  answers = {};
  askedFor = [];
  vi.stubGlobal('fetch', (path: string) => {
    askedFor.push(path);
    const [, answer] = Object.entries(answers).find(([end]) => path.split('?')[0]!.endsWith(end)) ?? [];
    if (!answer) return new Promise(() => undefined);
    return Promise.resolve(new Response(JSON.stringify(answer.body), { status: answer.status }));
  });
});
afterEach(() => {
  page?.unmount();
  page = null;
  useBoardStore().leave();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const PAGES = [
  ['the charge page', ChargePage, '/huddle', 'who is expected'],
  ['the day plan', DayPlanPage, '/day-plan', 'the day plan'],
  ['the round', RoundPage, '/round', 'the round'],
  ['the round’s lists', RoundActsPage, '/round/acts', 'what was done by the list'],
  ['fairness', FairnessPage, '/fairness', 'the last four weeks'],
  ['equipment', EquipmentPage, '/items', 'the list of equipment'],
  ['what the coordinator is to see to', CoordinatorPage, '/coordinator', 'what there is to see to'],
  ['near misses and strain', ConcernsPage, '/concerns', 'near misses and strain'],
  ['the forecast in the huddle', ForecastSection, '/forecast', 'the forecast'],
  ['paper', PaperPage, '/paper/sheets', 'the list of sheets'],
  ['settings', SettingsPage, '/rules', 'the protocol and the rules'],
] as const;

describe.each(PAGES)('%s', (_name, component, path, of) => {
  it('given no answer, says after a second what is asked for', async () => {
    const shown = await show(component);
    expect(shown.text()).not.toContain('Asking for');
    await after(1_100);
    expect(shown.text()).toContain(`Asking for ${of}.`);
  });

  it('given a failure, says what to do and asks again', async () => {
    answers = { [path]: refusal(503), '/protocols': refusal(503) };
    const shown = await show(component);
    expect(shown.text()).toContain('The ward was not read. Ask the charge nurse.');
    const before = askedFor.filter((one) => one.includes(path)).length;
    await again(shown)!.trigger('click');
    expect(askedFor.filter((one) => one.includes(path)).length).toBe(before + 1);
  });

  it('given no right to it, offers the wards and no asking again', async () => {
    answers = { [path]: refusal(403), '/protocols': refusal(403) };
    const shown = await show(component);
    expect(shown.text()).toContain('Not for you');
    expect(again(shown)).toBeUndefined();
    expect(shown.find('a[href="/"]').exists()).toBe(true);
  });
});

describe('what is not known', () => {
  it('given no list of who is expected, does not say that nobody is', async () => {
    answers = { '/huddle': refusal(503) };
    expect((await show(ChargePage)).text()).not.toContain('Nobody is expected.');
  });

  it('given the staff list failed, does not ask for its first entry', async () => {
    answers = { '/staff': refusal(503) };
    const shown = await show(SettingsPage);
    expect(shown.text()).toContain('The ward was not read.');
    expect(shown.text()).not.toContain('Add first somebody');
  });

  it('given no wards read, says so and keeps the way to ask again', async () => {
    answers = { '/api/wards': refusal(503), '/me': refusal(503) };
    const shown = await show(HomePage, {});
    expect(shown.text()).toContain('The ward was not read.');
    expect(again(shown)).toBeDefined();
  });

  it('given an empty list, tells it from one that has not come', async () => {
    const props = { ward: 'w1', zone: 'Europe/Berlin', now: NOON };
    const waiting = await show(AccessGlass, props);
    expect(waiting.text()).not.toContain('Nobody from outside');
    waiting.unmount();
    useBoardStore().leave();
    answers = { '/glass': { status: 200, body: { glass: [] } } };
    expect((await show(AccessGlass, props)).text()).toContain('Nobody from outside');
  });

  it('given a log that did not come, asks again for the same part', async () => {
    answers = { '/access-log': refusal(503) };
    const shown = await show(AccessLines, {
      ward: 'w1',
      zone: 'Europe/Berlin',
      stay: null,
      bedOf: () => null,
    });
    expect(shown.text()).not.toContain('Nothing is recorded yet');
    await again(shown)!.trigger('click');
    expect(askedFor.filter((one) => one.includes('/access-log'))).toHaveLength(2);
  });
});
