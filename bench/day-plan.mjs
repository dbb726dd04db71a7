// The day plan on seeded invented wards (demo/planned-ward.ts): how near the bound in five seconds, time against beds,
// what is placed against first-come-first-served and against the rank alone, and what-if. DAY_PLAN_WARDS sets how many
// wards (100), DAY_PLAN_SECONDS how long each may take (5): the targets are for two cores with nothing else to do.
import { plannedWard } from '../demo/dist/planned-ward.js';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { feasibleVisits } from '@footboard/shared/capabilities/planning/rules/feasible';
import { placeIn } from '@footboard/shared/capabilities/planning/rules/greedy';
import { openPlanner } from '@footboard/server/capabilities/planning/open-planner';
import { openWorkerPool } from '@footboard/server/platform/worker-pool';
import { median, percentile } from './support/table.mjs';

const BEDS = [12, 18, 24, 30, 36];
const share = (n, of) => (of === 0 ? 1 : n / of);
const mean = (all) => all.reduce((a, b) => a + b, 0) / Math.max(1, all.length);
const ratio = (measure, value, least) => ({ measure, value, target: `>= ${least}`, holds: value >= least });
const percent = (is) => `${(100 * is).toFixed(1)} %`;

/** Whoever is first on the list, as soon as may be. */
const firstCome = (problem) =>
  placeIn(problem, feasibleVisits(problem), (a, b) => (a.first ?? Infinity) - (b.first ?? Infinity), true);
/** What weighs most, as soon as may be. */
const rankAlone = (problem) =>
  placeIn(problem, feasibleVisits(problem), (a, b) => b.visit.weight - a.visit.weight, true);
const weightOf = (problem, plan) =>
  plan.reduce((sum, p) => sum + problem.visits.find((v) => v.visit === p.visit).weight, 0);

/** The ward without whoever has most to do from the middle of the day on; the plan before is kept where it can be. */
function withoutOne(problem, placed) {
  const work = (staff) => placed.filter((p) => p.crew.includes(staff)).length;
  const most = problem.staff.toSorted((a, b) => work(b.staff) - work(a.staff))[0].staff;
  const half = Math.floor(problem.grid.slots / 2);
  return {
    ...problem,
    previous: placed.map(({ visit, start, crew, items }) => ({ visit, start, crew, items, pinned: false })),
    staff: problem.staff.map((one) =>
      one.staff === most ? { ...one, taken: [...one.taken, { from: half, until: problem.grid.slots }] } : one,
    ),
  };
}

export async function run({
  wards = Number(process.env.DAY_PLAN_WARDS ?? 100),
  seconds = Number(process.env.DAY_PLAN_SECONDS ?? 5),
} = {}) {
  const pool = openWorkerPool();
  const planner = openPlanner(pool);
  const { signal } = new AbortController();
  const seen = [];
  const whatIf = [];
  // The first plan of a thread pays for compiling the solver.
  await planner.plan(plannedWard(0, 12), { seconds, signal });
  for (let i = 0; i < wards; i++) {
    const beds = BEDS[i % BEDS.length];
    const problem = plannedWard(i + 1, beds);
    const started = performance.now();
    const proposal = await planner.plan(problem, { seconds, signal });
    const took = (performance.now() - started) / 1_000;
    const needed = problem.visits.reduce((sum, v) => sum + v.weight, 0);
    seen.push({
      seed: i + 1,
      beds,
      visits: problem.visits.length,
      took,
      gap: proposal.gap,
      how: proposal.how,
      feasible: checkPlan(problem, proposal.placed).length === 0,
      placed: [proposal.placed, rankAlone(problem), firstCome(problem)].map((plan) => ({
        visits: share(plan.length, problem.visits.length),
        weight: share(weightOf(problem, plan), needed),
      })),
    });
    if (beds !== 36) continue;
    const before = performance.now();
    const other = withoutOne(problem, proposal.placed);
    const then = await planner.plan(other, { seconds: 1.6, signal });
    whatIf.push({
      took: (performance.now() - before) / 1_000,
      ok: checkPlan(other, then.placed).length === 0,
    });
  }
  await pool.close();

  const within = (limit) => seen.filter(({ gap }) => gap !== null && gap <= limit).length;
  const byBeds = BEDS.flatMap((beds) => {
    const of = seen.filter((one) => one.beds === beds);
    if (of.length === 0) return [];
    const gaps = of.map(({ gap }) => gap ?? 1);
    const [plan, rank, first] = [0, 1, 2].map((k) => [
      mean(of.map(({ placed }) => placed[k].visits)),
      mean(of.map(({ placed }) => placed[k].weight)),
    ]);
    return [
      {
        case: `${beds} beds`,
        wards: of.length,
        'visits p50': median(of.map(({ visits }) => visits)),
        's p50': median(of.map(({ took }) => took)),
        's p99': percentile(
          of.map(({ took }) => took),
          0.99,
        ),
        'gap p50': percent(median(gaps)),
        'gap worst': percent(Math.max(...gaps)),
        'placed (weight): plan': `${percent(plan[0])} (${percent(plan[1])})`,
        'rank alone': `${percent(rank[0])} (${percent(rank[1])})`,
        'first come': `${percent(first[0])} (${percent(first[1])})`,
      },
    ];
  });
  const far = seen
    .filter(({ gap }) => gap === null || gap > 0.01)
    .map(({ seed, beds, gap, how }) => ({
      case: `ward ${seed}, ${beds} beds: over 1 % from the bound`,
      'gap worst': gap === null ? `no bound (${how})` : percent(gap),
    }));
  const feasible = seen.filter((one) => one.feasible).length;
  const slowest = Math.max(0, ...whatIf.map(({ took }) => took));
  return {
    rows: [...byBeds, ...far],
    ratios: [
      ratio(`wards whose plan keeps every rule : ${wards}`, feasible / wards, 1),
      ratio(`wards within 5 % of the bound in ${seconds} s : ${wards}`, within(0.05) / wards, 0.9),
      ratio(`wards within 1 % of the bound in ${seconds} s : ${wards}`, within(0.01) / wards, 0.7),
      { measure: 'what-if of 36 beds, slowest (s)', value: slowest, target: '< 2', holds: slowest < 2 },
      ratio(
        'what-if plans that keep every rule',
        share(whatIf.filter(({ ok }) => ok).length, whatIf.length),
        1,
      ),
    ],
  };
}
if (process.argv[1] === new URL(import.meta.url).pathname) console.log(await run());
