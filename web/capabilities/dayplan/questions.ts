/** The five questions of the huddle as lines to speak through, from the server's page and the board. Pure. */
import type { Because } from '@footboard/shared/capabilities/board/because';
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { ActionKind } from '@footboard/shared/capabilities/dayplan/values';
import type { HuddlePage } from '@footboard/shared/wire/http';
import { told } from '../../i18n/told.ts';
import { sentence } from '../words.ts';
import { say } from './words.ts';

export type HuddleAction = HuddlePage['actions'][number];
type Line = HuddlePage['overdue'][number];

export interface ReviewLine {
  readonly key: string;
  /** The bed; null for the ward. */
  readonly bed: string | null;
  readonly label: string;
  readonly stay: string | null;
  /** Staff id, and how it is named beside the line. */
  readonly owner: { readonly staff: string | null; readonly as: 'nurse' | 'hold-owner' } | null;
  readonly parts: readonly string[];
  readonly because: readonly Because[];
  readonly needs: boolean;
  /** Open actions about the same person; on a line that is itself an action, that one. */
  readonly actions: readonly HuddleAction[];
  readonly itself: boolean;
  readonly suggests: ActionKind | null;
}
export interface Question {
  readonly n: 1 | 2 | 3 | 4 | 5;
  readonly title: string;
  readonly asks: string;
  readonly none: string;
  /** Said before the lines: counts that are about no bed. */
  readonly notes: readonly string[];
  readonly lines: readonly ReviewLine[];
}
export interface Speaks {
  readonly nameOf: (staff: string) => string;
  /** An instant on the ward's clock. */
  readonly moment: (at: number) => string;
}

export function questionsOf(page: HuddlePage, board: BoardView, speaks: Speaks): readonly Question[] {
  const of = (question: string, lines: readonly Line[], more: Partial<ReviewLine> = {}): ReviewLine[] =>
    lines.map((line, i) => ({
      key: `${question}-${line.bed}-${i}`,
      bed: line.bed,
      label: line.label,
      stay: line.stay,
      owner: null,
      parts: [sentence(told(line.words))],
      because: line.because,
      needs: false,
      actions: page.actions.filter(({ stay }) => stay !== null && stay === line.stay),
      itself: false,
      suggests: null,
      ...more,
      ...(more.owner ? { owner: { ...more.owner, staff: line.owner } } : {}),
    }));
  const nurse = { staff: null, as: 'nurse' } as const;
  return [
    {
      n: 1,
      title: say('q1-title'),
      asks: page.since.held ? say('q1-ask', { time: speaks.moment(page.since.at) }) : say('q1-ask-24'),
      none: say('q1-none'),
      notes: [],
      lines: onePerPerson(of('q1', page.changes)),
    },
    {
      n: 2,
      title: say('q2-title'),
      asks: say('q2-ask'),
      none: say('q2-none'),
      notes: [],
      lines: of('q2', page.overdue, { owner: nurse, needs: true, suggests: 'check-again' }),
    },
    {
      n: 3,
      title: say('q3-title'),
      asks: say('q3-ask'),
      none: say('q3-none'),
      notes: [],
      lines: [
        ...of('q3', page.notUp, { owner: nurse, needs: true, suggests: 'get-up-today' }),
        ...of('q3h', page.holdsToday, {
          owner: { staff: null, as: 'hold-owner' },
          needs: true,
          suggests: 'review-the-hold',
        }),
      ],
    },
    {
      n: 4,
      title: say('q4-title'),
      asks: say('q4-ask'),
      none: say('q4-none'),
      notes: [
        board.lifts
          ? say('lifts-some', { usable: board.lifts.usable, all: board.lifts.all })
          : say('lifts-none'),
        board.peopleOn === null
          ? say('people-nobody')
          : say('people-on', { n: board.peopleOn }, board.peopleOn),
      ],
      lines: handsAndLifts(page, board, of),
    },
    {
      n: 5,
      title: say('q5-title'),
      asks: say('q5-ask'),
      none: say('q5-none'),
      notes:
        page.leavingOthers > 0 ? [say('leaving-others', { n: page.leavingOthers }, page.leavingOthers)] : [],
      lines: [
        ...page.actions.map((action) => actionLine(action, speaks)),
        ...of('q5', page.leavingShort, { owner: nurse, needs: true, suggests: 'prepare-leaving' }),
      ],
    },
  ];
}

/** All that changed for one person is one line. */
function onePerPerson(lines: readonly ReviewLine[]): ReviewLine[] {
  const byPerson = new Map<string, ReviewLine>();
  for (const line of lines) {
    const key = line.stay ?? line.key;
    const known = byPerson.get(key);
    byPerson.set(
      key,
      known
        ? { ...known, parts: [...known.parts, ...line.parts], because: [...known.because, ...line.because] }
        : line,
    );
  }
  return [...byPerson.values()];
}

/** One line a bed, in the ward's order: what it needs a lift for, and what two people. */
function handsAndLifts(
  page: HuddlePage,
  board: BoardView,
  of: (question: string, lines: readonly Line[], more?: Partial<ReviewLine>) => ReviewLine[],
): ReviewLine[] {
  const order = new Map<string, number>(board.beds.map(({ bed }, i) => [bed, i]));
  const place = (line: Line) => order.get(line.bed) ?? board.beds.length;
  const all = [...page.needLift, ...page.twoPeople].toSorted((a, b) => place(a) - place(b));
  return onePerPerson(of('q4', all, { suggests: 'bring-a-second-person' }));
}

export function actionWords(action: HuddleAction, { nameOf, moment }: Speaks): string {
  return say(action.overdue ? 'action-overdue' : 'action-line', {
    kind: say(`kind-${action.kind}`),
    name: nameOf(action.owner),
    time: moment(action.by),
  });
}

function actionLine(action: HuddleAction, speaks: Speaks): ReviewLine {
  const gone = action.stay !== null && action.bed === null;
  const since = say('action-since', { time: speaks.moment(action.agreedAt) });
  return {
    key: `action-${action.action}`,
    bed: action.bed?.bed ?? null,
    label: action.bed?.label ?? (gone ? say('left') : say('ward')),
    stay: action.stay,
    owner: null,
    parts: [actionWords(action, speaks), ...(action.note ? [action.note] : []), since],
    because: [{ rule: 'huddle/action', facts: [], words: since }],
    needs: action.overdue,
    actions: [action],
    itself: true,
    suggests: action.kind,
  };
}
