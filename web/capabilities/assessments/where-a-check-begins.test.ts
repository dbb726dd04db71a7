/** Where the staged check begins, and what is said of the stages passed over. */
import { describe, expect, it } from 'vitest';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { stayRow } from '../../board/rows.testkit.ts';
import { clear, given, wellDone, WITHOUT_SET } from './check-flow.testkit.ts';

describe('where the check begins', () => {
  const suggested = (from: string, depth: 'full' | 'full-with-pressure' = 'full') =>
    stayRow({
      nextCheck: { depth, from, because: [{ rule: 'next', facts: [], words: 'Edge was cleared today' }] },
    });

  it('is every stage in order unless a later one, that the rules suggest, is chosen by hand', async () => {
    const form = given(suggested('stand'));
    expect(form.wrapper.text()).toContain('Suggested: Full, from Stand');
    await form.tap(WITHOUT_SET);
    await clear(form);
    expect(form.wrapper.find('h3.title').text()).toBe('Upright');
  });

  it('asks the first stage all the same, then goes on at the suggested one; what lies between is "not tested"', async () => {
    const form = given(suggested('stand'));
    await form.tap('Clear, then Stand');
    await form.tap(WITHOUT_SET);
    expect(form.wrapper.find('h3.title').text()).toBe('Clear');
    expect(form.wrapper.text()).toContain('then on at Stand');
    await clear(form);
    expect(form.wrapper.find('h3.title').text()).toBe('Stand');
    await form.tap('Back');
    expect(form.wrapper.find('h3.title').text()).toBe('Clear');
    await form.tap('Stage met, go on');
    await wellDone(form, true);
    await form.tap('Stop before this');
    expect(form.wrapper.text()).toContain('passed over: what was found before stands');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => [s.stage, s.outcome])).toEqual([
      ['clear', 'met'],
      ['upright', 'not-tested'],
      ['edge', 'not-tested'],
      ['stand', 'met'],
    ]);
    expect(data.stages[1]!.findings.every((f) => f.result === 'not-tested')).toBe(true);
    expect(form.wrapper.text()).not.toContain('cannot be recorded');
  });

  it('leaves the stages passed over out when the check stops before the suggested one', async () => {
    const form = given(suggested('stand'));
    await form.tap('Clear, then Stand');
    await form.tap(WITHOUT_SET);
    await clear(form);
    await form.tap('Stop before this');
    await form.tap('Record this check');
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => s.stage)).toEqual(['clear']);
  });

  it.each(['clear', 'upright'])('offers no shortcut to %s, and none past a pressure set', (from) => {
    expect(given(suggested(from)).wrapper.text()).not.toContain('Where to begin');
    const whole = given(suggested('stand', 'full-with-pressure')).wrapper.text();
    expect(whole).not.toContain('Where to begin');
    expect(whole).toContain('Needed now: full, with pressure set (Edge was cleared today)');
  });
});
