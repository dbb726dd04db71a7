import { describe, expect, it } from 'vitest';
import type { Names } from '../../../kernel/event-type.ts';
import { timelineEntry } from '../../../wire/http.ts';
import {
  calendar,
  check,
  confirmation,
  correct,
  cosignature,
  hold,
  hours,
  retract,
  session,
  stayOf,
  trigger,
  unconfirmed,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import { timelineOf } from './timeline.ts';

const names: Names = {
  bed: (id) => id.replace('bed-', ''),
  staff: (id) => id.replace('staff-', 'the '),
  text: (ref) => (ref ? '(a note)' : ''),
  time: (at) => sayDayTime(calendar.zone, typeof at === 'number' ? at : Date.parse(at)),
};
const lines = (...told: readonly Told[]) => timelineOf(stayOf(...told), names);
const late = (told: Partial<Told>) => lines({ ...session(1), ...told }).at(-1)!.late;

describe('the timeline of a stay', () => {
  it('tells every entry in plain words, oldest first by when it occurred', () => {
    const all = lines(session(3, { metres: 20 }), hold(2, 'walking', 9));
    expect(all.map((e) => e.words)).toEqual([
      'Arrived in bed 1 (from home)',
      'Hold on walking (waiting for review), owner the nurse, review 25 Oct 02:00 (UTC+01:00)',
      'Session done: walk (20 m)',
    ]);
    for (const entry of all) expect(timelineEntry.safeParse(entry).error).toBeUndefined();
    expect(all[2]!.author).toEqual({ staff: 'staff-aide', role: 'aide', name: 'the aide' });
  });

  // More than 60 min after: common practice, no source.
  it('marks an entry late that was recorded more than 60 min after, but not an imported or played one', () => {
    expect(late({ recorded: 2 })).toBe(false);
    expect(late({ recorded: 2.1 })).toBe(true);
    expect(late({ recorded: 2.1, source: { kind: 'paper' } })).toBe(true);
    expect(late({ recorded: 2.1, source: { kind: 'import' } })).toBe(false);
    expect(late({ recorded: 2.1, source: { kind: 'demo' } })).toBe(false);
  });

  it('FACT-1 keeps a withdrawn entry readable, says that it no longer counts, and links both ways', () => {
    const all = lines({ ...trigger('fall', 1), id: 'f' }, { ...retract(2, 'f'), id: 'r' });
    expect(all.find((e) => e.event === 'f')).toMatchObject({
      words: 'Trigger: fall',
      counts: false,
      changedBy: [{ verb: 'retraction', event: 'r' }],
    });
    expect(all.find((e) => e.event === 'r')).toMatchObject({ target: 'f', counts: true });
  });

  it('FACT-1 keeps the words of a corrected entry and says in the correction how it reads now', () => {
    const all = lines(
      { ...session(1, { metres: 20 }), id: 's' },
      { ...correct(2, 's', session(1, { metres: 12 })), id: 'c' },
    );
    expect(all.find((e) => e.event === 's')).toMatchObject({
      words: 'Session done: walk (20 m)',
      counts: true,
    });
    expect(all.find((e) => e.event === 'c')!.words).toBe(
      'Correction (wrong value). It now reads: Session done: walk (12 m)',
    );
  });

  it('CLAIMED-2 says of an entry whose author was not known for sure whether they stand by it', () => {
    const entry = { ...unconfirmed(trigger('fall', 1, 'nurse')), id: 'f' };
    const waits = lines(entry);
    expect(waits.at(-1)).toMatchObject({
      author: { staff: 'staff-nurse', role: 'aide' },
      confirmation: { state: 'unconfirmed', by: null, at: null },
    });
    const all = lines(entry, { ...confirmation(2, 'f'), id: 'c' });
    expect(all.find((e) => e.event === 'f')).toMatchObject({
      confirmation: {
        state: 'confirmed',
        by: { staff: 'staff-nurse', role: 'nurse', name: 'the nurse' },
        at: hours(2),
      },
      changedBy: [],
    });
    expect(all.at(-1)).toMatchObject({
      words: 'Entry confirmed by its author',
      target: 'f',
      confirmation: null,
    });
    for (const line of [...waits, ...all]) expect(timelineEntry.safeParse(line).error).toBeUndefined();
  });

  it('COSIGN-1 says of an entry of agency staff or a student who signed it, or that nobody has', () => {
    const entry: Told = { ...session(1), id: 's', source: { kind: 'person', cosign: 'student' } };
    expect(lines(entry).at(-1)).toMatchObject({
      counts: true,
      cosign: { kind: 'student', state: 'waiting', by: null, at: null },
    });
    // Not by its own author, nor by somebody who may not sign.
    for (const role of ['aide', 'records'] as const) {
      expect(lines(entry, cosignature(2, 's', role)).find((e) => e.event === 's')!.cosign!.state).toBe(
        'waiting',
      );
    }
    const all = lines(entry, { ...cosignature(2, 's'), id: 'c' });
    expect(all.find((e) => e.event === 's')).toMatchObject({
      cosign: {
        kind: 'student',
        state: 'signed',
        by: { staff: 'staff-nurse', name: 'the nurse' },
        at: hours(2),
      },
    });
    expect(all.at(-1)).toMatchObject({ words: 'Entry co-signed', target: 's', cosign: null });
    for (const line of all) expect(timelineEntry.safeParse(line).error).toBeUndefined();
  });

  it('holds every entry of the stream once', () => {
    const record = stayOf(check('edge', 5), session(4), trigger('fall', 4));
    expect(timelineOf(record, names).map((e) => e.occurred)).toEqual([0, 4, 4, 5].map(hours));
  });
});
