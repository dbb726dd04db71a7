import { describe, expect, it } from 'vitest';
import { makeCorrection, makeRetraction } from '@footboard/shared/capabilities/corrections/commands';
import { sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { EventId, StaffId } from '@footboard/shared/kernel/ids';
import type { TimelineEntry } from '@footboard/shared/wire/http';
import { NOON } from '../../board/rows.testkit.ts';
import { bench } from '../entry/entry.testkit.ts';
import CorrectionForm from './CorrectionForm.vue';
import RetractionForm from './RetractionForm.vue';
import { mayAnnotate, mayCorrect, mayRetract, occurredAt, payloadNow } from './correction-draft.ts';

const line = (over: Partial<TimelineEntry>): TimelineEntry => ({
  event: 'e1' as EventId,
  type: 'session-recorded',
  occurred: NOON,
  precision: 'exact',
  recorded: NOON,
  late: false,
  author: { staff: 'n1' as StaffId, role: 'nurse', name: 'Ines Alder' },
  source: { kind: 'person' },
  words: 'Session done: walk (40 m)',
  changedBy: [],
  target: null,
  counts: true,
  confirmation: null,
  cosign: null,
  data: walked(40),
  ...over,
});
const walked = (metres: number) => ({
  session: {
    outcome: 'done',
    occasion: 'planned',
    activities: ['walk'],
    startedAt: '2026-11-25T12:00:00Z',
    metres,
    events: [],
    firstTimeUp: false,
  },
  said: { ref: 't1' },
});
const correcting = (entry = line({}), timeline = [entry]) =>
  bench(CorrectionForm, { stay: 's1', entry, timeline, zone: 'Europe/Lisbon', version: 9 });

describe('a correction', () => {
  it('replaces the wrong figure only, keeps the text by reference and names the entry', async () => {
    const form = correcting();
    await form.type('Distance', '14');
    await form.tap('Correct it');
    expect(form.sent).toHaveLength(1);
    expect(form.sent[0]!.body.expect).toEqual({ version: 9 });
    const data = makeCorrection.data.parse(form.sent[0]!.body.data);
    expect(data).toMatchObject({ stay: 's1', target: 'e1', reason: 'wrong-value' });
    expect(sessionRecorded.schema.parse(data.replacement)).toEqual(sessionRecorded.schema.parse(walked(14)));
  });

  it('begins with what the entry reads after an earlier correction', () => {
    const original = line({});
    const correction = line({
      event: 'e2' as EventId,
      type: 'correction-made',
      target: 'e1' as EventId,
      data: { target: 'e1', type: 'session-recorded', replacement: walked(20) },
    });
    expect(payloadNow(original, [original, correction])).toEqual(walked(20));
    expect(payloadNow(original, [original, { ...correction, counts: false }])).toEqual(walked(40));
  });

  it('an emptied figure is left out: not recorded, not nought', async () => {
    const form = correcting();
    await form.type('Distance', '');
    await form.tap('Correct it');
    const { replacement } = form.sent[0]!.body.data as { replacement: { session: object } };
    expect(Object.keys(replacement.session)).not.toContain('metres');
  });

  it('an impossible figure stays at its field and is not sent', async () => {
    const form = correcting();
    await form.type('Effort', '14');
    await form.tap('Correct it');
    expect(form.sent).toHaveLength(0);
    expect(form.wrapper.text()).toContain('Effort is 0 to 10.');
  });

  it('of the time is read on the ward’s clock, and moves what the entry says of times with it', async () => {
    const form = correcting();
    await form.tap('The time is wrong');
    await form.type("When it happened, on the ward's clock", '2026-11-25T10:30');
    await form.tap('Correct it');
    expect(form.sent[0]!.body.data).toMatchObject({
      reason: 'wrong-time',
      occurredAt: '2026-11-25T10:30:00.000Z',
      replacement: { session: { startedAt: '2026-11-25T10:30:00.000Z', metres: 40 }, said: { ref: 't1' } },
    });
  });
});

// Source: IANA time zone database, Europe/Lisbon: clocks back on 2026-10-25 at 01:00 UTC, forward on 2026-03-29 at 01:00 UTC.
describe('a corrected time on a clock change', () => {
  it('in the repeated hour asks which of the two', () => {
    expect(occurredAt('Europe/Lisbon', '2026-10-25T01:40', null)).toMatchObject({ asksWhich: true });
    expect(occurredAt('Europe/Lisbon', '2026-10-25T01:40', 'first')).toEqual({
      at: '2026-10-25T00:40:00.000Z',
    });
    expect(occurredAt('Europe/Lisbon', '2026-10-25T01:40', 'second')).toEqual({
      at: '2026-10-25T01:40:00.000Z',
    });
  });
  it('in the skipped hour is refused with the reason', () => {
    const refused = occurredAt('Europe/Lisbon', '2026-03-29T01:30', null);
    expect(refused).toMatchObject({ asksWhich: false, faults: [{ pointer: '/occurredAt' }] });
  });
});

describe('a retraction', () => {
  it('needs its coded reason', async () => {
    const form = bench(RetractionForm, { stay: 's1', entry: line({}), version: 9 });
    await form.tap('Withdraw the entry');
    expect(form.sent).toHaveLength(0);
    await form.tap('It belongs to another person');
    await form.tap('Withdraw the entry');
    expect(makeRetraction.data.parse(form.sent[0]!.body.data)).toEqual({
      stay: 's1',
      target: 'e1',
      reason: 'wrong-person',
    });
  });
});

describe('which of the four verbs fit an entry', () => {
  it('an ordinary entry takes all of them', () => {
    const entry = line({});
    expect([mayAnnotate(entry), mayCorrect(entry), mayRetract(entry)]).toEqual([true, true, true]);
  });
  it('a withdrawn one can only be spoken about', () => {
    const entry = line({ counts: false });
    expect([mayAnnotate(entry), mayCorrect(entry), mayRetract(entry)]).toEqual([true, false, false]);
  });
  it('where a person was is not rewritten', () => {
    const entry = line({ type: 'stay-moved' });
    expect([mayCorrect(entry), mayRetract(entry)]).toEqual([false, false]);
  });
  it('a correction can be withdrawn, an addendum cannot', () => {
    const target = 'e1' as EventId;
    expect(mayRetract(line({ type: 'correction-made', target }))).toBe(true);
    expect(mayRetract(line({ type: 'addendum-made', target }))).toBe(false);
  });
});
