/** Waiting, as a port, so that a test can let time pass without passing it. */
export interface Timers {
  /** Calls back once after this many real milliseconds; the answer cancels it. */
  after(ms: number, callback: () => void): () => void;
}

export const systemTimers: Timers = {
  after: (ms, callback) => {
    const timer = setTimeout(callback, ms);
    return () => clearTimeout(timer);
  },
};
