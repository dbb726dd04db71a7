/** A check against the orders on what each leg bears: design, rule 2 (the safer of two stands). Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { check, order, stayOf, type StageId, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { orderGoneBeyond } from './beyond-orders.ts';
import { ordersInForce } from './orders.ts';
import { isCheck } from './triggers.ts';

const activity = (most: string): Told => ({ ...order(1, { about: 'activity', most }), id: 'o' });
const noneOn = (limb: string): Told => ({
  ...order(1, { about: 'weight-bearing', limb, bears: 'none' }),
  id: limb,
});

function beyond(checked: Told, ...orders: readonly Told[]) {
  const { facts } = effectiveFacts(stayOf(...orders, checked));
  return orderGoneBeyond(facts.find(isCheck)!, ordersInForce(facts).forPlan, protocolLookup([]));
}

/** The check with some stages told otherwise; null leaves a stage out. */
function telling(checked: Told, says: Partial<Record<StageId, object | null>>): Told {
  const payload = checked.payload as { stages: readonly { stage: StageId }[] };
  const stages = payload.stages
    .filter(({ stage }) => says[stage] !== null)
    .map((record) => ({ ...record, ...says[record.stage] }));
  return { ...checked, payload: { ...payload, stages } };
}
const standing = (oneLeg: 'left' | 'right', last: StageId = 'stand') =>
  telling(check(last, 2), { stand: { oneLeg } });

describe('a check of somebody with an order that a leg bears nothing', () => {
  it.each([
    ['left', 'right'],
    ['right', 'left'],
  ] as const)(
    'goes beyond it when they stood on the %s leg it spares, not on the other (%s)',
    (spared, other) => {
      const spares = noneOn(`${spared}-leg`);
      expect(beyond(standing(spared), spares)).toBe(`${spared}-leg`);
      expect(beyond(standing(other), spares)).toBeNull();
      expect(beyond(standing(other, 'walk'), spares)).toBeNull();
    },
  );
  it('goes beyond one of the two when both legs are spared, whichever they stood on', () => {
    const both = [noneOn('left-leg'), noneOn('right-leg')];
    expect(beyond(standing('left'), ...both)).toBe('left-leg');
    expect(beyond(standing('right'), ...both)).toBe('right-leg');
  });
  it('takes one leg for what they stood on only where the stage was met so', () => {
    const failed = telling(check('turn', 2), { stand: { outcome: 'not-met', oneLeg: 'right' } });
    expect(beyond(failed, noneOn('left-leg'))).toBe('left-leg');
  });
  it.each(['turn', 'walk'] as const)('goes beyond it by %s alone, whatever of standing was told', (stage) => {
    const alone = telling(check(stage, 2), {
      stand: null,
      ...(stage === 'walk' ? { turn: null } : {}),
    });
    expect(beyond(alone, noneOn('left-leg'))).toBe('left-leg');
  });
  it('has nothing to do with an arm', () => {
    expect(beyond(check('walk', 2), noneOn('left-arm'))).toBeNull();
  });
});

describe('a check of somebody with an order of how much activity', () => {
  it.each([
    ['upright', ['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit']],
    ['edge', ['edge-of-bed', 'chair', 'stand', 'walk', 'no-limit']],
    ['stand', ['stand', 'walk', 'no-limit']],
    ['turn', ['stand', 'walk', 'no-limit']],
    ['walk', ['walk', 'no-limit']],
  ] as const)('up to %s stays within %j and goes beyond all else', (last, within) => {
    const levels = ['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'] as const;
    expect(levels.filter((most) => beyond(check(last, 2), activity(most)) === null)).toEqual(within);
  });
  it('to the chair stays within it by a turn that asked for no standing', () => {
    const swung = telling(check('turn', 2), { stand: null });
    expect(beyond(swung, activity('chair'))).toBeNull();
    expect(beyond(swung, activity('edge-of-bed'))).toBe('o');
  });
});
