// What a change costs on the round: 36 people of 120 facts each; one of them gets a new fact, is looked at
// again, and the whole list is ranked anew with every reason, as text and hash. Beside it, in the same run, two
// plain things: writing the board as JSON, and sorting 36 numbers that were read from it.
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import { roundOn } from '@footboard/shared/capabilities/dayplan/rules/round';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { canonical, hashText } from '@footboard/server/log/canonical';
import { median, percentile } from './support/table.mjs';
import { longStay } from './support/long-stay.mjs';

const BEDS = 36;
const FACTS = 120;
const MINUTE = 60_000;
const ward = {
  ward: 'bench', name: 'Bench', zone: 'Europe/Berlin', wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00',
  beds: [], items: new Map(), staff: new Map(), protocols: [], carers: new Map(), peopleOn: new Map(), rules: null,
}; // prettier-ignore

const millis = (work) => {
  const started = process.hrtime.bigint();
  const kept = work();
  return [Number(process.hrtime.bigint() - started) / 1e6, kept];
};
const row = (what, all) => ({ case: what, 'p50 ms': median(all), 'p99 ms': percentile(all, 0.99) });

export function run({ looks = 300, warm = 40 } = {}) {
  const calendar = wardCalendar(ward);
  const records = Array.from({ length: BEDS }, (_, i) => {
    const events = longStay(FACTS + (i % 12), DEFAULT_PROTOCOL);
    return { stay: `stay-${i}`, version: events.length, events };
  });
  const end = Math.max(...records.map(({ events }) => events.at(-1).occurred));
  const morning = calendar.wardDay(end + 24 * 60 * MINUTE).from + 3 * 60 * MINUTE;
  // Bay and bed as on a ward; hands on the whole day, so that every visit by two is matched as well.
  const hands = new Map(
    Array.from({ length: 10 }, (_, i) => [`carer-${i}`, [{ from: morning - 1e8, to: morning + 1e8 }]]),
  );
  const views = records.map((record) => evaluateStay(record, ward, calendar, morning).view);
  const beds = views.map((view, i) => ({
    bed: `bed-${i}`,
    label: String(i + 1),
    bay: `Bay ${Math.floor(i / 6)}`,
    ceilingTrack: false,
    state: 'occupied',
    carers: null,
    // What keeps nobody off the list: the whole ward is ranked, the dearest case.
    stay: {
      ...view,
      stay: `stay-${i}`,
      holds: [],
      checkBeforeMoving: false,
      trust: { ...view.trust, state: 'current', openTriggers: [] },
      signs: [],
      mayStart: null,
      chair: null,
      lately: null,
      plan: view.plan && {
        ...view.plan,
        day: view.plan.day.map((p) => ({ ...p, hold: false, people: i % 3 === 0 ? 'two' : p.people })),
      },
    },
  }));
  const board = { ward: 'bench', beds };
  const rank = (of, t) => {
    const round = roundOn({ board: of, t, calendar, rules: DEFAULT_RULES, asker: null, hands });
    const text = canonical(round);
    return [round, hashText(text)];
  };
  const times = { change: [], rank: [], json: [], sort: [] };
  let listed = 0;
  for (let i = 0; i < warm + looks; i++) {
    const t = morning + (i % 120) * MINUTE;
    const at = i % BEDS;
    const [change] = millis(() => {
      const { view } = evaluateStay(records[at], ward, calendar, t);
      const changed = beds.map((bed, n) =>
        n === at ? { ...bed, stay: { ...bed.stay, lastUp: view.lastUp, today: view.today } } : bed,
      );
      return rank({ ...board, beds: changed }, t);
    });
    const [ranked, [round]] = millis(() => rank(board, t));
    listed = round.entries.length;
    const [json] = millis(() => JSON.stringify(board));
    const [sort] = millis(() => beds.map(({ stay }) => stay.lastUp?.at ?? 0).toSorted((a, b) => a - b));
    if (i < warm) continue;
    times.change.push(change);
    times.rank.push(ranked);
    times.json.push(json);
    times.sort.push(sort);
  }
  const p50 = median(times.change);
  const p99 = percentile(times.change, 0.99);
  return {
    rows: [
      row(
        `one of ${BEDS} people changes: looked at again, ${listed} ranked, with text and hash`,
        times.change,
      ),
      row('the ranking alone', times.rank),
      row('the board as JSON', times.json),
      row(`${BEDS} numbers sorted`, times.sort),
    ],
    ratios: [
      { measure: 'a change : the board as JSON', value: p50 / median(times.json), target: '', holds: '' },
      { measure: 'people listed', value: listed, target: `${BEDS}`, holds: listed === BEDS },
      { measure: 'a change: p50 ms', value: p50, target: '< 100', holds: p50 < 100 },
      { measure: 'a change: p99 ms', value: p99, target: '< 100', holds: p99 < 100 },
    ],
  };
}
if (process.argv[1] === new URL(import.meta.url).pathname) console.log(run());
