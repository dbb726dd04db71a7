// How good the forecast of lifts is on invented wards whose truth it does not assume, and what it costs. Writes
// docs/forecast.md with the reliability table. The wards and their scoring are test code, so that the product does
// not carry them: they are loaded from their sources.
import { writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';
import { median, table } from './support/table.mjs';

const root = new URL('..', import.meta.url).pathname;
const WARDS = Number(process.env.FORECAST_WARDS ?? 40);
const DAYS = 28;
const RUNS = 2000;

const load = async (name) => {
  const { module } = await runnerImport(`${root}shared/capabilities/forecast/rules/${name}.ts`, {
    root,
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['source'] },
  });
  return module;
};
const share = (n) => n.toFixed(3);

export async function run() {
  const { heldOut } = await load('held-out.testkit');
  const { someWard } = await load('synthetic.testkit');
  const { brier, calibrationError, reliability, skill } = await load('scoring.testkit');
  const wards = [];
  const all = { told: [], flat: [], everyDay: [] };
  const times = { forecast: [], loop: [] };
  for (let seed = 1; seed <= WARDS; seed++) {
    const truth = someWard(seed);
    // A plain loop over as many random numbers as a day's requests take, for a ratio that holds on any machine.
    const started = performance.now();
    let sum = 0;
    for (let i = 0; i < RUNS * truth.people * 30; i++) sum += Math.log(1 - Math.random());
    const looped = performance.now();
    const scored = heldOut(truth, { days: DAYS, runs: RUNS });
    times.loop.push(looped - started + sum * 0);
    // Two forecasts, the taught and the flat one, and the ward itself.
    times.forecast.push((performance.now() - looped) / 2);
    for (const of of Object.keys(all)) all[of].push(...scored[of]);
    wards.push({
      ward: seed,
      people: truth.people,
      lifts: truth.lifts,
      requests: scored.told.length,
      late: share(scored.told.filter(({ happened }) => happened).length / scored.told.length),
      Brier: share(brier(scored.told)),
      'skill over the flat start': share(skill(scored.told, scored.flat)),
      'skill over one chance': share(skill(scored.told, scored.everyDay)),
      'calibration error': share(calibrationError(scored.told)),
    });
  }
  const bins = reliability(all.told)
    .filter(({ n }) => n > 0)
    .map((bin) => ({
      told: `${bin.from.toFixed(1)} to ${bin.to.toFixed(1)}`,
      requests: bin.n,
      'told on the mean': share(bin.told),
      happened: share(bin.happened),
    }));
  const missed = wards.filter(
    (ward) => Number(ward['skill over the flat start']) <= 0 || Number(ward['calibration error']) >= 0.05,
  );
  const overFlat = skill(all.told, all.flat);
  const error = calibrationError(all.told);
  writeFileSync(
    `${root}docs/forecast.md`,
    page({ wards, bins, missed, overFlat, error, all, skill, calibrationError }),
  );
  return {
    rows: [
      { case: `${WARDS} wards, ${DAYS} later days each, ${RUNS} simulated days`, requests: all.told.length },
      { case: 'wards with no skill over the flat start', requests: wards.filter((w) => Number(w['skill over the flat start']) <= 0).length },
      { case: 'wards whose own calibration error is 0.05 or more', requests: wards.filter((w) => Number(w['calibration error']) >= 0.05).length },
    ], // prettier-ignore
    ratios: [
      { measure: 'Brier skill over the flat start, all wards', value: overFlat, target: '> 0', holds: overFlat > 0 },
      { measure: 'expected calibration error, all wards', value: error, target: '< 0.05', holds: error < 0.05 },
      { measure: 'one forecast : a loop over its random numbers', value: median(times.forecast) / median(times.loop), target: '', holds: '' },
      { measure: 'one forecast, ms', value: median(times.forecast), target: '', holds: '' },
    ], // prettier-ignore
  };
}

const page = ({
  wards,
  bins,
  missed,
  overFlat,
  error,
  all,
  skill,
  calibrationError,
}) => `# How good the forecast of lifts is

Written by \`npm run bench forecast\`. ${WARDS} invented wards (fixed seeds) whose truth the forecast does not assume:
everybody asks at a rate of their own, with peaks on waking, after meals and at bedtime; calls come in bursts; uses of a
lift last lognormally; lifts break for four hours; up to three in ten days of a stay are not recorded. The forecast learns
from 28 recorded days and is asked about the ${DAYS} days after them: for every request, the chance that it waits over
10 minutes, against whether it did. The wards are simulated by code of their own
(\`shared/capabilities/forecast/rules/synthetic.testkit.ts\`).

| over all wards | |
| --- | --- |
| Brier skill over the flat start (the same machine with nothing recorded) | ${share(overFlat)} |
| Brier skill over one chance for every request (how often it happened before) | ${share(skill(all.told, all.everyDay))} |
| expected calibration error, ten bins | ${share(error)} |
| the same of the flat start | ${share(calibrationError(all.flat))} |

Brier score and skill: Brier, Mon Weather Rev 1950;78:1-3; expected calibration error: the distance between told and
happened in each bin, weighted by how many requests fell into it.

## Reliability

Data of the reliability diagram: on a forecast that means what it says, both columns are the same.

${table(bins)}

## Misses

${missed.length === 0 ? 'None.' : `Wards with no skill over the flat start, or whose own calibration error is 0.05 or more (${missed.length} of ${WARDS}; the error of a single ward is also raised by its few days):`}

${table(missed)}

## Every ward

${table(wards)}

## What it does not know

- People are not the same every day: who rings more is learnt for all of a kind of stay together, not person by person.
- A lift that breaks is known once somebody says so; that one may break later today is not forecast.
- Calls that set each other off (a burst) are counted as if they came by chance; chances near 0 are therefore told a
  little too low, and high ones a little too high.
- What is not recorded is not learnt from. A day of a stay with nothing recorded is left out, not taken for a quiet one.
- No trial on a real ward has been done.
`;
if (process.argv[1] === new URL(import.meta.url).pathname) console.log(await run());
