import { describe, expect, it } from 'vitest';
import { nextState } from './runner-state.ts';
import type { RunnerSignal, RunnerState } from './runner-state.ts';

const walk = (...signals: RunnerSignal[]) =>
  signals.reduce<RunnerState>((state, signal) => nextState(state, signal), 'idle');

describe('the states of a runner', () => {
  it('goes from history to live, and back to reading when the log grows', () => {
    expect(walk('start')).toBe('catching-up');
    expect(walk('start', 'caught-up')).toBe('live');
    expect(walk('start', 'caught-up', 'log-grew')).toBe('behind');
    expect(walk('start', 'caught-up', 'log-grew', 'read-on', 'caught-up')).toBe('live');
  });
  it('is never called live after a failure before it has caught up again', () => {
    expect(walk('start', 'caught-up', 'failed', 'caught-up')).toBe('paused-on-failure');
    expect(walk('start', 'caught-up', 'failed', 'log-grew')).toBe('paused-on-failure');
    expect(walk('start', 'failed', 'retry', 'caught-up')).toBe('live');
  });
  it('stays stopped until it is started', () => {
    expect(walk('start', 'caught-up', 'stop', 'log-grew', 'retry', 'caught-up')).toBe('idle');
  });
});
