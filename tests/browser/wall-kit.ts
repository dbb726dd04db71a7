/**
 * The built wall before a ward that a test plays by hand: the real page, font, sockets and messages,
 * with rows that a real ward would need weeks to come to.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { PlannedView } from '@footboard/shared/capabilities/board/activity-view';
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, BoardView, StayView } from '@footboard/shared/capabilities/board/view';
import type { EventId } from '@footboard/shared/kernel/ids';
import { SOCKET, joinAnswer } from '@footboard/shared/wire/messages';
import { packRows } from '@footboard/shared/wire/pack';
import { Server } from 'socket.io';
import {
  HOUR,
  NOON,
  beatOf,
  bedRow,
  boardRow,
  holdRow,
  planFor,
  stayRow,
} from '../../web/board/rows.testkit.ts';

const dist = join(new URL('../..', import.meta.url).pathname, 'web/dist');
const KIND: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

export interface PlayedWard {
  readonly url: string;
  /** The whole board for screens that join from now on. */
  show(board: Partial<BoardView>): void;
  /** One linked change to every screen. */
  change(...beds: readonly BedView[]): void;
  /** Beats stop, as if the server had gone. */
  fallSilent(): void;
  /** From now on the program that is served is another one: its service worker has changed. */
  serveNewer(): void;
  /** The ward's clock now (epoch ms). */
  clock(): number;
  close(): Promise<void>;
}

const nobody = {
  access: 'open',
  firstRun: false,
  singleSignOn: null,
  person: null,
  wards: [],
};
/** A paired wall: it says what it has painted. */
const paired = { device: 'd1', kind: 'wall', ward: 'w1', level: 'bed-only' };

export interface Played {
  /** How fast the ward's clock runs. */
  readonly rate?: number;
  readonly paired?: boolean;
}

