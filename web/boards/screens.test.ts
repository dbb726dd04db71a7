import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia, type Pinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { nextTick, type Component } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { WardId } from '@footboard/shared/kernel/ids';
import { NOON, beatOf, bedRow, boardRow, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';
import HuddlePage from './HuddlePage.vue';
import SetUpPage from './SetUpPage.vue';
import WallPage from './WallPage.vue';

const W = 'w1' as WardId;
let pinia: Pinia;
let page: VueWrapper | null = null;

async function show(component: Component, props: Record<string, unknown> = { ward: 'w1' }) {
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<i/>' } }],
  });
  page = mount(component, { props, global: { plugins: [pinia, router] }, attachTo: document.body });
  await nextTick();
  return page;
}

/** A screen whose ward answers by hand. */
function ward() {
  const link = fakeLink();
  useBoardStore().join(W, { open: link.open });
  link.reports.up();
  const trust = { ...stayRow().trust, state: 're-check' as const };
  const beds = [bedRow('A1'), bedRow('A2', stayRow({ trust })), bedRow('A3', null)];
  return {
    link,
    answer: (over = {}) =>
      link.answer({ answer: 'snapshot', snapshot: snapshotOf(beds), beat: beatOf(over) }),
  };
}

beforeEach(() => {
  vi.useFakeTimers({ now: NOON });
  pinia = createPinia();
  setActivePinia(pinia);
  vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('visible');
});
afterEach(() => {
  page?.unmount();
  page = null;
  useBoardStore().leave();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('the wall', () => {
  it('given no answer yet, shows no bed and says to check at the bedside', async () => {
    ward();
    const wall = await show(WallPage);
    expect(wall.findAll('.tile')).toHaveLength(0);
    expect(wall.text()).toContain('check at the bedside');
  });

  it('shows every bed with the counts, the clock, the time of the data and the standing line', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    expect(wall.findAll('.tile')).toHaveLength(3);
    expect(wall.text()).toContain('3 of 3 beds shown');
    expect(wall.find('.clock').text()).toContain('12:00');
    expect(wall.find('.as-of').text()).toContain('data as of 12:00');
    expect(wall.find('.lifts').text()).toBe('lifts not listed');
    expect(wall.text()).toContain('Not an alarm. Check before you move.');
  });

  it('says once which task and plan it shows, and follows the ward’s night by itself', async () => {
    const { link, answer } = ward();
    answer();
    const wall = await show(WallPage);
    expect(wall.find('.foot').text()).toContain('bed to chair, by day');
    expect(document.documentElement.dataset['theme']).toBe('day');
    const { beds: _beds, ...facts } = boardRow([]);
    link.reports.patch({
      ward: W,
      from: 7,
      to: 8,
      p: 41,
      t: NOON,
      beds: [],
      board: { ...facts, night: true },
    });
    await nextTick();
    expect(wall.find('.foot').text()).toContain('toilet, by night');
    expect(wall.findAll('.people')[0]!.text()).toBe('2');
    expect(document.documentElement.dataset['theme']).toBe('night');
  });

  it('SCREEN-4 given a cut link, the whole board reads LAST KNOWN with the time and why', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    expect(wall.text()).not.toContain('LAST KNOWN');
    vi.advanceTimersByTime(11_000);
    await nextTick();
    const banner = wall.find('[role="alert"]').text();
    expect(banner).toContain('LAST KNOWN 12:00');
    expect(banner).toContain('does not hear the server');
    expect(wall.findAll('.tile.old')).toHaveLength(3);
    expect(wall.text()).not.toContain('current ');
    expect(wall.find('.clock').text()).toBe('clock stopped');
  });

  it('given a database that is gone, says so though the link is up', async () => {
    const { link, answer } = ward();
    answer();
    const wall = await show(WallPage);
    for (let ms = 2_000; ms <= 12_000; ms += 2_000) {
      vi.advanceTimersByTime(2_000);
      link.reports.beat(beatOf({ clock: NOON + ms, evaluatedAt: NOON + ms }));
    }
    await nextTick();
    expect(wall.find('[role="alert"]').text()).toContain('cannot read its records');
  });

  it('given the link back, is live again and the banner is gone', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    vi.advanceTimersByTime(11_000);
    answer({ clock: NOON + 11_000, readAt: NOON + 11_000, evaluatedAt: NOON + 11_000 });
    await nextTick();
    expect(wall.text()).not.toContain('LAST KNOWN');
  });

  it('SCREEN-7 given an old page, shows only the way to reload, no bed', async () => {
    const { link, answer } = ward();
    answer();
    const wall = await show(WallPage);
    link.answer({ answer: 'refused', refused: 'old-page', detail: 'This page is old.', remedy: 'Reload.' });
    await nextTick();
    expect(wall.text()).toContain('This page is old: reload');
    expect(wall.find('button').text()).toBe('Reload');
    expect(wall.findAll('.tile')).toHaveLength(0);
  });

  it('SCREEN-5 covers the board while the tab is away', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    window.dispatchEvent(new Event('pagehide'));
    await nextTick();
    expect(wall.findAll('.tile')).toHaveLength(0);
    window.dispatchEvent(new Event('pageshow'));
    await nextTick();
    expect(wall.findAll('.tile')).toHaveLength(3);
  });

  it('marks a demo, and only a demo', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    expect(wall.text()).not.toContain('DEMO');
    answer({ demo: true });
    await nextTick();
    expect(wall.text()).toContain('DEMO: an invented ward');
  });

  it('has one main landmark, a heading of the ward and a named article a bed', async () => {
    const { answer } = ward();
    answer();
    const wall = await show(WallPage);
    expect(wall.findAll('main')).toHaveLength(1);
    expect(wall.find('h1').text()).toBe('Heron ward');
    expect(wall.findAll('article').map((a) => a.attributes('aria-label'))).toContain('Bed A3, Bay 1, empty');
  });
});

