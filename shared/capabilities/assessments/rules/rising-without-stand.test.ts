/** What is found on rising counts under a ward's document that has no stage for standing, too. Design, rule 2; common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../corrections/facts.ts';
import { assessment, fact, hours, tierInput, upTo } from './assessment.testkit.ts';
import type { Assessment } from './judge-stage.ts';
import { checkUnder, SHORT } from './own-protocol.testkit.ts';
import { protocolLookup } from './protocol.ts';
import { judgeTier } from './tier.ts';

const protocols = protocolLookup([{ id: SHORT.id, version: 1, document: SHORT }]);
const after = (...facts: readonly Fact[]) => judgeTier({ ...tierInput(facts), protocols });
const walked = () => assessment(upTo('walk'), { at: 1, id: 'walked' });
const under = (id: string, at: number, more: Partial<Assessment> = {}) =>
  fact('assessment-recorded', { ...checkUnder(SHORT, 'side', hours(at)), ...more }, { at, id });
const dizzy = () => under('dizzy', 2, { risingSymptoms: ['dizzy'] });
const edgeOnly = () => assessment(upTo('edge'), { at: 3, id: 'edge' });

describe('given walking was cleared, and then a check under a document without standing', () => {
  it('when the person was dizzy on rising in it, then a later check to the edge does not bring the walk back', () => {
    const tier = after(walked(), dizzy(), edgeOnly());
    expect(tier.cleared.has('edge')).toBe(true);
    expect(['stand', 'turn', 'walk'].filter((of) => tier.cleared.has(of as 'stand'))).toEqual([]);
    expect(tier.seen.foundLess.has('dizzy' as Fact['id'])).toBe(true);
    expect(tier.seen.stages.get('stand')).toMatchObject({ outcome: 'not-met', fact: { id: 'dizzy' } });
    expect(tier.seen.stages.get('walk')).toMatchObject({ outcome: 'taken-back' });
  });

  it('when nothing was wrong in it, then the walk stands', () => {
    const tier = after(walked(), under('well', 2), edgeOnly());
    expect(tier.cleared.has('walk')).toBe(true);
    expect(tier.seen.foundLess.size).toBe(0);
  });

  it('when the person was dizzy and walked again later, then the walk stands', () => {
    const again = assessment(upTo('walk'), { at: 3, id: 'again' });
    expect(after(walked(), dizzy(), again).cleared.has('walk')).toBe(true);
  });
});
