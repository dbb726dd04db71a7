/**
 * What a part shows counts whatever its gate in a ward's own protocol: sitting balance and coming to
 * the edge alone are not there while the last finding of them is not met (design, capability).
 */
import { describe, expect, it } from 'vitest';
import { hours, fact, tierInput } from '../../assessments/rules/assessment.testkit.ts';
import { checkUnder, findingsMet, SHORT } from '../../assessments/rules/own-protocol.testkit.ts';
import type { Protocol } from '../../assessments/rules/protocol.ts';
import { judgeTier } from '../../assessments/rules/tier.ts';
import { assessmentRecorded } from '../../assessments/events.ts';
import type { Fact } from '../../corrections/facts.ts';
import { capabilityOf } from './capability.ts';
import { dayPlan, help, noOrders, planInput, stated, trust } from './plan.testkit.ts';

/** A ward that lets both parts of the edge only inform. */
const INFORMS: Protocol = {
  ...SHORT,
  stages: SHORT.stages.map((s) =>
    s.id === 'side'
      ? {
          ...s,
          parts: [
            ...s.parts.map((p) => ({ ...p, gate: 'informs' as const })),
            { ...s.parts[0]!, id: 'there', shows: undefined },
          ],
        }
      : s,
  ),
};
const SIDE = INFORMS.stages.find((s) => s.id === 'side')!;
/** A check under it in which some parts of the edge were not met. */
const check = (at: number, ...failed: string[]): Fact =>
  fact(
    assessmentRecorded.name,
    checkUnder(INFORMS, 'side', hours(at), {
      side: {
        findings: findingsMet(SIDE).map((f) =>
          failed.includes(f.part) ? { ...f, result: 'not-met' as const } : f,
        ),
      },
    }),
    { at, id: `check-${at}` },
  );
function input(facts: readonly Fact[], at = 1) {
  const given = { ...tierInput(facts, at), protocols: () => INFORMS };
  const tier = judgeTier(given);
  const weight = stated({ kg: 70, how: 'measured' as const });
  const capability = capabilityOf({ ...given, tier, orders: noOrders, weight });
  return { ...planInput(facts, {}, at), tier: tier.view, capability, trust: trust('current') };
}

describe("given a ward's own protocol in which sitting and coming to the edge only inform", () => {
  it('when both were met, then the person sits and comes alone', () => {
    const { capability } = input([check(0)]);
    expect(capability).toMatchObject({ sittingBalance: true, assists: 'fully' });
    expect(help(input([check(0)]), 'edge-of-bed')).toEqual(['go', 'stand-by', 'none']);
    expect(help(input([check(0)]), 'bed-chair')).toEqual(['go', 'one', 'seated-transfer-aid']);
  });
  it('when sitting was not met, then there is no sitting balance and the way to the chair is a lift', () => {
    const sat = input([check(0, 'sits-alone')]);
    expect(sat.capability).toMatchObject({ sittingBalance: false, assists: 'fully' });
    expect(help(sat, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(dayPlan(sat, 'bed-chair').because).toContainEqual({
      rule: 'capability/sitting-balance',
      facts: ['check-0'],
      words: 'Sitting unheld was not met at the last check: counts as no sitting balance',
    });
  });
  it('when coming to the edge was not met, then the person assists in part and does not come alone', () => {
    const came = input([check(0, 'turns-out')]);
    expect(came.capability).toMatchObject({ sittingBalance: true, assists: 'partly' });
    expect(help(came, 'in-bed')).not.toEqual(['go', 'stand-by', 'none']);
    expect(help(came, 'edge-of-bed')).toEqual(['go', 'two', 'slide-sheet']);
    expect(came.capability.because.find((b) => b.rule === 'capability/assists')?.facts).toEqual(['check-0']);
  });
  it('when a later check met them, then they are there again; the other way round they are not', () => {
    const failed = ['sits-alone', 'turns-out'];
    expect(input([check(0, ...failed), check(0.5)]).capability).toMatchObject({
      sittingBalance: true,
      assists: 'fully',
    });
    expect(input([check(0), check(0.5, ...failed)]).capability).toMatchObject({
      sittingBalance: false,
      assists: 'partly',
    });
  });
});