const huddle = (over = {}) => ({
  ward: 'w1',
  position: 40,
  at: NOON,
  needLift: [
    {
      bed: 'bed-A1',
      label: 'A1',
      stay: 's1',
      owner: null,
      words: 'sling lift, 2 people',
      because: [{ rule: 'lift-rule', facts: ['e1'], words: 'no sitting balance today' }],
    },
  ],
  overdue: [],
  holds: [],
  notUp: [],
  twoPeople: [],
  arrived: [],
  since: { at: NOON - 24 * 3_600_000, held: false, by: null },
  changes: [],
  holdsToday: [],
  leavingShort: [],
  leavingOthers: 0,
  actions: [],
  expected: [],
  totals: {
    occupied: 2,
    away: 0,
    empty: 1,
    notKnown: 0,
    sessionsDone: 3,
    sessionsNotDone: 1,
    notRecorded: 4,
    goalsMet: 0,
    boardWrong: 0,
  },
  ...over,
});

describe('the huddle', () => {
  it('SCREEN-10 opens the reasons of a line in one tap', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(Response.json(huddle())));
    const { answer } = ward();
    answer();
    const screen = await show(HuddlePage);
    await flushPromises();
    expect(document.body.textContent).not.toContain('no sitting balance today');
    await screen.find('[aria-label="Why: bed A1, needs a lift"]').trigger('click');
    await flushPromises();
    expect(document.body.textContent).toContain('no sitting balance today');
  });

  it('SCREEN-3 counts what is not recorded apart from what is not done', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(Response.json(huddle())));
    const { answer } = ward();
    answer();
    const screen = await show(HuddlePage);
    await flushPromises();
    expect(screen.find('.apart').text()).toBe('4with nothing recorded today: a gap, not a zero');
    expect(screen.find('.totals').text()).toContain('1not done, with a reason');
  });

  it('says from the rows who has been awake longest, what is lost, and which steps wait', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(Response.json(huddle())));
    const link = fakeLink();
    useBoardStore().join(W, { open: link.open });
    link.reports.up();
    const stay = stayRow({
      debt: {
        since: NOON - 6 * 3_600_000,
        sleptMs: 0,
        pausedAt: null,
        owed: true,
        clears: 'one time up clears it',
        because: [],
      },
      signs: [{ kind: 'stages-lost', words: 'two stages lost in 24 h', because: [] }],
      proposal: { step: 'up', goal: { activity: 'walk', timesUp: 3 }, sessions: [], because: [] },
    });
    link.answer({ answer: 'snapshot', snapshot: snapshotOf([bedRow('A1', stay)]), beat: beatOf() });
    const screen = await show(HuddlePage);
    await flushPromises();
    const list = (title: string) =>
      screen.findAll('.list').find((one) => one.find('h2').text().startsWith(title))!;
    expect(list('Longest awake and not up').find('.words').text()).toBe(
      '6 waking hours since last up; one time up clears it',
    );
    expect(list('Losing or gaining ground').find('.words').text()).toBe('Two stages lost in 24 h');
    expect(list('Steps of a goal to accept').find('.words').text()).toBe('A step up: 3 times walk');
    expect(list('Longest awake and not up').find('a').attributes('href')).toBe('/wards/w1/stays/s1');
  });

  it('asks again when the board moves, and keeps the old list marked when no answer comes', async () => {
    let answers = 0;
    vi.stubGlobal('fetch', (path: string) =>
      path.endsWith('/huddle') && ++answers === 1
        ? Promise.resolve(Response.json(huddle()))
        : Promise.reject(new TypeError('network')),
    );
    const { link, answer } = ward();
    answer();
    const screen = await show(HuddlePage);
    await flushPromises();
    link.reports.patch({ ward: W, from: 7, to: 8, p: 41, t: NOON, beds: [bedRow('A1')] });
    await flushPromises();
    expect(answers).toBe(2);
    expect(screen.text()).toContain('sling lift, 2 people');
    expect(screen.text()).toContain('The list below, if any, is old.');
  });
});

