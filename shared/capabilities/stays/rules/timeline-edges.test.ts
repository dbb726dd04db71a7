/** The timeline where entries are of one instant, signed by agency staff, or from a newer program. */
import { describe, expect, it } from 'vitest';
import type { Names } from '../../../kernel/event-type.ts';
import {
  correct,
  cosignature,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { timelineOf } from './timeline.ts';

const names: Names = {
  bed: (id) => id,
  staff: (id) => id.replace('staff-', 'the '),
  text: () => '',
  time: String,
};
/** The record with some entries as a newer program would have written them. */
const but = (record: StayRecord, more: Readonly<Record<string, object>>): StayRecord => ({
  ...record,
  events: record.events.map((event) => ({ ...event, ...more[event.id] })),
});

describe('entries of one instant', () => {
  it('are in the order of the log, in whatever order they were read', () => {
    const told = ['z', 'a', 'm'].map((id): Told => ({ ...trigger('fall', 2), id }));
    const record = stayOf(...told);
    for (const events of [record.events, record.events.toReversed()]) {
      expect(timelineOf({ ...record, events }, names).map((e) => e.event)).toEqual(['e00001', 'z', 'a', 'm']);
    }
  });
});

describe('a second signature', () => {
  it('by agency staff waits for none itself', () => {
    const student: Told = { ...session(1), id: 's', source: { kind: 'person', cosign: 'student' } };
    const signed: Told = { ...cosignature(2, 's'), id: 'k', source: { kind: 'person', cosign: 'agency' } };
    const lines = timelineOf(stayOf(student, signed), names);
    expect(lines.find((e) => e.event === 'k')!.cosign).toBeNull();
    expect(lines.find((e) => e.event === 's')!.cosign).toMatchObject({ kind: 'student' });
  });
});

describe('an entry of a kind that this program does not know', () => {
  it('says so with its name, and counts', () => {
    const record = but(stayOf({ ...trigger('fall', 1), id: 'f' }), { f: { type: 'from-a-newer-program' } });
    expect(timelineOf(record, names).at(-1)).toMatchObject({
      type: 'from-a-newer-program',
      words: 'An entry of a kind this program does not know (from-a-newer-program)',
      target: null,
      counts: true,
    });
  });
  it('in a correction leaves the words of the correction alone', () => {
    const told = { ...correct(2, 'f', trigger('fall', 1)), id: 'c' };
    const record = stayOf({ ...trigger('fall', 1), id: 'f' }, told);
    const payload = { ...(told.payload as object), type: 'from-a-newer-program' };
    const lines = timelineOf(but(record, { c: { payload } }), names);
    expect(lines.at(-1)!.words).toBe('Correction (wrong value)');
  });
});
