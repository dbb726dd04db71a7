/**
 * A stage written down as not tested, with something found in it all the same: what was found against it counts. Not
 * tested by itself lowers nothing (design, finding). Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Finding, Reading } from '../values.ts';
import { assessment, hours, tierInput, upTo } from './assessment.testkit.ts';
import type { StageSays } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL, protocolLookup } from './protocol.ts';
import { stageReasons } from './start-in-force.ts';
import { judgeTier } from './tier.ts';

const walked = assessment(upTo('walk'), { id: 'walked' });
const stopped = (findings: Finding[], more: StageSays = {}): StageSays => ({
  outcome: 'not-tested',
  reason: 'stopped-before',
  findings,
  ...more,
});
const failed = (part: string, side?: 'left' | 'right'): Finding => ({
  part,
  ...(side ? { side } : {}),
  result: 'not-met',
});
const met = (part: string, side: 'left' | 'right'): Finding => ({ part, side, result: 'met' });
type Says = Parameters<typeof assessment>[2];
const later = (stage: string, says: StageSays, check: Says = {}): Fact =>
  assessment(upTo(stage, { [stage]: says }), { at: 24, id: 'later' }, check);
const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));
const because = (fact: Fact) => judge(walked, fact).view.because.map((b) => b.words);

describe('a walker, in a later check that stopped', () => {
  it.each<[string, string, StageSays, string, string]>([
    ['before Stand, unable to rise', 'stand', stopped([failed('rises')]), 'Edge', 'Rises from sitting'],
    [
      'before Stand, with a leg that does not bear',
      'stand',
      stopped([failed('leg-bears', 'left'), met('leg-bears', 'right')]),
      'Edge',
      'Leg bears weight for 1 minute (left)',
    ],
    [
      'before Edge, unable to sit hands free',
      'edge',
      stopped([failed('sits-hands-free')]),
      'Upright',
      'Sits 30 seconds, hands free',
    ],
    [
      'before Upright, with neither heel held',
      'upright',
      stopped([failed('heel-held', 'left'), failed('heel-held', 'right')]),
      'Supported',
      'Heel held 5 cm off the mattress for 5 seconds (left)',
    ],
    [
      'at the start, with new chest pain',
      'clear',
      stopped([failed('no-new-chest-pain')]),
      'Supported',
      'No new chest pain',
    ],
    ['before Turn, with a symptom', 'turn', stopped([], { symptom: true }), 'Stand', 'a symptom during it'],
  ])('%s: keeps %s as not met', (_, stage, says, word, why) => {
    expect(judge(walked, later(stage, says)).view.word).toBe(word);
    expect(because(later(stage, says)).join('; ')).toContain(`not met: ${why}`);
  });

  it.each<[string, string, StageSays]>([
    ['with nothing found', 'stand', stopped([])],
    [
      'with one heel held of two',
      'upright',
      stopped([failed('heel-held', 'left'), met('heel-held', 'right')]),
    ],
    ['with a part not met that only informs', 'upright', stopped([failed('grip', 'left')])],
    ['with a symptom where symptoms do not stop', 'upright', stopped([], { symptom: true })],
    [
      'with a part not tested',
      'stand',
      stopped([{ part: 'rises', result: 'not-tested', reason: 'stopped-before' }]),
    ],
    [
      'on a leg written down as the only one',
      'stand',
      stopped([failed('leg-bears', 'left')], { oneLeg: 'right' }),
    ],
  ])('%s: loses nothing', (_, stage, says) => {
    expect(judge(walked, later(stage, says)).view.word).toBe('Walk');
  });
});

describe('a walker whose signs say not now at the start', () => {
  const at = toIso(hours(24));
  const systolic = (value: number): Reading => ({
    kind: 'pressure',
    posture: 'lying',
    systolic: value,
    diastolic: 50,
    at,
  });
  const start = (value: number) => later('clear', stopped([]), { readings: [systolic(value)] });

  it('is not cleared to start, though the start was written down as not tested', () => {
    expect(judge(walked, start(80)).view.word).toBe('Supported');
    expect(because(start(80))).toContain('clear not met: systolic 80 mmHg is below 90');
  });
  it('loses nothing at the limit, nor where one only asks first', () => {
    expect(judge(walked, start(90)).view.word).toBe('Walk');
    expect(judge(walked, start(190)).view.word).toBe('Walk');
  });
});

describe('may we start, after a start written down as not tested', () => {
  const reasons = (says: StageSays, check: Says = {}) =>
    stageReasons(judge(walked, later('clear', says, check)), protocolLookup([])).map((r) => r.words);

  it('names the part that was not met', () => {
    expect(reasons(stopped([failed('no-new-chest-pain')]))).toEqual([
      'No new chest pain: not met at the last check',
    ]);
  });
  it('leaves a sign to the newest reading of it, which says more', () => {
    const readings: Reading[] = [{ kind: 'breathing', perMinute: 34, at: toIso(hours(24)) }];
    expect(reasons(stopped([]), { readings })).toEqual([]);
  });
  it('is asked of the default, whose first stage it is', () => {
    expect(DEFAULT_PROTOCOL.stages[0]?.shows).toBe('clear');
  });
});
