/**
 * Stages lost between two looks: when they are told, and which looks are compared. Design and the users'
 * research, 4b and 4c. Limits are common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { check, confirm, hours, ward, type Told } from './history.testkit.ts';
import { fails, kindsAt, look, rulesWith, sign } from './signs.testkit.ts';

const lost = (h: number, ...told: readonly Told[]) => sign('stages-lost', h, told);
const walked = { ...check('walk', 1), id: 'walked' };

describe('stages lost', () => {
  it('SIGN-1 two within 24 h are told, with the two checks', () => {
    const now = lost(10, walked, fails('turn', 9, { id: 'fell' }))!;
    expect(now.words).toBe('2 stages less within 24 h: Walk 24 Oct 19:00, Stand 25 Oct 02:00 (UTC+01:00)');
    expect(now.because).toEqual([
      {
        rule: 'signs/stages-lost',
        facts: ['walked', 'fell'],
        words: 'Walk 24 Oct 19:00, then Stand 25 Oct 02:00 (UTC+01:00)',
      },
    ]);
  });
  it('one is not, three are', () => {
    expect(lost(10, walked, fails('walk', 9))).toBeUndefined();
    expect(lost(10, walked, fails('stand', 9))?.words).toMatch(/^3 stages less/);
    expect(lost(10, walked, fails('clear', 9))?.words).toMatch(/^5 stages less.*Supported/);
  });
  it('the checks lie at most 24 h apart', () => {
    expect(lost(25.5, walked, fails('turn', 25))).toBeDefined();
    expect(lost(25.5, walked, fails('turn', 25.01))).toBeUndefined();
  });
  it("a nurse's confirmation is a look as well", () => {
    const kept = { ...confirm(20, 'walked'), id: 'confirmed' };
    expect(lost(31, walked, kept, fails('turn', 30, { id: 'fell' }))?.because[0]?.facts).toEqual([
      'confirmed',
      'fell',
    ]);
    expect(lost(31, walked, { ...kept, role: 'aide' }, fails('turn', 30))).toBeUndefined();
    expect(lost(31, { ...kept, at: 0.5 }, walked, fails('turn', 30))).toBeUndefined();
  });
  it('is told for 24 h from the later check, and names that end', () => {
    const told = [walked, fails('turn', 9)];
    expect(lost(32.9, ...told)).toBeDefined();
    expect(lost(33, ...told)).toBeUndefined();
    expect(look(32.9, told).nextChange).toBe(hours(33));
  });
  it('ends when the stages come back, all but one', () => {
    expect(lost(12, walked, fails('turn', 9), check('turn', 11))).toBeUndefined();
    expect(lost(12, check('turn', 1), fails('stand', 9), check('stand', 11))).toBeUndefined();
    expect(lost(12, walked, fails('stand', 9), check('stand', 11))?.words).toMatch(/^3 stages less/);
  });
  it('stays when a later check finds the same', () => {
    expect(lost(27, walked, fails('turn', 9), check('stand', 26))?.because[0]?.facts[0]).toBe('walked');
  });
  it('tells the greatest loss, from the last look before it', () => {
    const again = { ...check('walk', 5), id: 'again' };
    const now = lost(13, walked, again, fails('turn', 9), fails('stand', 12, { id: 'fell' }));
    expect(now?.because[0]?.facts).toEqual(['again', 'fell']);
    expect(now?.words).toMatch(/^3 stages less/);
  });
  it('counts only checks by people who may clear a stage', () => {
    expect(lost(10, walked, fails('turn', 9, { role: 'aide' }))).toBeUndefined();
    expect(lost(10, { ...walked, role: 'aide' }, fails('turn', 9))).toBeUndefined();
  });
  it('does not compare checks under two protocols', () => {
    const own = { ...DEFAULT_PROTOCOL, id: 'own', version: 1 };
    const published = { ...ward, protocols: [{ id: 'own', version: 1, document: own }] };
    const under = (one: Told): Told => ({
      ...one,
      payload: { ...(one.payload as object), protocol: { id: 'own', version: 1 } },
    });
    const kinds = (...told: readonly Told[]) => kindsAt(10, told, published);
    expect(kinds(walked, under(fails('turn', 9)))).not.toContain('stages-lost');
    expect(kinds(under(walked), under(fails('turn', 9)))).toContain('stages-lost');
  });
  it("goes by the ward's own limits", () => {
    const own = rulesWith((rules) => {
      rules.signs.stagesLost.value = 1;
      rules.signs.stagesLostHours.value = 6;
    });
    const kinds = (h: number, ...told: readonly Told[]) => kindsAt(h, told, own);
    expect(kinds(8, walked, fails('walk', 7))).toContain('stages-lost');
    expect(kinds(8, walked, fails('walk', 7.1))).not.toContain('stages-lost');
  });
});

describe('given two looks, a loss is', () => {
  it('from the earlier to the later, never back from what was gained in between', () => {
    const began = check('clear', 0.5);
    const stood = fails('turn', 9, { id: 'stood' });
    const told = lost(10, began, walked, stood)!;
    expect(told.words).toMatch(/^2 stages less within 24 h: Walk .*, Stand /);
    expect(told.because[0]!.facts).toEqual(['walked', 'stood']);
  });
  it('between looks that lie close enough, not along a slow way down', () => {
    const turned = fails('walk', 20, { id: 'turned' });
    const stood = fails('turn', 26, { id: 'stood' });
    expect(lost(27, walked, turned, stood)).toBeUndefined();
    expect(lost(24.9, walked, turned, fails('turn', 24.5))).toBeDefined();
  });
  it('told also where both are of one instant', () => {
    const confirmed = { ...confirm(30, 'walked'), id: 'a-confirmed' };
    const stood = fails('turn', 30, { id: 'b-stood' });
    expect(lost(31, walked, confirmed, stood)?.because[0]!.facts).toEqual(['a-confirmed', 'b-stood']);
  });
});

describe('no loss is told', () => {
  it('when a nurse confirmed before anybody had checked', () => {
    expect(lost(2, confirm(0.5, 'no-check'), check('stand', 1))).toBeUndefined();
  });
  it('to a first check of which nothing can be judged, made at the instant of one that can', () => {
    const untested = check('clear', 1);
    const { stages } = untested.payload as { stages: { findings: object[] }[] };
    const notTested = { result: 'not-tested', reason: 'stopped-before' };
    for (const { findings } of stages) for (const one of findings) Object.assign(one, notTested);
    const told = lost(10, { ...untested, id: 'a-untested' }, walked, fails('turn', 9, { id: 'stood' }))!;
    expect(told.because[0]!.facts).toEqual(['walked', 'stood']);
    expect(told.words).toMatch(/^2 stages less within 24 h: Walk .*, Stand /);
  });
  it('between a check under an earlier version of the protocol and one under the next', () => {
    const version = (n: number) => ({
      id: 'own',
      version: n,
      document: { ...DEFAULT_PROTOCOL, id: 'own', version: n },
    });
    const published = { ...ward, protocols: [version(1), version(2)] };
    const under = (n: number, one: Told): Told => ({
      ...one,
      payload: { ...(one.payload as object), protocol: { id: 'own', version: n } },
    });
    const stood = fails('turn', 9);
    expect(sign('stages-lost', 10, [under(1, walked), under(2, stood)], published)).toBeUndefined();
    expect(sign('stages-lost', 10, [under(2, walked), under(2, stood)], published)).toBeDefined();
  });
});
