/** A hold because a bone is in doubt: "may we start" says what the plan says. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hold, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { holdReason, holdScope } from '../../orders/values.ts';
import { germanBook } from '../../../i18n/phrases/german.ts';

const held = (scope: string, reason: string): Told => {
  const placed = hold(2, scope, 5, { id: 'held' });
  return { ...placed, payload: { ...(placed.payload as object), reason } };
};
const view = (at: number, ...told: Told[]) =>
  evaluateStay(stayOf(check('walk', 1), ...told), ward, calendar, hours(at)).view;
const ofHold = (at: number, told: Told) =>
  view(at, told).mayStart!.reasons.filter((r) => r.facts.includes('held' as never));

describe('a hold whose reason leaves spine, pelvis or a bone in doubt', () => {
  const cases = holdScope.options.flatMap((scope) =>
    (['fracture-unclear', 'after-fall'] as const).map((reason) => [scope, reason] as const),
  );
  it.each(cases)(
    'on %s (%s) is not now, whatever its scope: the plan holds every move too',
    (scope, reason) => {
      const { plan, mayStart } = view(3, held(scope, reason));
      expect(plan!.day.find((p) => p.task === 'edge-of-bed')).toMatchObject({ hold: true });
      expect(mayStart!.word).toBe('not-now');
      const reasons = ofHold(3, held(scope, reason));
      expect(reasons).toHaveLength(1);
      expect(reasons[0]).toMatchObject({
        word: 'not-now',
        words: expect.stringMatching(
          new RegExp(
            `\\(${reason.replace('-', ' ')}\\): spine, pelvis or a bone in doubt: do not move, ask$`,
          ),
        ),
        source: 'the hold on this stay',
        facts: ['held'],
      });
      expect(germanBook().say(reasons[0]!.words)).toContain('nicht bewegen, fragen');
    },
  );
  it('says nothing of the edge of the bed, where the plan keeps the person in bed', () => {
    expect(ofHold(3, held('standing', 'after-fall')).map((r) => r.words)).toEqual([
      'hold on standing (after fall): spine, pelvis or a bone in doubt: do not move, ask',
    ]);
  });
  it('is still not now when its review is due: passing the review time frees nobody', () => {
    expect(ofHold(5, held('walking', 'fracture-unclear')).map((r) => [r.word, r.words])).toEqual([
      [
        'not-now',
        'hold on walking (fracture unclear): spine, pelvis or a bone in doubt: do not move, ask; HOLD REVIEW DUE',
      ],
    ]);
  });
  it.each(holdReason.options.filter((r) => r !== 'fracture-unclear' && r !== 'after-fall'))(
    'a hold on walking for another reason (%s) asks first, as before',
    (reason) => {
      expect(ofHold(3, held('walking', reason)).map((r) => [r.word, r.words])).toEqual([
        ['ask-first', `hold on walking (${reason.replaceAll('-', ' ')})`],
      ]);
    },
  );
});
