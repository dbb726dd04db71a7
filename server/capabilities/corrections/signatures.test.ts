import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/corrections/commands';
import {
  addendumMade,
  entryConfirmed,
  entryCosigned,
  retractionMade,
} from '@footboard/shared/capabilities/corrections/events';
import { triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { staffMemberAdded } from '@footboard/shared/capabilities/people/events';
import type { Author } from '@footboard/shared/kernel/author';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import {
  AIDE,
  arrived,
  CHARGE_NURSE,
  checked,
  claimedBy,
  entry,
  fact,
  given,
  hours,
  LARCH,
  left,
  NURSE,
  STAFF,
  T0,
  THERAPIST,
} from '../given.testkit.ts';
import type { Step } from '../world.testkit.ts';

const anna = arrived('anna', 'b1', { id: 'arrival' });
const claimed = checked('anna', 'walk', { at: hours(1), id: 'claimed', ...claimedBy(THERAPIST) });
const target = { target: entry('claimed') };
const data = { stay: 'anna', event: 'claimed' };

describe('confirming an entry', () => {
  it('is for the person it names, who had not signed in when it was recorded', () => {
    given(anna, claimed)
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .appends(['entry-confirmed', 'stay/anna', target]);
  });
  it('is for an aide too, whose entry it was', () => {
    const fell = fact(triggerRecorded, 'anna', { kind: 'fall' }, { id: 'claimed', ...claimedBy(AIDE) });
    given(anna, fell).when(commands.confirmEntry, data, { by: AIDE }).accepts();
  });
  it('CLAIMED-2 is refused to everybody else, whatever their role', () => {
    for (const by of [NURSE, CHARGE_NURSE, STAFF.records, AIDE]) {
      given(anna, claimed).when(commands.confirmEntry, data, { by }).refuses('not-your-entry', '/event');
    }
  });
  it('may still be done once the stay has ended', () => {
    given(anna, claimed, left('anna', 'b1', { at: hours(2) }))
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .accepts();
  });
  it('needs an entry that waits for it', () => {
    given(anna, checked('anna', 'walk', { at: hours(1), id: 'claimed', by: THERAPIST }))
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .refuses('nothing-to-confirm', '/event');
    given(anna).when(commands.confirmEntry, data).refuses('entry-unknown', '/event');
    given().when(commands.confirmEntry, data).refuses('stay-unknown', '/stay');
  });
  it('is done once', () => {
    const done = fact(entryConfirmed, 'anna', target, { at: hours(2), by: THERAPIST });
    given(anna, claimed, done)
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .refuses('already-confirmed', '/event');
    // A confirmation by somebody else, as no server takes it, is none.
    given(anna, claimed, fact(entryConfirmed, 'anna', target, { at: hours(2), by: NURSE }))
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .accepts();
  });
  it('is not for an entry that was withdrawn, nor for one that speaks of another', () => {
    const gone = { ...target, reason: 'never-happened' } as const;
    given(anna, claimed, fact(retractionMade, 'anna', gone, { at: hours(2), by: THERAPIST }))
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .refuses('entry-withdrawn', '/event');
    const added = { target: entry('arrival'), reason: 'unclear', text: { ref: 'text-1' } } as const;
    given(anna, fact(addendumMade, 'anna', added, { id: 'claimed', ...claimedBy(THERAPIST) }))
      .when(commands.confirmEntry, data, { by: THERAPIST })
      .refuses('entry-is-a-change', '/event');
  });
});

describe('a signature under an entry', () => {
  const done = fact(entryConfirmed, 'anna', target, { at: hours(2), by: THERAPIST, id: 'done' });
  it('is neither corrected nor withdrawn nor added to: the entry itself is', () => {
    const of = { stay: 'anna', target: 'done', reason: 'unclear' } as const;
    const world = given(anna, claimed, done);
    const by = THERAPIST;
    world.when(commands.makeRetraction, of, { by }).refuses('entry-is-a-change', '/target');
    world
      .when(commands.makeCorrection, { ...of, replacement: target }, { by })
      .refuses('entry-is-a-change', '/target');
    world
      .when(commands.makeAddendum, { ...of, text: 'more' }, { by })
      .refuses('entry-is-a-change', '/target');
  });
});

describe('co-signing an entry', () => {
  const wren: Author = { staff: 'wren' as StaffId, role: 'nurse' };
  const member = (staff: string, standing: 'agency' | 'student'): Step => ({
    ...newEvent(staffMemberAdded, streamKey('ward', LARCH), {
      staff: staff as StaffId,
      role: 'nurse',
      name: { ref: `name-of-${staff}` },
      standing,
    }),
    ward: LARCH,
    occurred: T0 - 1,
  });
  const source = { kind: 'person', cosign: 'student' } as const;
  const students = [
    member('wren', 'student'),
    ...anna,
    checked('anna', 'walk', { at: hours(1), id: 'claimed', by: wren, source }),
  ];

  it('COSIGN-1 is for somebody else who is qualified', () => {
    for (const by of [NURSE, THERAPIST, CHARGE_NURSE]) {
      given(...students)
        .when(commands.cosignEntry, data, { by })
        .appends(['entry-cosigned', 'stay/anna', target]);
    }
    for (const by of [AIDE, STAFF.records, STAFF.manager]) {
      given(...students)
        .when(commands.cosignEntry, data, { by })
        .refuses('not-your-role');
    }
  });
  it('is neither for its author nor for another whose own entries wait for one', () => {
    given(...students)
      .when(commands.cosignEntry, data, { by: wren })
      .refuses('cosign-by-another', '/event');
    given(member('sol', 'agency'), ...students)
      .when(commands.cosignEntry, data, { by: { staff: 'sol' as StaffId, role: 'nurse' } })
      .refuses('cosign-by-another', '/event');
  });
  it('needs an entry that waits for it, and is done once', () => {
    given(anna, checked('anna', 'walk', { at: hours(1), id: 'claimed' }))
      .when(commands.cosignEntry, data, { by: THERAPIST })
      .refuses('nothing-to-cosign', '/event');
    given(...students, fact(entryCosigned, 'anna', target, { at: hours(2), by: NURSE }))
      .when(commands.cosignEntry, data, { by: THERAPIST })
      .refuses('already-cosigned', '/event');
    const gone = { ...target, reason: 'never-happened' } as const;
    given(...students, fact(retractionMade, 'anna', gone, { at: hours(2) }))
      .when(commands.cosignEntry, data, { by: THERAPIST })
      .refuses('entry-withdrawn', '/event');
  });
});
