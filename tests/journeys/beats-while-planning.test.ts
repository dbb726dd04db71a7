/** While a day is planned the wall goes on hearing beats: planning never holds up the thread that beats. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPlanner } from '@footboard/server/capabilities/planning/open-planner';
import { openWorkerPool } from '@footboard/server/platform/worker-pool';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { SOCKET } from '@footboard/shared/wire/messages';
import { plannedWard } from '../../demo/planned-ward.ts';
import { newWard, openHospital, wardEvents } from './push-kit.ts';
import type { Hospital } from './push-kit.ts';

describe('a wall while the day is planned', () => {
  const pool = openWorkerPool();
  let hospital: Hospital;
  beforeAll(async () => {
    hospital = await openHospital();
  });
  afterAll(async () => {
    await hospital.close();
    await pool.close();
  });

  it('DAYPLAN-4 goes on hearing beats during the planning of a ward of 36 beds', async () => {
    const ward = newWard();
    await hospital.append(ward, ...wardEvents(ward, ['b1']));
    const screen = await hospital.screen(ward);
    await screen.join();
    const heard = { planning: false, during: 0 };
    screen.socket.on(SOCKET.beat, () => {
      if (heard.planning) heard.during++;
    });
    const problem = plannedWard(3, 36);
    const planner = openPlanner(pool);
    // A quick machine may need more than one plan until three beats are due.
    for (let plans = 0; plans < 5 && heard.during < 3; plans++) {
      heard.planning = true;
      const { placed } = await planner.plan(problem, { seconds: 9, signal: new AbortController().signal });
      heard.planning = false;
      expect(checkPlan(problem, placed)).toEqual([]);
    }
    expect(heard.during).toBeGreaterThanOrEqual(3);
  });
});
