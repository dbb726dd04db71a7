import { mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { nextTick } from 'vue';
import type { Problem } from '@footboard/shared/wire/http';
import PageState from './PageState.vue';

const problem = (status: number): Problem => ({
  type: '/problems/any',
  title: 'No answer',
  status,
  detail: 'Nothing was read',
  remedy: 'Try again',
});
const page = (over: Partial<InstanceType<typeof PageState>['$props']> = {}) =>
  mount(PageState, {
    props: { problem: null, waiting: false, of: 'the day', ...over },
    slots: { default: 'the page itself' },
  });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const after = async (ms: number) => {
  vi.advanceTimersByTime(ms);
  await nextTick();
};

describe('what stands in the place of a page', () => {
  it('given a quick answer, no waiting is ever shown', async () => {
    const wrapper = page({ waiting: true });
    await after(900);
    expect(wrapper.text()).toBe('');
    await wrapper.setProps({ waiting: false });
    await after(20_000);
    expect(wrapper.text()).toBe('the page itself');
  });

  it('given a slow one, says after a second what is waited for, and later offers to ask again', async () => {
    const wrapper = page({ waiting: true });
    await after(1_000);
    expect(wrapper.get('[role=status]').text()).toBe('Asking for the day.');
    expect(wrapper.find('button').exists()).toBe(false);
    await after(9_000);
    await wrapper.get('button').trigger('click');
    expect(wrapper.emitted('again')).toHaveLength(1);
  });

  it('given a failure, says what to do and asks again; given no right to it, shows the way to the wards', async () => {
    const failed = page({ problem: problem(503), waiting: true });
    expect(failed.text()).toContain('Nothing was read. Try again.');
    await failed.get('button').trigger('click');
    expect(failed.emitted('again')).toHaveLength(1);
    const turnedAway = page({ problem: problem(403) });
    expect(turnedAway.find('button').exists()).toBe(false);
    expect(turnedAway.get('a').attributes('href')).toBe('/');
    expect(turnedAway.text()).not.toContain('the page itself');
  });

  it('given nothing in the answer, says so in words', () => {
    expect(page({ empty: 'Nobody was here.' }).text()).toBe('Nobody was here.');
  });
});
