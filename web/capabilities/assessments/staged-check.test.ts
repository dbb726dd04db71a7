/** The staged check on the sheet, stage by stage, and the confirm that may stand in its place. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { stayRow } from '../../board/rows.testkit.ts';
import { clear, given, part, wellDone, WITH_SET, WITHOUT_SET } from './check-flow.testkit.ts';
import { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';

describe('the staged check', () => {
  it('says how long each depth takes before anything is asked', () => {
    const form = given();
    expect(form.wrapper.text()).toContain('about 9 minutes');
    expect(form.wrapper.text()).toContain('under 4 minutes');
    expect(form.wrapper.findAll('.part')).toHaveLength(0);
  });

  // Order of the stages: common practice, no source.
  it('shows one stage at a time, in the protocol’s order', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    const seen: string[] = [];
    for (const stage of DEFAULT_PROTOCOL.stages) {
      seen.push(form.wrapper.find('h3.title').text());
      expect(form.wrapper.findAll('.part')).toHaveLength(
        stage.parts.reduce((n, p) => n + (p.sided ? 2 : 1), 0),
      );
      await wellDone(form, stage.securedBy.length > 0);
    }
    expect(seen).toEqual(['Clear', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk']);
    expect(form.wrapper.text()).toContain('Before it is recorded');
  });

  it('does not go on while a part is unanswered', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    const go = form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    expect(go.attributes('disabled')).toBeDefined();
  });

  it('does not take free, nor the absence of a symptom, for granted', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    await clear(form);
    const go = () => form.wrapper.findAll('button').find((b) => b.text().startsWith('Stage met'))!;
    await form.tap('All the rest met');
    expect(form.wrapper.text()).toContain('Say how it was done');
    expect(go().attributes('disabled')).toBeDefined();
    await form.tap('Secured: raised bed');
    expect(go().attributes('disabled')).toBeUndefined();
  });

  it('has "secured" chosen beforehand for the first standing after surgery', async () => {
    const form = given(stayRow({ firstTimeUpPending: true }));
    await form.tap(WITH_SET);
    await clear(form);
    await wellDone(form, true);
    await wellDone(form, true);
    expect(form.wrapper.find('h3.title').text()).toBe('Stand');
    const how = form.wrapper.findAll('[role=group]').find((g) => g.text().startsWith('How was it done?'))!;
    expect(how.findAll('[aria-pressed=true]').map((b) => b.text())).toEqual(['✓Secured: two people']);
  });

  it('asks each side apart and needs a reason for what was not tested', async () => {
    const form = given();
    await form.tap(WITHOUT_SET);
    await clear(form);
    const heel = part(form, 'Heel held 5 cm off the mattress for 5 seconds: left');
    await heel
      .findAll('button')
      .find((b) => b.text() === 'Not tested')!
      .trigger('click');
    // Without its reason nothing is answered, and the other side has no answer of its own from this one.
    expect(part(form, 'for 5 seconds: left').text()).not.toContain('Not tested: ');
    expect(part(form, 'for 5 seconds: right').findAll('[aria-pressed=true]')).toHaveLength(0);
    await part(form, 'for 5 seconds: left')
      .findAll('button')
      .find((b) => b.text() === 'Pain')!
      .trigger('click');
    await form.tap('All the rest met');
    await form.tap('Free, on their own');
    expect(part(form, 'for 5 seconds: left').text()).toContain('Not tested: pain');
    // One leg that lifts is enough to go on; the leg that was not tested says nothing either way.
    await form.tap('Stage met, go on');
    expect(form.wrapper.find('h3.title').text()).toBe('Edge');
    await form.tap('Stop before this');
    await form.tap('Record this check');
    const { stages } = recordAssessment.data.parse(form.sent[0]!.body.data);
    expect(stages.at(-1)!.findings.filter((f) => f.part === 'heel-held')).toEqual([
      { part: 'heel-held', side: 'left', result: 'not-tested', reason: 'pain' },
      { part: 'heel-held', side: 'right', result: 'met' },
    ]);
  });
});

describe('confirm', () => {
  it('is recorded by one tap on the sheet: with "Check", two taps', async () => {
    const form = given();
    await form.tap('As planned, nothing different');
    expect(form.sent).toHaveLength(1);
    expect(form.sent[0]).toMatchObject({
      name: 'confirm-plan',
      body: { data: { stay: 's1', task: 'bed-chair' } },
    });
    expect(form.wrapper.emitted('recorded')).toHaveLength(1);
  });

  it('is not offered while something is open', () => {
    const view = stayRow();
    const trigger = { event: 'e7' as never, kind: 'faint' as const, at: 0, words: 'Faint' };
    const form = given({ ...view, trust: { ...view.trust, state: 're-check', openTriggers: [trigger] } });
    expect(form.wrapper.text()).not.toContain('As planned');
    expect(form.wrapper.text()).toContain('Needed now: full, with pressure set (faint)');
  });

  it('given a check with the pressure set is needed, says that a confirm does not stand for it', () => {
    const because = [{ rule: 'next', facts: [], words: 'the first time up is still ahead' }];
    const needed = given(stayRow({ nextCheck: { depth: 'full-with-pressure', from: 'clear', because } }));
    expect(needed.wrapper.text()).toContain('The check needed now is still needed afterwards.');
    expect(given().wrapper.text()).not.toContain('still needed afterwards');
  });
});
