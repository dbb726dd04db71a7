import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BedView } from '../capabilities/board/view.ts';
import { packBed, unpackBed } from './pack.ts';

const reason = fc.record({
  rule: fc.constantFrom('hold', 'bears', 'night'),
  facts: fc.array(fc.constantFrom('e1', 'e2'), { maxLength: 2 }),
  words: fc.constantFrom('as ordered', 'as seen'),
});
const because = fc.array(reason, { maxLength: 4 });
/** Any shape with reasons anywhere in it; a real row is one of them. */
const row = fc.record({
  bed: fc.string(),
  tier: fc.record({ word: fc.string(), because }),
  plan: fc.array(fc.record({ task: fc.string(), because, cautions: fc.array(fc.string()) })),
  nothing: fc.constant(null),
});

describe('a row that travels', () => {
  it('PUSH-11 comes out as it went in, each reason sent once', () => {
    fc.assert(
      fc.property(row, (sent) => {
        const travelling = JSON.parse(JSON.stringify(packBed(sent as unknown as BedView))) as {
          reasons: unknown[];
        };
        expect(unpackBed(travelling)).toEqual(sent);
        const texts = travelling.reasons.map((one) => JSON.stringify(one));
        expect(new Set(texts).size).toBe(texts.length);
      }),
    );
  });

  it.each([null, 7, 'row', [], {}, { reasons: 1, row: {} }])(
    'hands on %j, which is no packed row',
    (message) => {
      expect(unpackBed(message)).toBe(message);
    },
  );
});
