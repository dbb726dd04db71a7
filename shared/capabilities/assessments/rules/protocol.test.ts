import { describe, expect, it } from 'vitest';
import type { Protocol } from './protocol.ts';
import { checkProtocol, DEFAULT_PROTOCOL, protocolDocument, protocolLookup } from './protocol.ts';

const own = (change: (p: Protocol) => void = () => {}): Protocol => {
  const p = structuredClone(DEFAULT_PROTOCOL);
  p.id = 'ours';
  change(p);
  return p;
};
const places = (document: unknown) => {
  const result = checkProtocol(document);
  return 'faults' in result ? result.faults.map((f) => f.place) : [];
};

describe('the default protocol', () => {
  it('is a valid document', () => {
    expect(protocolDocument.parse(DEFAULT_PROTOCOL)).toEqual(DEFAULT_PROTOCOL);
  });
  // Lie, sit, stand, step, walk: common practice, no source.
  it('has its stages in the order lie, sit up, edge, stand, step, walk', () => {
    expect(DEFAULT_PROTOCOL.stages.map((s) => s.shows)).toEqual([
      'clear',
      'upright',
      'edge',
      'stand',
      'turn',
      'walk',
    ]);
    expect(DEFAULT_PROTOCOL.stages.map((s) => s.word)).toEqual([
      null,
      'Upright',
      'Edge',
      'Stand',
      'Turn',
      'Walk',
    ]);
  });
  it('names a source for every stage and part', () => {
    for (const s of DEFAULT_PROTOCOL.stages) for (const p of [s, ...s.parts]) expect(p.source).not.toBe('');
  });
});

describe("a ward's own protocol", () => {
  it('is taken when whole', () => {
    expect(checkProtocol(own())).toEqual({ ok: own() });
  });
  it.each<[string, (p: Protocol) => void]>([
    [
      '/id',
      (p) => {
        p.id = 'footboard-default';
      },
    ],
    [
      '/stages/1/id',
      (p) => {
        p.stages[1]!.id = 'clear';
      },
    ],
    [
      '/stages/2/word',
      (p) => {
        p.stages[2]!.word = 'Upright';
      },
    ],
    [
      '/stages/3/word',
      (p) => {
        p.stages[3]!.word = 'Not known';
      },
    ],
    [
      '/stages/3/word',
      (p) => {
        p.stages[3]!.word = null;
      },
    ],
    [
      '/stages/4/shows',
      (p) => {
        p.stages[4]!.shows = 'edge';
      },
    ],
    [
      '/stages/0/parts/1/id',
      (p) => {
        p.stages[0]!.parts[1]!.id = p.stages[0]!.parts[0]!.id;
      },
    ],
    [
      '/reviewBy',
      (p) => {
        p.reviewBy = 'next year';
      },
    ],
    [
      '/stages',
      (p) => {
        p.stages = [];
      },
    ],
  ])('is refused with its place: %s', (place, change) => {
    expect(places(own(change))).toContain(place);
  });
  it.each([null, 7, 'text', [], {}])('%j is refused and nothing throws', (document) => {
    expect('faults' in checkProtocol(document)).toBe(true);
  });
});

describe('finding a protocol', () => {
  const lookup = protocolLookup([
    { id: 'ours', version: 1, document: own() },
    { id: 'broken', version: 1, document: { id: 'broken' } },
    { id: 'text', version: 1, document: 'x' },
  ]);
  it('knows the default and the published ones by version', () => {
    expect(lookup('footboard-default', 1)).toBe(DEFAULT_PROTOCOL);
    expect(lookup('ours', 1)?.id).toBe('ours');
    expect(lookup('ours', 1)).toBe(lookup('ours', 1));
  });
  it.each([
    ['footboard-default', 2],
    ['ours', 2],
    ['nobody', 1],
    ['broken', 1],
    ['text', 1],
  ] as const)('has no %s version %i', (id, version) => {
    expect(lookup(id, version)).toBeNull();
  });
});
