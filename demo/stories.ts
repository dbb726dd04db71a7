/** What sets single people apart: the incidents of the week, each entered as staff would. */
import type { StayId } from '@footboard/shared/kernel/ids';
import { MINUTE, toIso, type EpochMs } from '@footboard/shared/kernel/times';
import { AIDES, LARKFIELD, MILLBROOK, PEOPLE, type DemoPerson } from './cast.ts';
import { at } from './days.ts';
import type { Entry } from './entry.ts';
import { assessment, session } from './routine.ts';

const enter = (when: EpochMs, by: string, command: string, data: Entry['data'], ward = LARKFIELD): Entry => ({
  at: when,
  ward,
  by,
  command,
  data,
});
const person = (story: DemoPerson['story']): DemoPerson => PEOPLE.find((one) => one.story === story)!;
const inBed = (bed: string): DemoPerson => PEOPLE.find((one) => one.bed === bed)!;

/** A fall at night: hold at once, looked at by a nurse, ended by the therapist after a new check. */
function falls(): Entry[] {
  const { stay } = person('falls');
  const night = at(4, '03:12');
  return [
    enter(night, 'tess', 'record-trigger', {
      stay,
      kind: 'fall',
      note: 'Found beside the bed, says she slid down; call bell was out of reach.',
    }),
    enter(night + 2 * MINUTE, 'lena', 'place-hold', {
      stay,
      hold: 'fall-hold-b5',
      scope: 'out-of-bed',
      reason: 'after-fall',
      reviewAt: toIso(at(4, '08:30')),
      note: 'Left hip sore on touch. Doctor called.',
    }),
    enter(at(4, '09:05'), 'ida', 'renew-hold', {
      stay,
      hold: 'fall-hold-b5',
      reviewAt: toIso(at(4, '13:00')),
    }),
    enter(at(4, '13:20'), 'rhea', 'end-hold', { stay, hold: 'fall-hold-b5' }),
    enter(
      at(4, '13:35'),
      'rhea',
      'record-assessment',
      assessment(person('falls'), at(4, '13:35'), 1, { depth: 'full' }),
    ),
  ];
}

/** Hip operation on the second day: away, back, first time up with two people, line out two days later. */
function theatre(): Entry[] {
  const who = person('theatre');
  const { stay } = who;
  return [
    enter(at(2, '07:45'), 'nuri', 'go-off-ward', { stay, reason: 'theatre', dueBack: toIso(at(2, '13:00')) }),
    enter(at(2, '13:25'), 'nuri', 'come-back', { stay }),
    enter(at(2, '13:35'), 'nuri', 'add-attachment', {
      stay,
      attachment: 'line-c2',
      kind: 'iv-line',
      disconnects: 'nurse',
      tetherMetres: 1.5,
      needsOwnPerson: false,
    }),
    enter(at(2, '13:40'), 'nuri', 'change-order', {
      stay,
      order: { about: 'precaution', precaution: 'hip', on: true },
      orderedBy: 'surgeon on call',
    }),
    enter(
      at(3, '09:30'),
      'rhea',
      'record-assessment',
      assessment(who, at(3, '09:30'), 3, { depth: 'full-with-pressure', secured: true, firstTimeUp: true }),
    ),
    enter(at(4, '10:00'), 'rhea', 'record-assessment', assessment(who, at(4, '10:00'), 4, { depth: 'full' })),
    enter(at(4, '11:00'), 'pia', 'remove-attachment', { stay, attachment: 'line-c2' }),
  ];
}

/** The therapist clears more at 10:00; the surgeon's limit, ordered before, is entered after. The safer stands. */
function oneLeg(): Entry[] {
  const who = person('one-leg');
  const { stay } = who;
  return [
    enter(at(0, '07:20'), 'nuri', 'change-order', {
      stay,
      order: { about: 'weight-bearing', limb: 'left-leg', bears: 'limited', limit: { kg: 20 } },
      orderedBy: 'fracture clinic',
    }),
    enter(
      at(2, '10:00'),
      'rhea',
      'record-assessment',
      assessment(who, at(2, '10:00'), 3, { depth: 'full', oneLeg: true }),
    ),
    enter(at(2, '10:05'), 'pia', 'change-order', {
      stay,
      order: { about: 'weight-bearing', limb: 'left-leg', bears: 'none' },
      orderedBy: 'surgeon, ward round 09:55',
    }),
    enter(at(5, '11:00'), 'jonas', 'change-order', {
      stay,
      order: { about: 'weight-bearing', limb: 'left-leg', bears: 'limited', limit: { percent: 50 } },
      orderedBy: 'fracture clinic',
    }),
    enter(
      at(5, '11:20'),
      'jonas',
      'record-assessment',
      assessment(who, at(5, '11:20'), 4, { depth: 'full', oneLeg: true }),
    ),
  ];
}

