/** The huddle: its lists with their reasons, gaps apart from zeros, and an old list marked as old. */
import { flushPromises } from '@vue/test-utils';
import { describe, expect, it, vi } from 'vitest';
import { NOON, beatOf, bedRow, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';
import HuddlePage from './HuddlePage.vue';
import { screensAnew, show, W, ward } from './screens.testkit.ts';

screensAnew();

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
