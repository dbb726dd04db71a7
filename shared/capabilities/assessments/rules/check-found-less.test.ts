/** What a check found against moving, and what it found nothing of. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import type { Reading } from '../values.ts';
import { assessment, hours, notMet, upTo } from './assessment.testkit.ts';
import { judge, of, says, swapped, word } from './stages.testkit.ts';

describe('a check written down as met with a part nobody tested', () => {
  it('tested nothing, so the tier does not stand on it', () => {
    const untested = assessment(
      upTo('clear', { clear: { findings: swapped('clear', of('wakes-to-voice', 'not-tested')) } }),
    );
    expect(word(untested)).toBe('Not known');
    expect(judge(untested).assessment).toBeNull();
  });
});

describe('a check that found less', () => {
  it.each([
    ['with a part not met', upTo('stand', { stand: notMet('rises') }), true],
    ['with a symptom on standing', upTo('stand', { stand: { symptom: true } }), true],
    ['with every stage met', upTo('stand'), false],
    [
      'that stopped before Stand',
      upTo('stand', { stand: { outcome: 'not-tested', reason: 'refused' } }),
      false,
    ],
  ] as const)('%s: %s', (_, stages, less) => {
    expect(judge(assessment(stages, { id: 'c1' })).seen.foundLess.has('c1' as never)).toBe(less);
  });
});

describe('a check under a protocol that is not known here', () => {
  const gone = { protocol: { id: 'gone', version: 4 } };
  const breathing = (perMinute: number, at: number): Reading => ({
    kind: 'breathing',
    perMinute,
    at: toIso(hours(at)),
  });
  const lasted = (...readings: Reading[]) =>
    assessment(upTo('upright', { upright: { at: toIso(hours(3.25)) } }), { at: 3 }, { ...gone, readings });
  const walked = assessment(upTo('walk'));
  it('is judged by the breathing at its beginning, not by that of its exertion', () => {
    expect(word(walked, lasted(breathing(18, 2.9), breathing(34, 3.1)))).toBe('Walk');
  });
  it('is judged by the last breathing before its beginning', () => {
    expect(word(walked, lasted(breathing(18, 2.9), breathing(34, 3)))).toBe('Supported');
  });
  it('takes back what was cleared, and leaves what was not met as it was found', () => {
    const stopped = assessment(upTo('stand', { stand: notMet('rises') }));
    const lost = assessment(upTo('edge', { edge: notMet('comes-to-edge') }), { at: 3 }, gone);
    const again = assessment(upTo('edge'), { at: 6 });
    expect(judge(stopped, lost).seen.stages.has('edge')).toBe(false);
    expect(says(stopped, lost, again)).toContain('tier/stage-not-met: Stand not met: Rises from sitting');
  });
});
