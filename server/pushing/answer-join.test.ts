import { describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import { WIRE_VERSION } from '@footboard/shared/wire/messages';
import type { Heartbeat, JoinAnswer, Patch, Snapshot } from '@footboard/shared/wire/messages';
import { problem } from '../commanding/problems.ts';
import { answerJoin } from './answer-join.ts';
import type { Joining } from './answer-join.ts';

const ward = 'w1' as WardId;
const patch = (from: number): Patch => ({ ward, from, to: from + 1, p: from + 1, t: 1, beds: [] });

/** A board at a feed number that keeps patches from `kept` on; `whileReading` runs before history is given. */
function boardAt(feed: number, kept: number, whileReading: (board: { feed: number }) => void = () => {}) {
  const board = { feed };
  return {
    snapshot: (of: WardId) =>
      of === ward
        ? ({ ward, feed: board.feed, board: { beds: [] as BedView[] } } as unknown as Snapshot)
        : null,
    heartbeat: (of: WardId) => (of === ward ? ({ ward, feed: board.feed } as Heartbeat) : null),
    patchesSince: async (_of: WardId, since: number) => {
      const until = board.feed;
      whileReading(board);
      if (since > until || since < kept) return null;
      return Array.from({ length: until - since }, (_, index) => patch(since + index));
    },
  };
}
async function asked(
  boards: ReturnType<typeof boardAt>,
  message: unknown,
  {
    admit = async () => ({ level: 'whole' }),
    stillIs = true,
  }: { admit?: Joining['admit']; stillIs?: boolean } = {},
) {
  const entered: string[] = [];
  const answers: JoinAnswer[] = [];
  await answerJoin(boards, message, {
    admit,
    enter: (of) => stillIs && entered.push(of) > 0,
    answer: (one) => answers.push(one),
  });
  expect(answers).toHaveLength(1);
  return { answer: answers[0]!, entered };
}
const join = (change: object = {}) => ({
  requestId: 'r1',
  wireVersion: WIRE_VERSION,
  ward,
  feed: 7,
  ...change,
});

describe('what a screen that joins is told', () => {
  it('is current when it stands where the board stands', async () => {
    const { answer, entered } = await asked(boardAt(7, 0), join());
    expect(answer).toMatchObject({ answer: 'current', requestId: 'r1', beat: { feed: 7 } });
    expect(entered).toEqual([ward]);
  });
  it('gets the linked changes when history reaches back to where it stands', async () => {
    const { answer } = await asked(boardAt(9, 5), join());
    expect(answer).toMatchObject({
      answer: 'changes',
      patches: [
        { from: 7, to: 8 },
        { from: 8, to: 9 },
      ],
    });
  });
  it.each([
    ['it has nothing', null],
    ['history does not reach back so far', 2],
    ['it comes from the future', 99],
  ])('gets everything when %s', async (_why, feed) => {
    const { answer } = await asked(boardAt(9, 5), join({ feed }));
    expect(answer).toMatchObject({ answer: 'snapshot', snapshot: { feed: 9 } });
  });
  it('gets everything rather than a very long list of changes', async () => {
    expect((await asked(boardAt(500, 0), join())).answer.answer).toBe('snapshot');
  });
  it('leaves no gap when the board moves on once while history is read', async () => {
    let moves = 1;
    const boards = boardAt(8, 0, (board) => {
      board.feed += moves;
      moves = 0;
    });
    expect((await asked(boards, join())).answer).toMatchObject({
      answer: 'changes',
      patches: [{ to: 8 }, { to: 9 }],
      beat: { feed: 9 },
    });
  });
  it('gets everything when the board never stands still while history is read', async () => {
    const boards = boardAt(8, 0, (board) => {
      board.feed += 1;
    });
    const { answer } = await asked(boards, join());
    expect(answer).toMatchObject({ answer: 'snapshot', snapshot: { feed: 11 }, beat: { feed: 11 } });
  });
  it.each([
    ['an older page', join({ wireVersion: WIRE_VERSION - 1, anything: 1 }), 'old-page', 'r1'],
    ['a newer page', join({ wireVersion: WIRE_VERSION + 1 }), 'old-server', 'r1'],
    ['an unknown ward', join({ ward: 'nowhere' }), 'no-such-ward', 'r1'],
    ['a wrong feed number', join({ feed: -1 }), 'malformed', 'r1'],
    ['an extra field', join({ more: true }), 'malformed', 'r1'],
    ['no object at all', 'join', 'malformed', null],
    ['nothing', undefined, 'malformed', null],
    ['a hostile id', join({ requestId: '<b>' }), 'malformed', null],
  ])('refuses %s, says why, and lets nobody into a room', async (_what, message, refused, requestId) => {
    const { answer, entered } = await asked(boardAt(9, 5), message);
    expect(answer).toMatchObject({
      answer: 'refused',
      refused,
      requestId,
      detail: expect.stringMatching(/\w/),
      remedy: expect.stringMatching(/\w/),
    });
    expect(entered).toEqual([]);
  });

  it.each([
    ['sign-in-first', 'sign-in-first'],
    ['not-allowed', 'not-allowed'],
    ['not-on-this-ward', 'not-allowed'],
  ] as const)('refused by the policy with %s, is told %s and nothing of the ward', async (code, refused) => {
    const admit = async () => ({ problem: problem(code, 'Why.', 'What to do.') });
    for (const of of [ward, 'nowhere']) {
      const { answer, entered } = await asked(boardAt(9, 5), join({ ward: of }), { admit });
      expect(answer).toEqual({
        answer: 'refused',
        requestId: 'r1',
        refused,
        detail: 'Why.',
        remedy: 'What to do.',
      });
      expect(entered).toEqual([]);
    }
  });
  it('is told nothing when it was put out while its answer was worked out', async () => {
    const { answer } = await asked(boardAt(9, 5), join(), { stillIs: false });
    expect(answer).toMatchObject({ answer: 'refused', refused: 'sign-in-first' });
  });
  it.each([
    ['whole', 'bed-only', 'snapshot'],
    ['bed-only', 'whole', 'snapshot'],
    ['visitors', 'bed-only', 'snapshot'],
    ['bed-only', 'initials', 'current'],
    ['whole', 'whole', 'current'],
    [undefined, 'whole', 'current'],
  ] as const)('given rows of %s and now the level %s, gets %s', async (holds, level, told) => {
    const message = join(holds === undefined ? {} : { holds });
    const { answer } = await asked(boardAt(7, 0), message, { admit: async () => ({ level }) });
    expect(answer.answer).toBe(told);
  });
});
