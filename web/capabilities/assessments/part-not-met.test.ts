/** A part that is not met: make safe first, then what is recorded. */
import { describe, expect, it } from 'vitest';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import { stopped } from './check-flow.testkit.ts';

describe('a part that is not met', () => {
  it('shows "make safe first" before anything else is asked or can be recorded', async () => {
    const form = await stopped();
    const text = form.wrapper.text();
    expect(text).toContain('Make safe first');
    expect(text).toContain('Call for help');
    expect(text).toContain('Stay with the person');
    expect(form.wrapper.findAll('.part')).toHaveLength(0);
    expect(text).not.toContain('Record this check');
  });

  it('then asks the rest and records the stage as not met, with what was never reached said so', async () => {
    const form = await stopped();
    await form.tap('The person is safe, go on');
    await form.tap('There was a symptom');
    await form.tap('Go on to record');
    expect(form.wrapper.text()).toContain('Preview, not recorded');
    await form.tap('Record this check');
    expect(form.sent).toHaveLength(1);
    const data = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(data.stages.map((s) => [s.stage, s.outcome])).toEqual([
      ['clear', 'met'],
      ['upright', 'not-met'],
    ]);
    const upright = data.stages[1]!;
    expect(upright.symptom).toBe(true);
    expect(upright.findings.find((f) => f.part === 'back-raised')).toEqual({
      part: 'back-raised',
      result: 'not-met',
    });
    expect(upright.findings.filter((f) => f.part === 'grip')).toEqual([
      { part: 'grip', side: 'left', result: 'not-tested', reason: 'stopped-before' },
      { part: 'grip', side: 'right', result: 'not-tested', reason: 'stopped-before' },
    ]);
    expect(data.cooperation).toEqual({ waitsForHelp: 'yes', followsInstructions: 'yes' });
  });

  it('tapped by mistake can be taken back', async () => {
    const form = await stopped();
    await form.tap('Tapped by mistake');
    expect(form.wrapper.find('h3.title').text()).toBe('Upright');
  });
});
