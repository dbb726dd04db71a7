/**
 * The named states of a ward's runner; docs/catch-up.md has the picture. Pure.
 *
 * - `idle`: not started, or stopped.
 * - `catching-up`: reading history after the checkpoint.
 * - `live`: the checkpoint stands at the head of the log.
 * - `behind`: a bell or a poll told of events after the checkpoint.
 * - `paused-on-failure`: a read, a rule or a write failed; it tries again after a pause.
 */
export type RunnerState = 'idle' | 'catching-up' | 'live' | 'behind' | 'paused-on-failure';
export type RunnerSignal = 'start' | 'caught-up' | 'log-grew' | 'read-on' | 'failed' | 'retry' | 'stop';

const NEXT: Readonly<Record<RunnerState, Partial<Record<RunnerSignal, RunnerState>>>> = {
  idle: { start: 'catching-up' },
  'catching-up': { 'caught-up': 'live', failed: 'paused-on-failure', stop: 'idle' },
  live: { 'log-grew': 'behind', failed: 'paused-on-failure', stop: 'idle' },
  behind: { 'read-on': 'catching-up', failed: 'paused-on-failure', stop: 'idle' },
  'paused-on-failure': { retry: 'catching-up', stop: 'idle' },
};

/** A signal that means nothing in this state leaves it as it is. */
export const nextState = (state: RunnerState, signal: RunnerSignal): RunnerState =>
  NEXT[state][signal] ?? state;
