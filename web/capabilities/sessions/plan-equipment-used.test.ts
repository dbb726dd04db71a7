/** Whether the equipment of the plan was used in a session, and why not. */
import { describe, expect, it } from 'vitest';
import { recordSession } from '@footboard/shared/capabilities/sessions/commands';
import { stayRow } from '../../board/rows.testkit.ts';
import { given } from './session-form.testkit.ts';

describe('COORD-3 the equipment of the plan', () => {
  const lifted = () => {
    const view = stayRow();
    const day = view.plan!.day.map((one) => ({ ...one, aid: 'sling-lift' as const }));
    return given({ ...view, plan: { ...view.plan!, day } });
  };
  const sent = (form: ReturnType<typeof given>) =>
    (form.sent[0]!.body.data as { session: Record<string, unknown> }).session;

  it('is named, and one tap says that it was not used and one why', async () => {
    const form = lifted();
    await form.tap('Chair');
    expect(form.wrapper.text()).toContain('The plan’s equipment: sling lift');
    await form.tap('It was not used');
    await form.tap('Not to hand');
    await form.tap('Done');
    expect(sent(form)['aidNotUsed']).toEqual({ planned: 'sling-lift', because: 'not-to-hand' });
    expect(recordSession.data.safeParse(form.sent[0]!.body.data).success).toBe(true);
  });

  it('asks for nothing when nobody taps, and is not asked of an activity that has none', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('Done');
    expect(Object.keys(sent(form))).not.toContain('aidNotUsed');
    const walking = lifted();
    await walking.tap('Walk');
    expect(walking.wrapper.text()).not.toContain('The plan’s equipment');
  });

  it('asks why where other equipment was used; left open it goes without a reason', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('3 or more');
    await form.tap('Belt');
    expect(form.wrapper.text()).toContain('Why not sling lift?');
    await form.tap('Done');
    expect(sent(form)).toMatchObject({
      help: { people: 3, aid: 'belt' },
      aidNotUsed: { planned: 'sling-lift' },
    });
  });

  it('forgets the tap when the activity turns out to be another', async () => {
    const form = lifted();
    await form.tap('Chair');
    await form.tap('It was not used');
    await form.tap('Chair');
    await form.tap('Walk');
    await form.tap('Done');
    expect(Object.keys(sent(form))).not.toContain('aidNotUsed');
  });
});
