/** A ward's link with nothing behind it: a test says what arrives, and reads what was asked for. */
import type { JoinAnswer, JoinRequest } from '@footboard/shared/wire/messages';
import type { LinkReports, OpenLink } from './connection.ts';

export function fakeLink() {
  const asked: (number | null)[] = [];
  const held: JoinRequest['holds'][] = [];
  const painted: number[] = [];
  let reports: LinkReports | null = null;
  let closed = false;
  const open: OpenLink = (_ward, to) => {
    reports = to;
    closed = false;
    return {
      join: (feed, holds) => {
        asked.push(feed);
        held.push(holds);
      },
      painted: (feed) => painted.push(feed),
      close: () => {
        closed = true;
      },
    };
  };
  return {
    open,
    asked,
    held,
    painted,
    get reports(): LinkReports {
      if (!reports) throw new Error('nothing has joined yet');
      return reports;
    },
    get closed() {
      return closed;
    },
    answer(answer: Record<string, unknown>): void {
      this.reports.answer({ requestId: 'q1', ...answer } as unknown as JoinAnswer);
    },
  };
}
