import { mount } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { describe, expect, it } from 'vitest';
import { useBoardStore } from '../../sync/board-store.ts';
import type { Kit } from './use-kit.ts';
import KitLine from './KitLine.vue';

const NOON = Date.parse('2026-11-25T12:00:00Z');
const seenAt = (at: number): string => {
  setActivePinia(createPinia());
  useBoardStore().$patch({ now: NOON });
  const line = {
    is: { name: 'Sling 2', attachment: 'loops', home: 'Linen room' },
    place: { words: 'Linen room', at },
    usable: { word: 'usable', against: [] },
  };
  const kit = { is: 'set', main: { line, usableNow: true }, sling: null, warnings: [] } as unknown as Kit;
  return mount(KitLine, { props: { kit, zone: 'UTC' } }).text();
};

describe('where a piece of equipment was seen', () => {
  it('has its day where that is not today, and only its time where it is', () => {
    expect(seenAt(NOON - 5 * 3_600_000)).toContain('seen at Linen room, 07:00');
    expect(seenAt(NOON - 29 * 3_600_000)).toContain('24 Nov 07:00');
  });
});
