/** One stage record judged by itself, under documents other than the default. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../values.ts';
import { hours } from './assessment.testkit.ts';
import { judgeStage } from './judge-stage.ts';
import { checkUnder, findingsMet, LONG } from './own-protocol.testkit.ts';
import type { ProtocolStage } from './protocol.ts';

/** Standing as a ward may write it: beside the leg that carries, each knee is looked at. */
const RISE: ProtocolStage = (() => {
  const rise = LONG.stages.find((s) => s.shows === 'stand')!;
  const knee = {
    id: 'knee-straight-up',
    says: 'Knee stays straight',
    sided: true,
    gate: 'required',
    source: 'invented',
  } as const;
  return { ...rise, parts: [...rise.parts, knee] };
})();
const OWN = { ...LONG, stages: LONG.stages.map((s) => (s.id === RISE.id ? RISE : s)) };
const judged = (...notMet: readonly (readonly [part: string, side: 'left' | 'right'])[]) => {
  const findings = findingsMet(RISE).map((f): Finding => {
    const failed = notMet.some(([part, side]) => f.part === part && f.side === side);
    return failed ? { ...f, result: 'not-met' } : f;
  });
  const check = checkUnder(OWN, RISE.id, hours(0), { [RISE.id]: { oneLeg: 'left', findings } });
  return judgeStage(check.stages.at(-1)!, RISE, {
    start: null,
    rising: null,
    mayNotBear: new Set(),
    arms: 'both',
  });
};

describe('standing on the left leg', () => {
  it('asks nothing of carrying on the right one', () => {
    expect(judged(['foot-carries', 'right'])).toEqual({ outcome: 'met', reasons: [], oneLeg: 'left' });
    expect(judged(['foot-carries', 'left']).outcome).toBe('not-met');
  });
  it.each(['left', 'right'] as const)('forgives no other part that is not met, on the %s either', (side) => {
    expect(judged(['knee-straight-up', side])).toMatchObject({
      outcome: 'not-met',
      reasons: [`Knee stays straight (${side})`],
    });
  });
});
