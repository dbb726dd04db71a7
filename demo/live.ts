/** Goes on where the seeded week ends: enters each next thing through the public API when the ward clock reaches it. */
import { randomUUID } from 'node:crypto';
import { toIso } from '@footboard/shared/kernel/times';
import type { EventId } from '@footboard/shared/kernel/ids';
import type { StayPage } from '@footboard/shared/wire/http';
import type { DemoClock } from './clock.ts';
import type { Entry, Find } from './entry.ts';

export interface Live {
  stop(): void;
}

/** Plays entries (in order) later than the clock's start. `say` gets one line for each refusal, with ids only. */
export function playLive(url: string, entries: readonly Entry[], clock: DemoClock, say: (line: string) => void): Live {
  const ahead = entries.filter((entry) => entry.at > clock.startedAt);
  const stopped = new AbortController();
  let timer: NodeJS.Timeout | undefined;

  const next = (index: number): void => {
    const entry = ahead[index];
    if (stopped.signal.aborted) return;
    if (!entry) {
      say('the demo has played to its end; the ward stays open');
      return;
    }
    const wait = Math.min(clock.realMsUntil(entry.at), 60_000);
    timer = setTimeout(() => {
      if (clock.realMsUntil(entry.at) > 0) return next(index);
      enter(url, entry, stopped.signal)
        .catch((error: unknown) => (error instanceof Error ? error.message : String(error)))
        .then((problem) => {
          if (problem && !stopped.signal.aborted) say(`demo entry ${entry.command} was not taken: ${problem}`);
          next(index + 1);
        });
    }, wait);
    timer.unref();
  };
  next(0);
  return {
    stop() {
      stopped.abort();
      clearTimeout(timer);
    },
  };
}

async function enter(url: string, entry: Entry, signal: AbortSignal): Promise<string | null> {
  const found = new Map<string, EventId | null>();
  if (typeof entry.data === 'function') await lookUp(url, entry, found, signal);
  const find: Find = (stay, type) => found.get(`${stay} ${type}`) ?? null;
  const data = typeof entry.data === 'function' ? entry.data(find) : entry.data;
  if (data === null) return null;
  const answer = await fetch(`${url}/api/wards/${entry.ward}/commands/${entry.command}`, {
    method: 'POST',
    signal,
    headers: { 'content-type': 'application/json', 'x-footboard-staff': entry.by },
    body: JSON.stringify({
      commandId: randomUUID(),
      occurred: { at: toIso(entry.at) },
      entered: { at: toIso(entry.at), offsetMinutes: 0 },
      source: { kind: 'demo' },
      expect: 'latest',
      data,
    }),
  });
  if (answer.ok) return null;
  const problem = (await answer.json().catch(() => ({}))) as { detail?: string };
  return problem.detail ?? `status ${answer.status}`;
}

/** Runs the entry's own look-ups once with a recording `find`, then answers them from the stay's timeline. */
async function lookUp(url: string, entry: Entry, found: Map<string, EventId | null>, signal: AbortSignal) {
  if (typeof entry.data !== 'function') return;
  const asked: [string, string][] = [];
  entry.data((stay, type) => {
    asked.push([stay, type]);
    return null;
  });
  for (const [stay, type] of asked) {
    const answer = await fetch(`${url}/api/wards/${entry.ward}/stays/${stay}`, { signal, headers: { 'x-footboard-staff': entry.by } });
    if (!answer.ok) continue;
    const page = (await answer.json()) as StayPage;
    const newest = page.timeline.filter((line) => line.type === type).toSorted((a, b) => b.recorded - a.recorded)[0];
    found.set(`${stay} ${type}`, newest?.event ?? null);
  }
}
