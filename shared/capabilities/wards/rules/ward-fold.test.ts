/** What a ward's own stream makes of the ward, at the edges. */
import { describe, expect, it } from 'vitest';
import type { WardId } from '../../../kernel/ids.ts';
import { setUpWard, WARD, WardLog } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from './rules-document.ts';
import { foldWard, rulesOf } from './ward-state.ts';

const STREAM = `ward/${WARD}` as const;
function wardLog(...told: readonly { type: string; payload: unknown }[]): WardLog {
  const log = new WardLog();
  setUpWard(log, 1);
  for (const one of told) log.add(STREAM, one);
  return log;
}
const of = (...told: readonly { type: string; payload: unknown }[]) =>
  foldWard(WARD, wardLog(...told).events)!;
const added = (staff: string, more: object = {}) => ({
  type: 'staff-member-added',
  payload: { staff, role: 'aide', name: { ref: `name-${staff}` }, ...more },
});

describe('a ward', () => {
  it('is its name and clock as set up, with nothing published', () => {
    const log = new WardLog();
    setUpWard(log, 0);
    expect(foldWard(WARD, log.events)).toEqual({
      ward: WARD,
      name: 'Lindenhof 2',
      zone: 'Europe/Berlin',
      wardDayFrom: '07:00',
      nightFrom: '21:00',
      nightTo: '07:00',
      panel: { inches: 55, metres: 5 },
      units: { weight: 'kg', length: 'm' },
      language: 'en',
      beds: [],
      staff: new Map(),
      items: new Map(),
      lent: new Map(),
      borrowed: new Map(),
      givenBack: new Map(),
      carers: new Map(),
      peopleOn: new Map(),
      dayPlan: null,
      notExpected: new Map(),
      protocols: [],
      rules: null,
    });
  });
  it('hears no other ward, and nothing that stands in another stream', () => {
    const { events } = wardLog({ type: 'ward-changed', payload: { name: 'Lindenhof 3' } });
    expect(foldWard('ward-2' as WardId, events)).toBeNull();
    const elsewhere = events.map((event) => ({ ...event, stream: 'bed/bed-1' as const }));
    expect(foldWard(WARD, elsewhere)).toBeNull();
  });
  it('set up once more keeps its beds, its people and what it published', () => {
    const again = {
      type: 'ward-set-up',
      payload: {
        name: 'Lindenhof 4',
        zone: 'UTC',
        wardDayFrom: '06:00',
        nightFrom: '22:00',
        nightTo: '06:00',
      },
    };
    const document = { ...DEFAULT_RULES, version: 2 };
    const told = [
      added('s1'),
      { type: 'protocol-published', payload: { id: 'p', version: 1, document: {} } },
      { type: 'rules-published', payload: { version: 2, document } },
    ];
    const [before, after] = [of(...told), of(...told, again)];
    expect(after).toEqual({ ...before, ...again.payload });
    expect(before.beds).toHaveLength(1);
  });
  it('is not changed by a setting that is named and says nothing', () => {
    const changed = of({ type: 'ward-changed', payload: { name: undefined, nightFrom: '20:00' } });
    expect(changed).toMatchObject({ name: 'Lindenhof 2', nightFrom: '20:00' });
    const bed = of({ type: 'bed-changed', payload: { bed: 'bed-1', label: undefined, bay: 'C' } });
    expect(bed.beds).toEqual([{ bed: 'bed-1', label: '1', bay: 'C', ceilingTrack: true }]);
  });
  it('is the same object after an entry that says nothing of it', () => {
    const before = of();
    const log = wardLog({ type: 'staff-member-changed', payload: { staff: 'nobody', active: false } });
    expect(foldWard(WARD, log.events.slice(-1), before)).toBe(before);
    const unknown = log.events.slice(-1).map((event) => ({ ...event, type: 'from-a-newer-program' }));
    expect(foldWard(WARD, unknown, before)).toBe(before);
  });
});

describe('a bed', () => {
  it('added once more is at the end, as it was told then; closed, it leaves the others', () => {
    const bed = (id: string, label: string) => ({
      type: 'bed-added',
      payload: { bed: id, label, bay: 'B', ceilingTrack: false },
    });
    const told = [bed('bed-2', '2'), bed('bed-1', 'one')];
    expect(of(...told).beds.map((b) => b.label)).toEqual(['2', 'one']);
    const closed = { type: 'bed-closed', payload: { bed: 'bed-2' } };
    expect(of(...told, closed).beds.map((b) => b.bed)).toEqual(['bed-1']);
  });
});

describe('the staff list', () => {
  it('has each person with their standing, active, and only what a change names is changed', () => {
    const told = [
      added('s1', { standing: 'agency' }),
      added('s2', { role: 'nurse' }),
      { type: 'staff-member-changed', payload: { staff: 's2', role: 'charge-nurse', active: undefined } },
    ];
    expect([...of(...told).staff]).toEqual([
      ['s1', { role: 'aide', name: { ref: 'name-s1' }, standing: 'agency', active: true }],
      ['s2', { role: 'charge-nurse', name: { ref: 'name-s2' }, standing: 'own', active: true }],
    ]);
  });
});

describe('what the ward published', () => {
  const protocol = (id: string, version: number) => ({
    type: 'protocol-published',
    payload: { id, version, document: { id } },
  });
  it('are all protocols, the newest last, and the newest rules', () => {
    const document = { ...DEFAULT_RULES, version: 3 };
    const { protocols, rules } = of(
      protocol('a', 1),
      protocol('b', 1),
      protocol('a', 2),
      { type: 'rules-published', payload: { version: 2, document: { ...document, version: 2 } } },
      { type: 'rules-published', payload: { version: 3, document } },
    );
    expect(protocols.map((p) => [p.id, p.version, p.document])).toEqual([
      ['a', 1, { id: 'a' }],
      ['b', 1, { id: 'b' }],
      ['a', 2, { id: 'a' }],
    ]);
    expect(rules).toEqual(document);
  });
  it.each([null, undefined, 'text', 5, []])(
    'is read as the defaults where it is no document: %j',
    (rules) => {
      expect(rulesOf({ rules })).toBe(DEFAULT_RULES);
    },
  );
  it('is read once: the same document gives the same rules', () => {
    const rules = { ...DEFAULT_RULES, version: 4 };
    const first = rulesOf({ rules });
    expect(first.version).toBe(4);
    expect(rulesOf({ rules })).toBe(first);
    expect(rulesOf({ rules: { ...rules, version: 5 } }).version).toBe(5);
  });
});
