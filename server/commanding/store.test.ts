import { describe, expect, it } from 'vitest';
import type { CommandId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { CommandSeen, LogUnavailable, OutcomeUnknown, VersionConflict } from '../log/log.ts';
import type { Appended, AppendRequest, CommandOutcome, Log } from '../log/log.ts';
import { Answered } from './problems.ts';
import { store } from './store.ts';

const outcome: CommandOutcome = {
  commandId: 'c1' as CommandId,
  ward: 'w' as WardId,
  name: 'record-trigger',
  bodyHash: 'aa',
  author: { staff: 'ada' as StaffId, role: 'aide' },
  outcome: 'accepted',
  result: { events: [] },
};
const request: AppendRequest = { command: outcome, events: [] };
const done: Appended = { events: [{ ward: outcome.ward, position: 1, recorded: 0 }] };

/** A log whose connection breaks as told; a commit "happens" when `commits` says so for that append. */
function breakingLog(
  appends: readonly { commits: boolean; says: Appended | Error }[],
  ask: 'answers' | Error = 'answers',
) {
  const left = [...appends];
  let kept: CommandOutcome | null = null;
  let writes = 0;
  const log: Pick<Log, 'append' | 'outcomeOf'> = {
    async append({ command }) {
      if (kept) throw new CommandSeen(kept);
      const next = left.shift()!;
      if (next.commits) {
        kept = command;
        writes += 1;
      }
      if (next.says instanceof Error) throw next.says;
      return next.says;
    },
    async outcomeOf() {
      if (ask instanceof Error) throw ask;
      return kept;
    },
  };
  return { log: log as Log, writes: () => writes };
}
const lost = new OutcomeUnknown(new Error('reset'));

const answerOf = async (work: Promise<unknown>) => {
  try {
    await work;
  } catch (error) {
    if (error instanceof Answered) return error.answer;
    throw error;
  }
  throw new Error('nothing was thrown');
};

describe('storing once, whatever the connection does', () => {
  it('CMD-5 a lost answer after the commit is found by the same id', async () => {
    const { log, writes } = breakingLog([{ commits: true, says: lost }]);
    expect(await store(log, request)).toEqual({ appended: null, seen: outcome });
    expect(writes()).toBe(1);
  });

  it('CMD-5 a lost answer before the commit is sent again, once', async () => {
    const { log, writes } = breakingLog([
      { commits: false, says: lost },
      { commits: true, says: done },
    ]);
    expect(await store(log, request)).toEqual({ appended: done, seen: null });
    expect(writes()).toBe(1);
  });

  it('lost twice says that it is not known, and that the same id is safe', async () => {
    const { log } = breakingLog([
      { commits: false, says: lost },
      { commits: true, says: lost },
    ]);
    expect(await answerOf(store(log, request))).toMatchObject({
      status: 503,
      type: '/problems/outcome-unknown',
      remedy: expect.stringContaining('same id: that is safe'),
    });
  });

  it('lost, and the database stays away: never claims that nothing was stored', async () => {
    const { log } = breakingLog([{ commits: true, says: lost }], new LogUnavailable(new Error('refused')));
    expect(await answerOf(store(log, request))).toMatchObject({ type: '/problems/outcome-unknown' });
  });

  it('a database that cannot be reached at all says that nothing was stored', async () => {
    const { log } = breakingLog([{ commits: false, says: new LogUnavailable(new Error('refused')) }]);
    expect(await answerOf(store(log, request))).toMatchObject({
      status: 503,
      type: '/problems/database-away',
    });
  });

  it('leaves a version conflict to the recipe', async () => {
    const { log } = breakingLog([{ commits: false, says: new VersionConflict(outcome.ward, 'stay/s 2') }]);
    await expect(store(log, request)).rejects.toBeInstanceOf(VersionConflict);
  });
});