export async function playWard(how: Played = {}): Promise<PlayedWard> {
  const { rate = 1 } = how;
  const me = { ...nobody, device: how.paired ? paired : null };
  const http = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://w').pathname;
    if (path.startsWith('/api/')) {
      response.setHeader('content-type', 'application/json');
      return response.end(JSON.stringify(path === '/api/me' ? me : {}));
    }
    const file = extname(path) === '' ? '/index.html' : path;
    // As the real server does (server/http/security.ts): nothing inline, nothing from elsewhere.
    response.setHeader(
      'content-security-policy',
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'",
    );
    response.setHeader('content-type', KIND[extname(file)] ?? 'application/octet-stream');
    try {
      const content = readFileSync(join(dist, file));
      response.end(file === '/sw.js' ? `${content.toString()}\n// ${program}\n` : content);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  let program = 1;
  const sockets = new Server(http, { serveClient: false });
  const started = Date.now();
  let board = boardRow([]);
  let feed = 1;
  let silent = false;
  const clock = () => NOON + (Date.now() - started) * rate;
  const beat = () => {
    const at = clock();
    return beatOf({ clock: at, rate, readAt: at, evaluatedAt: at, feed });
  };
  sockets.on('connection', (socket) => {
    socket.on(SOCKET.join, (asked: { requestId: string }, answer: (told: unknown) => void) => {
      if (silent) return;
      const snapshot = { ward: 'w1', feed, p: feed, t: NOON, board: packRows(board) };
      const told = { answer: 'snapshot', requestId: asked.requestId, snapshot, beat: beat() };
      // A row that no server could send would prove nothing.
      joinAnswer.parse(told);
      answer(told);
    });
  });
  const beating = setInterval(() => !silent && sockets.emit(SOCKET.beat, beat()), 2_000);
  await new Promise<void>((done) => http.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(http.address() as AddressInfo).port}`,
    show(next) {
      board = { ...boardRow([]), ...next };
      feed += 1;
    },
    change(...beds) {
      const from = feed++;
      board = { ...board, beds: board.beds.map((old) => beds.find((one) => one.bed === old.bed) ?? old) };
      sockets.emit(SOCKET.patch, packRows({ ward: 'w1', from, to: feed, p: feed, t: NOON, beds }));
    },
    fallSilent: () => (silent = true),
    serveNewer: () => void (program += 1),
    clock,
    async close() {
      clearInterval(beating);
      await sockets.close();
    },
  };
}

const plan = (over: Partial<TaskPlan>): StayView['plan'] => {
  const own = [planFor('bed-chair', over), planFor('toilet', over)];
  return { day: own, night: own };
};
const trust = (word: StayView['trust']['state'], more: Partial<StayView['trust']> = {}) => ({
  ...stayRow().trust,
  state: word,
  ...more,
});
const due = (state: StayView['due']['state'], at: number | null) => ({ ...stayRow().due, state, at });
const tier = (word: string, notch: number | null, hoursAgo: number) => ({
  ...stayRow().tier,
  word,
  notch,
  at: NOON - hoursAgo * HOUR,
});
const AIDS: readonly Partial<
  StayView & { people: TaskPlan['people']; aid: TaskPlan['aid']; with: string[] }
>[] = [
  { people: 'three-or-more', aid: 'bariatric-lift', with: ['slide sheet'] },
  { people: 'two', aid: 'standing-aid', with: ['powered standing aid', 'chair following'] },
  { people: 'one', aid: 'walking-support', walkingSupport: 'wheeled-frame' },
  { people: 'two', aid: 'seated-transfer-aid', with: ['lateral sliding aid'] },
  { people: 'stand-by', aid: 'walking-support', walkingSupport: 'crutches' },
  { people: 'on-own', aid: 'none', with: [] },
  { people: 'two', aid: 'lateral-transfer-aid', with: ['slide sheet'] },
  { people: 'one', aid: 'walking-support', walkingSupport: 'two-sticks' },
  { people: 'two', aid: 'sling-lift', with: ['slide sheet'] },
  { people: 'one', aid: 'belt', with: ['belt, stand and turn'] },
  { people: 'one', aid: 'walking-support', walkingSupport: null },
  { people: 'three-or-more', aid: 'slide-sheet', with: ['friction-reducing sheet'] },
];

const mixedLabel = (i: number): string =>
  ['A1', '12', '24B', 'W12', '1204'][i % 5]!.replace(/\d+$/, (n) => String(Number(n) + i).slice(-n.length));

/** The same invented rows whatever the number of beds: every aid, every state, the longest words beside each other. */
export function longestWords(count: number, labels: (i: number) => string = mixedLabel): BedView[] {
  return Array.from({ length: count }, (_, i) => {
    const { people, aid, with: others, ...rest } = AIDS[i % AIDS.length]!;
    const move = { people: people!, aid: aid!, with: others ?? [] };
    const base = stayRow({
      stay: `s${i}` as StayView['stay'],
      tier: tier('Supported', 0.05, 23),
      plan: plan(move),
      walkingSupport: 'walkingSupport' in rest ? rest.walkingSupport! : null,
      lastUp: { at: NOON - 23 * HOUR, event: 'e' as EventId, activity: 'chair' },
      today: { ...stayRow().today, recorded: i % 2 === 0 },
      visit: visit(i),
      ...(i % 3 === 0 ? { planned: [heldVisit(i)] } : {}),
      firstTimeUpPending: true,
      isolation: true,
      shown: 'bed-only',
    });
    return { ...bedRow(labels(i), inState(base, i, move)), bed: `bed-${i}` as BedView['bed'] };
  });
}

const visit = (i: number): StayView['visit'] => ({
  visit: `v${i}`,
  by: 'n1' as NonNullable<StayView['visit']>['by'],
  second: null,
  from: NOON + 2 * HOUR,
  until: NOON + 3 * HOUR,
  event: 'e' as EventId,
});

/** Of the accepted plan, before the booking, and stopped by now. */
const heldVisit = (i: number): PlannedView => ({
  visit: `p${i}`,
  kind: 'care',
  from: NOON + HOUR,
  until: NOON + 1.5 * HOUR,
  crew: [],
  with: [],
  stopped: { rule: '', facts: [], words: '' },
});

const hold = (over: Parameters<typeof holdRow>[0]) => [holdRow({ scope: 'standing', ...over })];

function inState(base: StayView, i: number, move: Partial<TaskPlan>): StayView | null {
  switch (i % 14) {
    case 1:
      return {
        ...base,
        trust: trust('re-check'),
        due: due('overdue', NOON - 26 * HOUR),
        tier: tier('Edge', 0.4, 26),
      };
    case 3:
      return { ...base, holds: hold({}) };
    case 4:
      return {
        ...base,
        trust: trust('not-known'),
        tier: { ...tier('Not known', null, 1), at: null },
        checkBeforeMoving: true,
        lastUp: null,
      };
    case 6:
      return { ...base, holds: hold({ scope: 'out-of-bed' }), plan: plan({ ...move, hold: true }) };
    case 7:
      return { ...base, holds: hold({ reviewDue: true }), trust: trust('re-check') };
    case 9:
      return { ...base, away: { since: NOON - HOUR, reason: 'theatre', dueBack: NOON + HOUR } };
    case 10:
      return null;
    case 11:
      return { ...base, wall: 'nothing', shown: 'ask-at-the-bedside', plan: null };
    case 12:
      return { ...base, scope: { kind: 'comfort', fence: null, plan: null }, plan: null };
    case 13:
      return {
        ...base,
        trust: trust('re-check', {
          conflicts: [{ question: '', safer: 'e' as EventId, other: 'e' as EventId, words: '' }],
        }),
      };
    default:
      return base;
  }
}
