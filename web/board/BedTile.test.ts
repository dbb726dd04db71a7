import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import BedTile from './BedTile.vue';
import { NOON, bedRow, holdRow, planFor, stayRow } from './rows.testkit.ts';

const tile = (stay = stayRow(), over = {}) =>
  mount(BedTile, {
    props: { bed: bedRow('A1', stay), zone: 'Europe/Lisbon', night: false, now: NOON, old: false, ...over },
  });

const size = (selector: string) => parseFloat((tile().find(selector).element as HTMLElement).style.fontSize);

describe('a bed’s tile', () => {
  it('SCREEN-1 puts people and equipment before the tier’s day facts, in reading order', () => {
    const text = tile().text();
    const order = ['A1', '1 person', 'frame', 'up 2 h ago', '1 of 3', 'check by 14:00'].map((w) =>
      text.indexOf(w),
    );
    expect(order).not.toContain(-1);
    expect(order.toSorted((a, b) => a - b)).toEqual(order);
  });

  it('sets people in the largest size of the tile', () => {
    expect(size('.first p')).toBeGreaterThanOrEqual(size('.label'));
    expect(size('.first p')).toBeGreaterThan(2 * size('.facts'));
  });

  // users-job.md 2a: a hold is read from as far as people and equipment.
  it.each(['frame', 'powered standing aid', 'standing aid rated for the weight'])(
    'SCREEN-2 draws a hold beside "%s" at least as large as the equipment',
    (aid) => {
      const plan = [planFor('bed-chair', { aid: 'standing-aid', with: [aid] })];
      const holds = [holdRow({ scope: 'walking', reviewDue: true })];
      const drawn = tile(stayRow({ holds, plan: { day: plan, night: plan } }));
      const sizes = (of: string) =>
        drawn.findAll(of).map((p) => parseFloat((p.element as HTMLElement).style.fontSize));
      expect(drawn.find('.held').text()).toBe('HOLD REVIEW DUE: no walking');
      expect(sizes('.held p')[0]).toBeGreaterThanOrEqual(sizes('.first p')[1]!);
      expect(sizes('.first p')[0]).toBeGreaterThanOrEqual(sizes('.first p')[1]!);
    },
  );

  it('keeps long equipment words above the second rank by breaking them over two lines', () => {
    const plan = [
      planFor('bed-chair', { people: 'two', aid: 'standing-aid', with: ['powered standing aid'] }),
    ];
    const words = tile(stayRow({ plan: { day: plan, night: plan } })).findAll('.first p')[1]!;
    expect(words.text().replace(/\s+/g, ' ')).toBe('powered standing aid');
    expect(parseFloat((words.element as HTMLElement).style.fontSize)).toBeGreaterThan(30 / 16);
  });

  it('names the tier as its word and shows one bar, with no number', () => {
    const side = tile().find('.side');
    expect(side.text()).toBe('currentStand');
    expect(side.findAll('.notch-bar')).toHaveLength(1);
  });

  it('is named for a reader by bed, bay and state', () => {
    expect(tile().find('article').attributes('aria-label')).toBe('Bed A1, Bay 1, occupied');
  });

  it('SCREEN-4 under last known never says current', () => {
    const text = tile(stayRow(), { old: true }).text();
    expect(text).toContain('last known');
    expect(text).not.toContain('current');
    expect(text).toContain('1 person');
  });

  describe('a sign', () => {
    const signs = [{ kind: 'ready' as const, words: 'ready to check Turn', because: [] }];
    const last = (stay = stayRow({ signs }), over = {}) => {
      const lines = tile(stay, over).findAll('.facts');
      return lines.at(-1)!.text();
    };

    it('shares the last line quietly where there is room', () => {
      expect(last(stayRow({ signs }), { shape: 2 })).toBe('check by 14:00ready for more');
      expect(tile(stayRow({ signs }), { shape: 2 }).find('.needs').exists()).toBe(false);
    });
    it('makes nothing smaller and adds no line: without room it is left out', () => {
      const due = { ...stayRow().due, state: 'overdue' as const, at: NOON - 80 * 3_600_000 };
      const plain = tile(stayRow({ due }), { shape: 1 });
      const signed = tile(stayRow({ due, signs }), { shape: 1 });
      expect(signed.html()).toBe(plain.html());
    });
    it('gives way to what needs somebody', () => {
      expect(last(stayRow({ signs, firstTimeUpPending: true }))).toBe('check by 14:00first time up');
    });
  });
});
