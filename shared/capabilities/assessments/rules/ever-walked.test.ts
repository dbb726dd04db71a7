/** Whether somebody was ever seen walking here: until then the first walk is with two and a chair following (design, section 4; ours, practice). */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { dayPlan, planInput, seenTo } from '../../handling/rules/plan.testkit.ts';
import { sessionRecorded } from '../../sessions/events.ts';
import type { Session } from '../../sessions/values.ts';
import { assessment, fact, hours, upTo } from './assessment.testkit.ts';
import { judge } from './stages.testkit.ts';

const turned = assessment(upTo('turn'), { at: 0 });
const session = (says: Partial<Session>, role: Role = 'nurse') =>
  fact(
    sessionRecorded.name,
    {
      session: {
        outcome: 'done' as const,
        occasion: 'planned' as const,
        activities: ['walk' as const],
        startedAt: toIso(hours(1)),
        events: [],
        firstTimeUp: false,
        ...says,
      },
    },
    { at: 1, role },
  );
const walked = (says: Partial<Session>, role?: Role) => judge(turned, session(says, role)).everWalked;

describe('ever seen walking here', () => {
  it.each(['done', 'part', 'stopped'] as const)(
    'given a walk with a nurse that was %s, then the person has walked here',
    (outcome) => {
      expect(walked({ outcome })).toBe(true);
    },
  );
  it('given a walk that was offered and not done, then they have not, though the entry names the walk', () => {
    expect(walked({ outcome: 'not-done', notDone: { group: 'said-no' } })).toBe(false);
  });
  it('given a session of something else, or a walk that only an aide tells of, then they have not', () => {
    expect(walked({ activities: ['chair', 'stand'] })).toBe(false);
    expect(walked({}, 'aide')).toBe(false);
  });
});

describe('what the plan says of walking after a walk that was not done', () => {
  const first = 'the first walk with two and a chair following';
  const says = (walk: Partial<Session>) =>
    dayPlan(planInput([...seenTo('turn'), session(walk)]), 'walk')
      .because.map((b) => b.words)
      .join('; ');
  it('given nobody has seen a walk yet, then it still asks for two and a chair; once walked, no longer', () => {
    expect(says({ outcome: 'not-done', notDone: { group: 'said-no' } })).toContain(first);
    expect(says({ outcome: 'part' })).not.toContain(first);
  });
});
