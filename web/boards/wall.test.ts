/** The wall: every bed, how old what it shows is, and when it covers itself. */
import { describe, expect, it, vi } from 'vitest';
import { nextTick } from 'vue';
import { NOON, beatOf, boardRow } from '../board/rows.testkit.ts';
import { screensAnew, show, W, ward } from './screens.testkit.ts';
import WallPage from './WallPage.vue';

screensAnew();

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