function others(): Entry[] {
  const delirium = person('delirium');
  const dizzy = person('dizzy');
  const drain = person('drain');
  const held = person('long-hold');
  const own = person('on-own');
  const comfort = person('comfort');
  const clinician = person('clinicians-plan');
  const leaver = person('transfers');
  const swapped = inBed('lf-b3');
  const corrected = inBed('lf-a6');
  const mistaken = inBed('lf-a4');
  return [
    enter(at(1, '16:40'), 'otto', 'record-trigger', {
      stay: delirium.stay,
      kind: 'new-confusion',
      note: 'Pulling at the sheets, calls for her sister.',
    }),
    enter(at(1, '21:10'), 'lena', 'record-trigger', { stay: delirium.stay, kind: 'sedation' }),
    enter(
      at(2, '08:10'),
      'nuri',
      'record-assessment',
      assessment(delirium, at(2, '08:10'), 2, { depth: 'full' }),
    ),
    enter(at(6, '21:40'), 'mika', 'record-trigger', { stay: delirium.stay, kind: 'sedation' }),
    enter(
      at(3, '10:40'),
      'tess',
      'record-session',
      session(dizzy, at(3, '10:40'), 3, { outcome: 'stopped', events: ['dizzy'] }),
    ),
    enter(
      at(3, '11:10'),
      'pia',
      'record-assessment',
      assessment(dizzy, at(3, '11:10'), 3, { depth: 'full-with-pressure', pressureDrop: true }),
    ),
    enter(at(0, '07:25'), 'pia', 'add-attachment', {
      stay: drain.stay,
      attachment: 'drain-c4',
      kind: 'chest-drain',
      disconnects: 'nobody',
      tetherMetres: 1.2,
      needsOwnPerson: true,
    }),
    enter(at(0, '07:26'), 'pia', 'add-attachment', {
      stay: drain.stay,
      attachment: 'oxygen-c4',
      kind: 'oxygen-wall',
      disconnects: 'nurse',
      tetherMetres: 3,
      needsOwnPerson: false,
    }),
    enter(at(6, '11:30'), 'otto', 'place-hold', {
      stay: held.stay,
      hold: 'hold-e3',
      scope: 'walking',
      reason: 'clot-suspected',
      reviewAt: toIso(at(7, '08:00')),
      note: 'Scan asked for, calf swollen.',
    }),
    enter(at(5, '14:10'), 'rhea', 'set-on-own', { stay: own.stay, where: ['room', 'toilet'], when: ['day'] }),
    enter(at(0, '07:30'), 'ida', 'set-scope', {
      stay: comfort.stay,
      scope: 'comfort',
      plan: 'Family with her. Turn for comfort, two people; lift to the chair by the window if she asks.',
    }),
    enter(at(0, '07:35'), 'ida', 'set-scope', {
      stay: clinician.stay,
      scope: 'clinicians-plan',
      fence: 'unstable-spine-pelvis-or-long-bone',
      plan: 'Flat, log-roll with four, no sitting until the spine team has seen him.',
    }),
    enter(at(3, '14:20'), 'ida', 'swap-stays', {
      first: { stay: swapped.stay, bed: 'lf-b3' },
      second: { stay: dizzy.stay, bed: 'lf-b4' },
    }),
    enter(at(2, '15:05'), 'abel', 'record-session', session(corrected, at(2, '15:05'), 5, { metres: 400 })),
    enter(at(2, '15:20'), 'abel', 'make-correction', (find) => {
      const target = find(corrected.stay, 'session-recorded', at(2, '15:05'));
      return target === null
        ? null
        : {
            stay: corrected.stay,
            target,
            reason: 'wrong-value',
            text: 'Forty metres, not four hundred.',
            replacement: { session: session(corrected, at(2, '15:05'), 5, { metres: 40 }).session },
          };
    }),
    enter(at(4, '10:15'), 'dina', 'record-session', session(mistaken, at(4, '10:15'), 4, {})),
    enter(at(4, '13:05'), 'dina', 'make-retraction', (find) => {
      const target = find(mistaken.stay, 'session-recorded', at(4, '10:15'));
      return target === null
        ? null
        : { stay: mistaken.stay, target, reason: 'wrong-person', text: 'That was the person in A6.' };
    }),
    // The hour that comes twice: two different walks to the toilet, both at 01:40 on the ward's clock.
    enter(
      at(5, '01:40', 'first'),
      'lena',
      'record-session',
      session(corrected, at(5, '01:40', 'first'), 4, { occasion: 'toilet', metres: 12 }),
    ),
    enter(
      at(5, '01:40', 'second'),
      'lena',
      'record-session',
      session(swapped, at(5, '01:40', 'second'), 4, { occasion: 'toilet', metres: 10 }),
    ),
    enter(at(6, '14:30'), 'bram', 'transfer-stay', {
      stay: leaver.stay,
      bed: 'lf-c5',
      to: { ward: MILLBROOK, bed: 'mb-f4', stay: 'st-201' as StayId },
    }),
    enter(
      at(6, '14:50'),
      'cleo',
      'record-usual-way',
      { stay: 'st-201' as StayId, usual: leaver.usual },
      MILLBROOK,
    ),
    enter(at(7, '07:55'), 'pia', 'go-off-ward', {
      stay: inBed('lf-e1').stay,
      reason: 'test',
      dueBack: toIso(at(7, '09:15')),
    }),
    // Later on the live day.
    enter(at(7, '08:24'), 'pia', 'renew-hold', {
      stay: held.stay,
      hold: 'hold-e3',
      reviewAt: toIso(at(7, '12:00')),
    }),
    enter(at(7, '09:20'), 'pia', 'come-back', { stay: inBed('lf-e1').stay }),
    enter(at(7, '11:40'), 'rhea', 'end-hold', { stay: held.stay, hold: 'hold-e3' }),
    enter(at(7, '08:33'), AIDES[0]!, 'record-trigger', { stay: dizzy.stay, kind: 'asked-to-look-again' }),
  ];
}

export const stories = (): Entry[] => [...falls(), ...theatre(), ...oneLeg(), ...others()];
