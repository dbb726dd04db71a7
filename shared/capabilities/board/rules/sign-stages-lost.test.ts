/** Stages lost between two looks: which looks are compared. Limits are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { check, confirm, ward, type Told } from './history.testkit.ts';
import { fails, sign } from './signs.testkit.ts';

const lost = (h: number, ...told: readonly Told[]) => sign('stages-lost', h, told);
const walked = { ...check('walk', 1), id: 'walked' };

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
