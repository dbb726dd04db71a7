import { describe, expect, it } from 'vitest';
import type { Protocol } from './protocol.ts';
import {
  checkProtocol,
  DEFAULT_PROTOCOL,
  protocolDocument,
  protocolInForce,
  protocolLookup,
  protocolWarnings,
} from './protocol.ts';

const own = (change: (p: Protocol) => unknown = () => {}): Protocol => {
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
  type Change = (p: Protocol, raw: Record<string, unknown>) => unknown;
  const change = (f: Change) => own((p) => f(p, p as never));
  it.each<[string, string, Change]>([
    // Shape
    ['/colour', 'take it out', (_, raw) => Object.assign(raw, { colour: 'red' })],
    ['/stages/1/parts/0/a~1b', 'take it out', (p) => Object.assign(p.stages[1]!.parts[0]!, { 'a/b': 1 })],
    ['/owner', 'is missing: add text', (_, raw) => delete raw['owner']],
    ['/version', 'must be at least 1', (p) => (p.version = 0)],
    ['/version', 'must be a whole number', (p) => (p.version = 1.5)],
    ['/stages', 'must be a list', (_, raw) => Object.assign(raw, { stages: {} })],
    ['/stages', 'at least one stage', (p) => (p.stages = [])],
    ['/stages/0/parts', 'at least one part', (p) => (p.stages[0]!.parts = [])],
    ['/reviewBy', 'a date like', (p) => (p.reviewBy = 'next year')],
    ['/id', 'lower-case words', (p) => (p.id = 'Our Own')],
    ['/lowestWord', 'at least 1 signs', (p) => (p.lowestWord = ' ')],
    ['/lowestWord', 'at most 24 signs', (p) => (p.lowestWord = 'a'.repeat(25))],
    [
      '/stages/1/parts/0/gate',
      'must be one of: required, one-side, informs',
      (p) => (p.stages[1]!.parts[0]!.gate = 'always' as never),
    ],
    [
      '/stages/1/parts/0/sided',
      'must be true or false',
      (p) => (p.stages[1]!.parts[0]!.sided = 'no' as never),
    ],
    ['/stages/1/shows', 'must be one of: clear, upright', (p) => (p.stages[1]!.shows = 'hop' as never)],
    [
      '/stages/3/securedBy/0',
      'must be one of: raised-bed',
      (p) => (p.stages[3]!.securedBy = ['rope' as never]),
    ],
    // Sense
    ['/id', 'choose another id', (p) => (p.id = 'footboard-default')],
    ['/stages/1/id', 'another id', (p) => (p.stages[1]!.id = 'clear')],
    ['/stages/0/parts/1/id', 'another id', (p) => (p.stages[0]!.parts[1]!.id = p.stages[0]!.parts[0]!.id)],
    ['/stages/2/word', 'is there twice: choose another word', (p) => (p.stages[2]!.word = 'Upright')],
    ['/stages/2/word', 'only in capitals', (p) => (p.stages[2]!.word = 'UPRIGHT')],
    ['/stages/2/word', 'is there twice', (p) => (p.stages[2]!.word = p.lowestWord)],
    ['/stages/3/word', 'not assessed here', (p) => (p.stages[3]!.word = 'Not known')],
    ['/stages/3/word', 'only in capitals', (p) => (p.stages[3]!.word = 'not known')],
    ['/lowestWord', 'not assessed here', (p) => (p.lowestWord = 'Not known')],
    ['/stages/3/word', 'give this one a word', (p) => (p.stages[3]!.word = null)],
    ['/stages', 'needs a tier word', (p) => (p.stages = [{ ...p.stages[0]!, word: null }])],
    ['/stages/4/shows', 'in the order clear, upright', (p) => (p.stages[4]!.shows = 'edge')],
    ['/stages/4/shows', 'must come once', (p) => (p.stages[4]!.shows = 'stand')],
    ['/stages', 'signs and orders would never be looked at', (p) => (p.stages[0]!.shows = null)],
    [
      '/stages/1/shows',
      'must be the first',
      (p) => p.stages.unshift({ ...structuredClone(p.stages[0]!), id: 'before', shows: null }),
    ],
    [
      '/stages/3/parts',
      'needs a part that shows "leg-bears"',
      (p) => {
        p.stages[3]!.parts.pop();
        p.stages[3]!.oneLegRoute = false;
      },
    ],
    ['/stages/3/parts/1/gate', 'must be "required"', (p) => (p.stages[3]!.parts[1]!.gate = 'one-side')],
    ['/stages/3/parts/1/gate', 'must be "required"', (p) => (p.stages[3]!.parts[1]!.gate = 'informs')],
    [
      '/stages/3/parts/0/gate',
      'must be "required"',
      (p) => {
        p.stages[3]!.parts.reverse();
        p.stages[3]!.parts[0]!.gate = 'one-side';
      },
    ],
    ['/stages/3/parts/1/sided', 'would never be read', (p) => (p.stages[3]!.parts[1]!.sided = false)],
    ['/stages/2/parts/1/sided', 'is of the whole person', (p) => (p.stages[2]!.parts[1]!.sided = true)],
    ['/stages/0/parts/0/gate', 'a part without sides', (p) => (p.stages[0]!.parts[0]!.gate = 'one-side')],
    [
      '/stages/4/parts',
      'no part decides this stage',
      (p) => p.stages[4]!.parts.forEach((x) => (x.gate = 'informs')),
    ],
    [
      '/stages/4/oneLegRoute',
      'a part of this stage that shows "leg-bears"',
      (p) => (p.stages[4]!.oneLegRoute = true),
    ],
    ['/stages/3/oneLegRoute', 'one leg asks for both arms', (p) => p.stages[1]!.parts.pop()],
    ['/stages/4/securedBy', 'the first time is to be held safe', (p) => (p.stages[4]!.securedBy = [])],
    ['/stages/4/securedBy/1', 'is there twice', (p) => (p.stages[4]!.securedBy = ['sling', 'sling'])],
    ['/stages/0/securedBy/0', 'nobody is moved', (p) => (p.stages[0]!.securedBy = ['sling'])],
    [
      '/stages/3/securedBy/0',
      'the raised bed holds nobody',
      (p) => (p.stages[3]!.securedBy = ['raised-bed']),
    ],
    [
      '/stages/2/securedBy/0',
      'the standing aid holds a person who stands',
      (p) => (p.stages[2]!.securedBy = ['standing-aid']),
    ],
    ['/stages/5/symptomStops', 'nobody goes on', (p) => (p.stages[5]!.symptomStops = false)],
    ['/stages/3/symptomStops', 'nobody goes on', (p) => (p.stages[3]!.symptomStops = false)],
    ['/pressureSet/standingMinutes/1', 'more than 1 min', (p) => (p.pressureSet.standingMinutes = [1, 2])],
    [
      '/pressureSet/standingMinutes/1',
      'after the one before',
      (p) => (p.pressureSet.standingMinutes = [3, 1]),
    ],
    ['/toldApart/aboutMinutes', 'at least exactMinutes', (p) => (p.toldApart.aboutMinutes = 0.5)],
  ])('CHECK-2 is refused at %s and says what to do: %s', (place, reason, f) => {
    const result = checkProtocol(change(f));
    const faults = 'faults' in result ? result.faults : [];
    expect(faults).toContainEqual({ place, reason: expect.stringContaining(reason) });
  });
  it('is refused for that alone: one change, one place', () => {
    expect(places(change((p) => (p.stages[0]!.shows = null)))).toEqual(['/stages']);
    expect(places(change((p) => (p.stages[3]!.parts[1]!.gate = 'informs')))).toEqual([
      '/stages/3/parts/1/gate',
    ]);
    expect(places(change((p) => (p.toldApart.aboutMinutes = 1)))).toEqual([]);
    expect(places(change((p) => (p.pressureSet.standingMinutes = [1, 2.1])))).toEqual([]);
    expect(places(change((p) => (p.stages[1]!.symptomStops = false)))).toEqual([]);
  });
  it.each([
    [null, ''],
    [7, ''],
    [[], ''],
    [{}, '/id'],
  ])('%j is refused at "%s" in plain words', (document, place) => {
    const result = checkProtocol(document);
    const [fault] = 'faults' in result ? result.faults : [];
    expect(fault?.place).toBe(place);
    expect(fault?.reason).toMatch(place ? /is missing/ : /must be an object/);
  });

  describe('what it leaves out', () => {
    const warned = (f: Change) => protocolWarnings(change(f)).map((w) => w.reason);
    const without =
      (shows: string): Change =>
      (p) => {
        for (const s of p.stages) s.parts = s.parts.filter((x) => x.shows !== shows);
      };
    it('is nothing in the default', () => {
      expect(protocolWarnings(DEFAULT_PROTOCOL)).toEqual([]);
    });
    it('is never the start: a document without it is refused', () => {
      expect(warned((p) => p.stages.shift())).toEqual([]);
    });
    it.each<[string, string]>([
      ['upright', 'as if lifted'],
      ['edge', 'no standing aid is ever offered'],
      ['turn', 'transfer freely'],
      ['walk', 'nobody is cleared to walk'],
    ])('is said when no stage shows %s', (meaning, what) => {
      const leave: Change = (p) => (p.stages = p.stages.filter((s) => s.shows !== meaning));
      const said = warned(leave).filter((w) => w.startsWith('no stage'));
      expect(said).toHaveLength(1);
      expect(said[0]).toContain(`no stage shows "${meaning}"`);
      expect(said[0]).toContain(what);
    });
    it('is said when nobody ever stands', () => {
      const said = warned((p) => (p.stages = p.stages.slice(0, 3)));
      expect(said).toHaveLength(3);
      expect(said[0]).toBe('no stage shows "stand": nobody ever bears weight');
    });
    it.each<[string, string]>([
      ['leg-against-resistance', 'counts as held safe'],
      ['grip', 'no standing aid'],
      ['arm-pushes', 'seated transfer'],
    ])('is said when no part shows %s', (meaning, what) => {
      const said = warned(without(meaning));
      expect(said).toHaveLength(1);
      expect(said[0]).toContain(`no part shows "${meaning}"`);
      expect(said[0]).toContain(what);
    });
  });
  it.each([null, 7, 'text', [], {}])('%j is refused and nothing throws', (document) => {
    expect('faults' in checkProtocol(document)).toBe(true);
  });
});

describe('finding a protocol', () => {
  it('a document published before a fault was known stays readable', () => {
    const old = own((p) => {
      p.stages[5]!.symptomStops = false;
    });
    const published = [{ id: 'ours', version: 1, document: old }];
    expect(places(old)).toEqual(['/stages/5/symptomStops']);
    expect(protocolLookup(published)('ours', 1)).toEqual(old);
  });
  it('in force is the newest that can be read, and the default without one', () => {
    const of = (version: number, document: unknown) => ({ id: 'ours', version, document });
    expect(protocolInForce([])).toBe(DEFAULT_PROTOCOL);
    const [one, two] = [own(), own((p) => (p.version = 2))];
    expect(protocolInForce([of(1, one), of(2, two)])).toEqual(two);
    expect(protocolInForce([of(1, one), of(2, 'x')])).toEqual(one);
    expect(protocolInForce([of(1, 'x')])).toBe(DEFAULT_PROTOCOL);
  });

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
