/** Whole screens at noon, each with a store and a router of its own; their ward answers by hand. */
import { mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia, type Pinia } from 'pinia';
import { afterEach, beforeEach, vi } from 'vitest';
import { nextTick, type Component } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import type { WardId } from '@footboard/shared/kernel/ids';
import { NOON, beatOf, bedRow, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';

export const W = 'w1' as WardId;
let pinia: Pinia;
let page: VueWrapper | null = null;

/** Until the test is over, in the page that the browser would have. */
export async function show(component: Component, props: Record<string, unknown> = { ward: 'w1' }) {
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<i/>' } }],
  });
  page = mount(component, { props, global: { plugins: [pinia, router] }, attachTo: document.body });
  await nextTick();
  return page;
}

/** A screen whose ward answers by hand. */
export function ward() {
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

/** To be said once in a file: each of its tests begins anew, and leaves nothing behind. */
export function screensAnew(): void {
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
}
