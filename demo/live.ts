/** Goes on where the seeded week ends: enters each next thing through the public API when the ward clock reaches it. */
import { randomUUID } from 'node:crypto';
import { toIso } from '@footboard/shared/kernel/times';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { StayPage } from '@footboard/shared/wire/http';
import type { DemoClock } from './clock.ts';
import type { Entry, Find } from './entry.ts';

export interface Live {
  stop(): void;
}

/** Plays entries (in order) later than the clock's start. `say` gets one line for each refusal, with ids only. */
export function playLive(
  url: string,
  entries: readonly Entry[],
  clock: DemoClock,
  say: (line: string) => void,
): Live {
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
          if (problem && !stopped.signal.aborted)
            say(`demo entry ${entry.command} was not taken: ${problem}`);
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
  const data = typeof entry.data === 'function' ? entry.data(await lookUp(url, entry, signal)) : entry.data;
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

/** Runs the entry once with a recording `find`, then answers what it asked for from the stays' timelines. */
async function lookUp(url: string, entry: Entry, signal: AbortSignal): Promise<Find> {
  const asked = new Set<StayId>();
  if (typeof entry.data === 'function') {
    entry.data((stay) => {
      asked.add(stay);
      return null;
    });
  }
  const timelines = new Map<StayId, StayPage['timeline']>();
  for (const stay of asked) {
    const answer = await fetch(`${url}/api/wards/${entry.ward}/stays/${stay}`, {
      signal,
      headers: { 'x-footboard-staff': entry.by },
    });
    if (answer.ok) timelines.set(stay, ((await answer.json()) as StayPage).timeline);
  }
  return (stay, type, occurred) =>
    timelines.get(stay)?.find((line) => line.type === type && line.occurred === occurred)?.event ?? null;
}
