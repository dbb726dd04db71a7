/** Refusals in a row: design and the users' research, 4b. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { check, notDone, session, type Told } from './history.testkit.ts';
import { did, fails, kindsAt, rulesWith, sign } from './signs.testkit.ts';

describe('refusals', () => {
  const no = (at: number, example?: string): Told => ({
    ...session(at, {
      outcome: 'not-done',
      activities: [],
      notDone: { group: 'said-no', ...(example === undefined ? {} : { example }) },
    }),
    id: `no-${at}`,
  });
  const refused = (...told: readonly Told[]) => sign('refusals', 20, told);

  it('SIGN-2 three in a row are told to nurse and therapist, with the reasons given', () => {
    expect(refused(no(15), no(16))).toBeUndefined();
    const now = refused(no(15, 'pain'), no(16, 'wants-family'), no(17, 'pain'))!;
    expect(now.words).toBe('Said no 3 times in a row: a nurse or therapist asks what stands in the way');
    expect(now.because).toEqual([
      {
        rule: 'signs/refusals',
        facts: ['no-15', 'no-16', 'no-17'],
        words: 'The last 3 offers were declined; reasons given: pain, wants family',
      },
    ]);
    expect(now.words).not.toMatch(/aide/i);
    expect(refused(no(15), no(16), no(17))?.because[0]?.words).toMatch(/; no reason given$/);
  });
  it('all of a longer row are counted', () => {
    expect(refused(no(14), no(15), no(16), no(17))?.words).toMatch(/^Said no 4 times/);
  });
  it('whatever was done in between breaks the row', () => {
    for (const outcome of ['done', 'part', 'stopped']) {
      expect(refused(no(14), no(15), did(15.5, 'edge-sit', { outcome }), no(16))).toBeUndefined();
    }
    expect(refused(did(13, 'walk'), no(14), no(15), no(16))).toBeDefined();
    expect(refused(no(14), no(15), no(16), did(17, 'walk'))).toBeUndefined();
  });
  it('what was not offered neither counts nor breaks', () => {
    for (const group of [
      'clinically-held',
      'not-here',
      'bad-moment',
      'no-people',
      'no-kit',
      'infection-steps',
    ]) {
      expect(refused(no(14), no(15), notDone(15.5, group))).toBeUndefined();
      expect(refused(no(14), no(15), notDone(15.5, group), no(16))).toBeDefined();
    }
  });
  it("goes by when they were offered, and by the ward's own number", () => {
    const lateTold = { ...did(17, 'walk'), payload: did(13, 'walk').payload };
    expect(refused(no(14), no(15), no(16), lateTold)).toBeDefined();
    const own = rulesWith((rules) => {
      rules.signs.refusalsInRow.value = 2;
    });
    expect(kindsAt(20, [no(15), no(16)], own)).toEqual(['refusals']);
  });
  it("is told under a clinician's plan too, and nothing else; nothing under a comfort plan", () => {
    const told = [check('walk', 1), fails('stand', 9), no(15), no(16), no(17)];
    expect(kindsAt(20, told)).toEqual(['stages-lost', 'refusals']);
    const fence = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } };
    expect(kindsAt(20, [...told, { type: 'scope-set', at: 18, payload: fence }])).toEqual(['refusals']);
    const comfort = { scope: 'comfort' };
    expect(kindsAt(20, [...told, { type: 'scope-set', at: 18, payload: comfort }])).toEqual([]);
  });
});