/** A server that keeps what was sent, and whose network can be cut. */
const sent = () => {
  const bodies: { path: string; data: Record<string, unknown>; id: unknown }[] = [];
  let reachable = true;
  vi.stubGlobal('fetch', (path: string, init?: RequestInit) => {
    if (!init?.body) return Promise.resolve(Response.json({ staff: [] }));
    const body = JSON.parse(init.body as string) as { data: Record<string, unknown>; commandId: string };
    bodies.push({ path, data: body.data, id: body.commandId });
    if (!reachable) return Promise.reject(new TypeError('network'));
    return Promise.resolve(
      Response.json({
        commandId: body.commandId,
        outcome: 'accepted',
        position: 1,
        events: [],
        shown: true,
        repeated: false,
      }),
    );
  });
  return { bodies, cut: () => (reachable = false), mend: () => (reachable = true) };
};

describe('setting up a ward', () => {
  it('says that the built-in storage is for trial', async () => {
    sent();
    expect((await show(SetUpPage, {})).text()).toMatch(
      /trial: a power cut may lose the last seconds.*DATABASE_URL/s,
    );
  });

  it('given no name, names the field and sends nothing', async () => {
    const { bodies } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('form').trigger('submit');
    expect(screen.find('[role="alert"]').text()).toBe('give it a name');
    expect(bodies).toHaveLength(0);
  });

  it('sends one ward with 24 beds, then asks for the staff', async () => {
    const { bodies } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('input').setValue('Heron ward');
    await screen.find('form').trigger('submit');
    await flushPromises();
    expect(bodies).toHaveLength(1);
    expect(bodies[0]!.path).toMatch(/^\/api\/wards\/[\w-]+\/commands\/set-up-ward$/);
    expect(bodies[0]!.data['beds']).toHaveLength(24);
    expect(screen.text()).toContain('Add first somebody who may keep this list');
  });

  it('SCREEN-9 given no answer, a second tap sends the same command again', async () => {
    const { bodies, cut, mend } = sent();
    const screen = await show(SetUpPage, {});
    await screen.find('input').setValue('Heron ward');
    cut();
    await screen.find('form').trigger('submit');
    await vi.advanceTimersByTimeAsync(5_000);
    mend();
    await screen.find('form').trigger('submit');
    await flushPromises();
    expect(new Set(bodies.map((b) => b.id)).size).toBe(1);
    expect(screen.text()).toContain('Heron ward is set up');
  });
});
