/** A step of the goal up: design, progression row (2 easy sessions at goal; never automatic). Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { check, notDone, type Told } from '../../board/rules/history.testkit.ts';
import { did } from '../../board/rules/signs.testkit.ts';
import { chair, proposal, set, step, twice, walks } from './progression.testkit.ts';

describe('a step up is proposed', () => {
  it('PROGRESS-1 after two easy sessions at goal with nothing wrong, with the sessions that carry it', () => {
    const [one, two] = twice('chair') as [Told, Told];
    expect(proposal(walks, chair, one)).toBeNull();
    const now = proposal(walks, chair, one, two)!;
    expect(now).toMatchObject({
      step: 'up',
      goal: { activity: 'walk', timesUp: 3 },
      sessions: [one.id, two.id],
    });
    expect(now.because).toEqual([
      {
        rule: 'progression/up',
        facts: [one.id, two.id],
        words: '2 sessions at goal in a row, effort 4 of 10 or less, nothing went wrong',
      },
      { rule: 'progression/step', facts: [one.id, two.id], words: 'Next: walk, 3 times a day' },
      {
        rule: 'progression/to-accept',
        facts: [one.id, two.id],
        words: 'A proposal only: a nurse or therapist accepts it or leaves it',
      },
    ]);
  });
  it('on the last of several, and on sessions of anyone who was there', () => {
    const three = [...twice('chair'), did(19, 'chair')];
    expect(proposal(walks, chair, ...three)?.sessions).toEqual([three[1]!.id, three[2]!.id]);
    const nurse = twice('chair').map((one) => ({ ...one, role: 'nurse' as const }));
    expect(proposal(walks, chair, ...nurse)?.step).toBe('up');
  });
  it('for effort up to the limit, not beyond it, and never for effort that nobody wrote down', () => {
    expect(proposal(walks, chair, ...twice('chair', { effort: 4 }))?.step).toBe('up');
    expect(proposal(walks, chair, ...twice('chair', { effort: 5 }))).toBeNull();
    expect(proposal(walks, chair, ...twice('chair', { effort: undefined }))).toBeNull();
    const gap = did(16, 'chair', { effort: undefined });
    expect(proposal(walks, chair, ...twice('chair'), gap)?.step).toBe('up');
    expect(proposal(walks, chair, ...twice('chair'), did(16, 'chair', { effort: 5 }))).toBeNull();
  });
  it('only by sessions that reach the activity of the goal', () => {
    expect(proposal(walks, chair, ...twice('stand'))).toBeNull();
    expect(proposal(walks, chair, ...twice('walk'))?.step).toBe('up');
    const toilet = twice('toilet', { occasion: 'toilet' });
    expect(proposal(walks, chair, ...toilet)?.step).toBe('up');
    const lifted = twice('toilet', { help: { people: 2, aid: 'sling-lift' } });
    expect(proposal(walks, chair, ...lifted)).toBeNull();
    expect(
      proposal(walks, chair, ...twice('chair', { help: { people: 3, aid: 'bariatric-lift' } })),
    ).toBeNull();
    expect(proposal(walks, chair, ...twice('chair', { help: { people: 1, aid: 'belt' } }))?.step).toBe('up');
  });
  it('only by sessions with their share of the distance and of the minutes, as written down', () => {
    const far = set({ activity: 'walk', metres: 90 });
    expect(proposal(walks, far, ...twice('walk', { metres: 30 }))?.step).toBe('up');
    expect(proposal(walks, far, ...twice('walk', { metres: 29 }))).toBeNull();
    expect(proposal(walks, far, ...twice('walk'))).toBeNull();
    const long = set({ minutesOutOfBed: 90 });
    expect(proposal(walks, long, ...twice('chair', { minutesOutOfBed: 30 }))?.step).toBe('up');
    expect(proposal(walks, long, ...twice('chair', { minutesOutOfBed: 29 }))).toBeNull();
    expect(proposal(walks, long, ...twice('chair'))).toBeNull();
    const noTimes = set({ activity: 'walk', timesUp: 0, metres: 30 });
    expect(proposal(walks, noTimes, ...twice('walk', { metres: 30 }))?.step).toBe('up');
    expect(proposal(walks, noTimes, ...twice('walk', { metres: 29 }))).toBeNull();
  });
  it('in a row: a planned walk that was too short breaks it, a short way to the toilet does not', () => {
    const far = set({ activity: 'walk', metres: 90 });
    const [one, two] = twice('walk', { metres: 30 }) as [Told, Told];
    expect(proposal(walks, far, one, did(16, 'walk', { metres: 8 }), two)).toBeNull();
    expect(proposal(walks, far, one, did(16, 'walk', { metres: 8, occasion: 'toilet' }), two)?.step).toBe(
      'up',
    );
    expect(proposal(walks, far, one, did(16, 'chair'), two)?.step).toBe('up');
  });
  it("in a row: a refusal or a session half done breaks it, what is not the person's does not", () => {
    const [one, two] = twice('chair') as [Told, Told];
    expect(proposal(walks, chair, one, notDone(16, 'said-no'), two)).toBeNull();
    expect(proposal(walks, chair, one, did(16, 'chair', { outcome: 'part' }), two)).toBeNull();
    for (const group of [
      'not-here',
      'no-people',
      'no-kit',
      'bad-moment',
      'infection-steps',
      'clinically-held',
    ]) {
      expect(proposal(walks, chair, one, notDone(16, group), two)?.step).toBe('up');
    }
    const broken = did(16, 'chair', { events: ['equipment-fault'] });
    expect(proposal(walks, chair, one, broken)).toBeNull();
    expect(proposal(walks, chair, one, broken, two)?.sessions).toEqual([one.id, two.id]);
  });
  it('by when the sessions began, whatever order they were told in', () => {
    const [one, two] = twice('chair') as [Told, Told];
    const startedBefore = { ...notDone(18, 'said-no'), payload: notDone(16, 'said-no').payload };
    expect(proposal(walks, chair, one, startedBefore, two)).toBeNull();
  });
  it('PROGRESS-2 counts from when the goal was set: whatever was set, the count begins again', () => {
    const again = set({}, 18);
    expect(proposal(walks, chair, ...twice('chair'), again)).toBeNull();
    expect(proposal(walks, chair, ...twice('chair'), again, did(19, 'chair'))).toBeNull();
    expect(proposal(walks, chair, ...twice('chair'), again, did(19, 'chair'), did(20, 'chair'))?.step).toBe(
      'up',
    );
    expect(proposal(walks, set({}, 15), ...twice('chair'))).toBeNull();
    const byAide = set({}, 18, { role: 'aide' });
    expect(proposal(walks, chair, ...twice('chair'), byAide)?.step).toBe('up');
  });
  it('of a goal that nobody set counts from the check it stands on', () => {
    const far = [did(15, 'walk', { metres: 40 }), did(17, 'walk', { metres: 40 })];
    expect(step(walks, ...far)).toEqual(['up', { activity: 'walk', timesUp: 3, metres: 150 }]);
    expect(step(walks, ...far, check('walk', 18))).toBeNull();
    expect(step(check('walk', 15), ...far)).toBeNull();
  });
});
