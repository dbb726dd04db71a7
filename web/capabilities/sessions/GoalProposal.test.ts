import { describe, expect, it } from 'vitest';
import { setGoal } from '@footboard/shared/capabilities/sessions/commands';
import type { ProposalView } from '@footboard/shared/capabilities/board/activity-view';
import type { EventId } from '@footboard/shared/kernel/ids';
import { HOUR, NOON } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import GoalProposal from './GoalProposal.vue';

const proposal: ProposalView = {
  step: 'up',
  goal: { activity: 'walk', timesUp: 3, metres: 40 },
  sessions: ['0192f0c1-0000-7000-8000-000000000001', '0192f0c1-0000-7000-8000-000000000002'] as EventId[],
  because: [],
};
const line = (event: string, words: string) => ({ event, words, occurred: NOON - HOUR });
const given = (role: string | null, over: Partial<ProposalView> = {}) =>
  bench(GoalProposal, {
    stay: 's1',
    proposal: { ...proposal, ...over },
    timeline: [line(proposal.sessions[0]!, 'Session done: walk (40 m)')],
    role,
    zone: 'Europe/Lisbon',
    now: NOON,
    factHref: (event: string) => `#entry-${event}`,
  });
const text = (form: ReturnType<typeof given>) => form.wrapper.text().replace(/\s+/g, ' ');

describe('a step of the goal that is proposed', () => {
  it('shows the goal and each session behind it, linked; one not read yet is still named', () => {
    const form = given('nurse');
    expect(text(form)).toContain('A step up is proposed');
    expect(text(form)).toContain('3 times walk, 40 m');
    expect(form.wrapper.findAll('.carried a').map((a) => [a.attributes('href'), a.text()])).toEqual([
      [`#entry-${proposal.sessions[0]}`, '11:00: Session done: walk (40 m)'],
      [`#entry-${proposal.sessions[1]}`, 'a session'],
    ]);
  });

  it('is accepted in one tap by a nurse: the goal is set, with the sessions that carry it', async () => {
    const form = given('nurse');
    await form.tap('Accept as the goal');
    expect(form.sent).toHaveLength(1);
    expect(form.sent[0]!.name).toBe('set-goal');
    expect(setGoal.data.parse(form.sent[0]!.body.data)).toEqual({
      stay: 's1',
      goal: proposal.goal,
      accepts: proposal.sessions,
    });
  });

  it.each(['aide', 'manager', null])('is not to be accepted by %s, who is told who can', (role) => {
    const form = given(role);
    expect(form.wrapper.findAll('button').map((b) => b.text())).not.toContain('Accept as the goal');
    expect(text(form)).toContain('A nurse or therapist accepts it');
  });

  it('that is gone meanwhile shows the refusal with its remedy', async () => {
    const form = given('therapist', { step: 'back' });
    expect(text(form)).toContain('A step back, and a review is proposed');
    form.answers.push({
      type: '/problems/proposal-gone',
      title: 'The proposal has changed',
      status: 422,
      detail: 'A newer session changed what is proposed.',
      remedy: 'Look at the goal again.',
    });
    await form.tap('Accept as the goal');
    expect(text(form)).toContain('Look at the goal again.');
    expect(form.recorded).toEqual([]);
  });
});
