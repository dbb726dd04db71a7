/** What is said beside a tier, and who has walked here. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import { assessment, fact, hours, tierInput, upTo } from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));

describe('beside the tier', () => {
  it('stands everything the start asks first, with its check', () => {
    const at = toIso(hours(0));
    const readings = [
      { kind: 'temperature', celsius: 38.6, at } as const,
      { kind: 'pain', outOfTen: 5, at } as const,
    ];
    const { view } = judge(assessment(upTo('edge'), { id: 'warm' }, { readings }));
    expect(view.word).toBe('Edge');
    expect(view.because).toContainEqual({
      rule: 'start/ask-first',
      facts: ['warm'],
      words:
        'Ask first: temperature 38.6 °C is 38.5 or more; pain 5 of 10: offer relief, come back when it works',
    });
  });
  it('stands every reading that a pressure set lacks', () => {
    const lying = { kind: 'pressure', posture: 'lying', systolic: 130, diastolic: 70 } as const;
    const check = assessment(
      upTo('edge'),
      { id: 'set' },
      {
        depth: 'full-with-pressure',
        readings: [{ ...lying, at: toIso(hours(0)) }],
        risingSymptoms: [],
      },
    );
    expect(judge(check).view.because).toContainEqual({
      rule: 'rising/incomplete',
      facts: ['set'],
      words: 'Pressure on rising INCOMPLETE: standing 1 min, standing 3 min missing',
    });
  });
});

describe('who walked in a session', () => {
  const session = (more: object, role: Role = 'nurse') =>
    fact(
      'session-recorded',
      {
        session: {
          outcome: 'done',
          occasion: 'planned',
          activities: ['walk'],
          startedAt: toIso(hours(1)),
          events: [],
          firstTimeUp: false,
          ...more,
        },
      },
      { at: 1, role },
    );
  it.each<[string, boolean, Fact]>([
    ['done, with a nurse, has walked here', true, session({})],
    ['stopped before its end has walked here too', true, session({ outcome: 'stopped' })],
    ['with an aide alone does not count', false, session({}, 'aide')],
    ['in which only sitting was done has not', false, session({ activities: ['chair'] })],
    [
      'that was not done has not, though walking was what was planned',
      false,
      session({ outcome: 'not-done', notDone: { group: 'no-people' } }),
    ],
  ])('%s', (_, walked, told) => {
    expect(judge(told).everWalked).toBe(walked);
  });
});
