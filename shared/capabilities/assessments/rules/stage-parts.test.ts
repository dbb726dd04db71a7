/** A stage by its parts, side by side. Order of stages and gates: common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../values.ts';
import { assessment, upTo } from './assessment.testkit.ts';
import { of, says, swapped, word } from './stages.testkit.ts';

const edgeWith = (...changes: Finding[]) => ({ edge: { findings: swapped('edge', ...changes) } });

describe('a part decides its stage', () => {
  it.each<[string, Finding[], string]>([
    ['a required part not met', [of('sits-hands-free', 'not-met')], 'Upright'],
    ['a required part not tested', [of('sits-hands-free', 'not-tested')], 'Upright'],
    ['a required part that does not apply', [of('sits-hands-free', 'not-applicable')], 'Edge'],
    ['one side of a required part not met', [of('looks-behind', 'not-met', 'right')], 'Upright'],
    ['one side of a required part not tested', [of('looks-behind', 'not-tested', 'left')], 'Upright'],
    ['one side that does not apply', [of('picks-up-cloth', 'not-applicable', 'left')], 'Edge'],
  ])('%s', (_, changes, expected) => {
    expect(word(assessment(upTo('edge', edgeWith(...changes))))).toBe(expected);
  });
  it('a part not met lowers what was cleared before, a part not tested does not', () => {
    const before = assessment(upTo('edge'), { at: 0 });
    const later = (part: Finding) => assessment(upTo('edge', edgeWith(part)), { at: 3 });
    expect(word(before, later(of('sits-hands-free', 'not-met')))).toBe('Upright');
    expect(word(before, later(of('sits-hands-free', 'not-tested')))).toBe('Edge');
    expect(says(before, later(of('looks-behind', 'not-met', 'left'))).join()).toContain(
      'Edge not met: Looks behind over the shoulder (left)',
    );
  });
  it.each<[string, Finding[], string]>([
    [
      'both sides not met',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-met', 'right')],
      'Supported',
    ],
    ['one met, one not', [of('heel-held', 'not-met', 'left')], 'Upright'],
    ['one met, one not tested', [of('heel-held', 'not-tested', 'left')], 'Upright'],
    [
      'one not met, one not tested',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-tested', 'right')],
      'Supported',
    ],
    [
      'one not met, one absent',
      [of('heel-held', 'not-met', 'left'), of('heel-held', 'not-applicable', 'right')],
      'Supported',
    ],
    [
      'both absent',
      [of('heel-held', 'not-applicable', 'left'), of('heel-held', 'not-applicable', 'right')],
      'Upright',
    ],
  ])('where one side is enough: %s', (_, changes, expected) => {
    expect(word(assessment(upTo('upright', { upright: { findings: swapped('upright', ...changes) } })))).toBe(
      expected,
    );
  });
  it('a part that only informs keeps nobody back', () => {
    const none = (['left', 'right'] as const).flatMap((side) =>
      ['grip', 'arm-pushes', 'sole-pushes'].map((part) => of(part, 'not-met', side)),
    );
    expect(word(assessment(upTo('edge', { upright: { findings: swapped('upright', ...none) } })))).toBe(
      'Edge',
    );
  });
  it.each(['edge', 'stand', 'turn', 'walk'])('a symptom during %s means it is not cleared', (stage) => {
    const order = ['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk'];
    const before = order[order.findIndex((w) => w.toLowerCase() === stage) - 1];
    const check = assessment(upTo(stage, { [stage]: { symptom: true } }));
    expect(word(check)).toBe(before);
    expect(says(check).join()).toContain('a symptom during it');
  });
});
