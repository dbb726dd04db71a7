/** What a check says is worked out once and kept: a kept answer is never given where another would be due. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Finding } from '../values.ts';
import { allMet, assessment, hours, upTo } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import type { Assessment } from './judge-stage.ts';
import { workOut, type AtThatTime } from './work-out.ts';

const given: AtThatTime = {
  protocol: DEFAULT_PROTOCOL,
  rules: DEFAULT_RULES,
  oxygenTarget: { low: 88, high: 92 },
  oxygenFlowBefore: 2,
  mayNotBear: new Set(),
  mayNotPush: new Set(),
  armsPushed: { left: true, right: true },
};
/** Stands on the left leg with arms that nobody tested in this check; oxygen at 90 % and 2 litres. */
const check = (): Assessment =>
  assessment(
    upTo('stand', {
      upright: { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') },
      stand: {
        findings: allMet('stand').map((f): Finding =>
          f.part === 'leg-bears' && f.side === 'right'
            ? { ...f, result: 'not-applicable', reason: 'cast' }
            : f,
        ),
      },
    }),
    {},
    { readings: [{ kind: 'oxygen', saturation: 90, litresPerMinute: 2, at: toIso(hours(0)) }] },
  ).data;

const OTHERWISE: readonly (readonly [string, Partial<AtThatTime>])[] = [
  ['another protocol', { protocol: { ...DEFAULT_PROTOCOL, stages: DEFAULT_PROTOCOL.stages.slice(0, 2) } }],
  [
    'other limits',
    {
      rules: {
        ...DEFAULT_RULES,
        start: { ...DEFAULT_RULES.start, painAskFrom: { ...DEFAULT_RULES.start.painAskFrom, value: 1 } },
      },
    },
  ],
  ['a higher target', { oxygenTarget: { low: 94, high: 92 } }],
  ['a target up to more', { oxygenTarget: { low: 88, high: 98 } }],
  ['no target', { oxygenTarget: null }],
  ['less oxygen before', { oxygenFlowBefore: 1 }],
  ['no word on oxygen before', { oxygenFlowBefore: null }],
  ['a reading before without a flow', { oxygenFlowBefore: 'not-recorded' }],
  ['a left leg that may bear nothing', { mayNotBear: new Set(['left']) }],
  ['a right leg that may bear nothing', { mayNotBear: new Set(['right']) }],
  ['a left arm that may not push', { mayNotPush: new Set(['left']) }],
  ['a right arm that may not push', { mayNotPush: new Set(['right']) }],
  ['a left arm that did not push', { armsPushed: { left: false, right: true } }],
  ['a right arm that nobody tested', { armsPushed: { left: true, right: null } }],
];

describe('what a check says', () => {
  it('given the same orders and rules, is the very answer of before', () => {
    const data = check();
    const first = workOut(data, given);
    expect(workOut(data, { ...given, mayNotBear: new Set(), mayNotPush: new Set() })).toBe(first);
    expect(workOut(data, { ...given, oxygenTarget: { low: 88, high: 92 } })).toBe(first);
  });
  it.each(OTHERWISE)('given %s since, is worked out anew, and again when that is over', (_, otherwise) => {
    const data = check();
    const first = workOut(data, given);
    const other = workOut(data, { ...given, ...otherwise });
    expect(other).not.toBe(first);
    expect(other).toEqual(workOut(check(), { ...given, ...otherwise }));
    const back = workOut(data, given);
    expect(back).not.toBe(other);
    expect(back).toEqual(first);
  });
  it('given a set of orders that goes on changing, keeps what it was worked out under', () => {
    const data = check();
    const mayNotBear = new Set<'left' | 'right'>();
    const mayNotPush = new Set<'left' | 'right'>();
    const first = workOut(data, { ...given, mayNotBear, mayNotPush });
    mayNotBear.add('left');
    const barred = workOut(data, { ...given, mayNotBear, mayNotPush });
    expect(barred.judged.at(-1)!.judged.outcome).toBe('not-met');
    expect(first.judged.at(-1)!.judged.outcome).toBe('met');
    mayNotBear.delete('left');
    mayNotPush.add('right');
    expect(workOut(data, { ...given, mayNotBear, mayNotPush }).judged.at(-1)!.judged.reasons).toEqual([
      'on one leg both arms must push, and they do not',
    ]);
  });
  it('given stages of another document, leaves them out', () => {
    const data = check();
    const short = { ...DEFAULT_PROTOCOL, stages: DEFAULT_PROTOCOL.stages.slice(0, 2) };
    expect(workOut(data, { ...given, protocol: short }).judged.map((j) => j.record.stage)).toEqual([
      'clear',
      'upright',
    ]);
    const noStart = { ...DEFAULT_PROTOCOL, stages: DEFAULT_PROTOCOL.stages.slice(1) };
    expect(workOut(data, { ...given, protocol: noStart }).start).toBeNull();
  });
  it('given no pressure, no symptom and no set asked for, says nothing of rising', () => {
    expect(workOut(check(), given).rising).toBeNull();
    expect(workOut({ ...check(), depth: 'full-with-pressure' }, given).rising).not.toBeNull();
    expect(workOut({ ...check(), risingSymptoms: ['dizzy'] }, given).rising).not.toBeNull();
    expect(workOut({ ...check(), risingSymptoms: [] }, given).rising).toBeNull();
    const pressure = {
      kind: 'pressure',
      posture: 'lying',
      systolic: 120,
      diastolic: 70,
      at: toIso(hours(0)),
    } as const;
    expect(workOut({ ...check(), readings: [...check().readings, pressure] }, given).rising).not.toBeNull();
  });
});
