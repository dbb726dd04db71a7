// What a board costs to keep right: one stay of 200 facts looked at, as time goes on and when a fact arrives, against
// two plain things in the same run: a loop over the same facts, and writing the view as JSON.
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { evaluateFacts } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import { median, percentile } from './support/table.mjs';
import { longStay } from './support/long-stay.mjs';

const FACTS = 200;
const HOUR = 3_600_000;
const ward = {
  ward: 'bench', name: 'Bench', zone: 'Europe/Berlin', wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00',
  beds: [], staff: new Map(), protocols: [], rules: null,
}; // prettier-ignore

const micros = (work) => {
  const started = process.hrtime.bigint();
  const kept = work();
  return [Number(process.hrtime.bigint() - started) / 1000, kept];
};

const row = (what, all) => ({ case: what, 'p50 µs': median(all), 'p99 µs': percentile(all, 0.99) });

export function run({ looks = 20_000, warm = 4_000 } = {}) {
  const events = longStay(FACTS, DEFAULT_PROTOCOL);
  const record = { stay: 's1', version: events.length, events };
  const calendar = wardCalendar(ward);
  const effective = effectiveFacts(record);
  const end = events.at(-1).occurred;
  const times = { changes: [], between: [], newFact: [], loop: [], json: [] };
  let bytes = 0;
  let t = end;
  let kept = effective;
  for (let i = 0; i < warm + looks; i++) {
    // From one instant at which the view changes to the next, as the scheduler does; after three weeks anew.
    if (t > end + 500 * HOUR) {
      t = end + (i % 60) * 60_000;
      kept = effectiveFacts(record);
      evaluateFacts(record, kept, ward, calendar, t);
    }
    const [changes, { view, nextChange }] = micros(() => evaluateFacts(record, kept, ward, calendar, t));
    const [between] = micros(() =>
      evaluateFacts(record, kept, ward, calendar, Math.floor((t + nextChange) / 2)),
    );
    // A fact arrived: nothing that was worked out from the facts before is of use.
    const [newFact] =
      i % 10 === 0 ? micros(() => evaluateFacts(record, effectiveFacts(record), ward, calendar, t)) : [null];
    const [loop] = micros(() => {
      const counts = new Map();
      for (const fact of effective.facts) {
        if (fact.occurred <= t) counts.set(fact.type, (counts.get(fact.type) ?? 0) + 1);
      }
      return counts;
    });
    const [json, text] = micros(() => JSON.stringify(view));
    bytes = text.length;
    t = nextChange;
    if (i < warm) continue;
    times.changes.push(changes);
    times.between.push(between);
    if (newFact !== null) times.newFact.push(newFact);
    times.loop.push(loop);
    times.json.push(json);
  }
  const p50 = median(times.changes);
  const p99 = percentile(times.changes, 0.99);
  return {
    rows: [
      row(`one stay of ${FACTS} facts, at each instant at which it changes`, times.changes),
      row('the same in between', times.between),
      row('the same from the events anew, as when a fact has arrived', times.newFact),
      row(`a loop over the ${effective.facts.length} facts`, times.loop),
      row(`the view as JSON (${bytes} characters)`, times.json),
    ],
    ratios: [
      {
        measure: 'as time goes on : the view as JSON',
        value: p50 / median(times.json),
        target: '',
        holds: '',
      },
      {
        measure: 'from the events anew : the view as JSON',
        value: median(times.newFact) / median(times.json),
        target: '',
        holds: '',
      },
      { measure: 'as time goes on: p50 µs', value: p50, target: '< 50', holds: p50 < 50 },
      { measure: 'as time goes on: p99 µs', value: p99, target: '< 200', holds: p99 < 200 },
      ...[
        ['from the events anew: p50 µs', median(times.newFact), 50],
        ['from the events anew: p99 µs', percentile(times.newFact, 0.99), 200],
      ].map(([measure, value, limit]) => ({ measure, value, target: `< ${limit}`, holds: value < limit })),
    ],
  };
}
if (process.argv[1] === new URL(import.meta.url).pathname) console.log(run());
