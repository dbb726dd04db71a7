import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/wards/commands';
import { bedClosed, bedWithdrawn } from '@footboard/shared/capabilities/wards/events';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import {
  AIDE,
  arrived,
  bed,
  CHARGE_NURSE,
  given,
  givenNothing,
  hours,
  left,
  NURSE,
  STAFF,
} from '../given.testkit.ts';

const by = CHARGE_NURSE;
const oneBed = { bed: 'x1', label: 'X1', bay: 'North' };
const closed = (id: string) => [
  newEvent(bedClosed, streamKey('ward', 'larch'), { bed: bed(id) }),
  newEvent(bedWithdrawn, streamKey('bed', id), { bed: bed(id) }),
];

describe('a new ward', () => {
  it('given nothing, when it is set up, then its clock and each bed are recorded in one act', () => {
    givenNothing()
      .when(commands.setUpWard, { name: 'Larch', zone: 'Europe/Berlin', beds: [oneBed] }, { by })
      .appends(
        [
          'ward-set-up',
          'ward/larch',
          {
            name: 'Larch',
            zone: 'Europe/Berlin',
            wardDayFrom: '07:00',
            nightFrom: '21:00',
            nightTo: '07:00',
          },
        ],
        ['bed-added', 'ward/larch', { ...oneBed, ceilingTrack: false }],
      );
  });
  it('given a ward, when it is set up again, then that is refused', () => {
    given()
      .when(commands.setUpWard, { name: 'Larch', zone: 'Europe/Berlin', beds: [oneBed] }, { by })
      .refuses('ward-exists');
  });
  it('given nothing, when two beds bear one label, then the second is pointed at', () => {
    givenNothing()
      .when(
        commands.setUpWard,
        { name: 'Larch', zone: 'Europe/Berlin', beds: [oneBed, { ...oneBed, bed: 'x2', label: 'x1' }] },
        { by },
      )
      .refuses('bed-label-used', '/beds/1/label');
  });
  it('given nothing, when two beds bear one id, then the second is pointed at', () => {
    givenNothing()
      .when(
        commands.setUpWard,
        { name: 'Larch', zone: 'Europe/Berlin', beds: [oneBed, { ...oneBed, label: 'X2' }] },
        { by },
      )
      .refuses('bed-known', '/beds/1/bed');
  });
  it('given nothing, when a bed is added, then the ward must be set up first', () => {
    givenNothing().when(commands.addBed, oneBed, { by }).refuses('ward-not-set-up');
  });
});

describe('settings of a ward', () => {
  for (const role of ['administrator', 'manager', 'charge-nurse'] as const) {
    it(`when the ${role} changes the name, then it is recorded`, () => {
      given()
        .when(commands.changeWard, { name: 'Larch East', zone: 'Europe/Berlin' }, { by: STAFF[role] })
        .appends(['ward-changed', 'ward/larch', { name: 'Larch East' }]);
    });
  }
  for (const who of [AIDE, NURSE, STAFF.therapist, STAFF.records, STAFF['handling-coordinator']]) {
    it(`when the ${who.role} changes the name, then that is not their role`, () => {
      given().when(commands.changeWard, { name: 'Larch East' }, { by: who }).refuses('not-your-role');
    });
  }
  it('when nothing would change, then that is said', () => {
    given().when(commands.changeWard, { name: 'Larch' }, { by }).refuses('nothing-to-change');
    const asItIs = {
      panel: { metres: 5, inches: 55 },
      units: { length: 'm', weight: 'kg' },
      language: 'en',
    } as const;
    given().when(commands.changeWard, asItIs, { by }).refuses('nothing-to-change');
  });
  it('when the panel, the units or the language change, then only what changed is recorded', () => {
    const data = {
      panel: { inches: 43, metres: 5 },
      units: { weight: 'kg', length: 'm' },
      language: 'de',
    } as const;
    given()
      .when(commands.changeWard, data, { by })
      .appends(['ward-changed', 'ward/larch', { panel: { inches: 43, metres: 5 }, language: 'de' }]);
  });
});

describe('beds', () => {
  it('when a bed with a new id and label is added, then it is recorded', () => {
    given()
      .when(commands.addBed, oneBed, { by })
      .appends(['bed-added', 'ward/larch', { ...oneBed, ceilingTrack: false }]);
  });
  it('when its label is in use, in whatever case, then that is refused', () => {
    given()
      .when(commands.addBed, { ...oneBed, label: 'l2' }, { by })
      .refuses('bed-label-used', '/label');
  });
  it('given a closed bed, when its id is used again, then that is refused and its label is free', () => {
    given(...closed('b1'))
      .when(commands.addBed, { ...oneBed, bed: 'b1' }, { by })
      .refuses('bed-known', '/bed');
    given(...closed('b1'))
      .when(commands.addBed, { ...oneBed, label: 'L1' }, { by })
      .accepts();
  });
  it('when a bed is changed, then only what differs is recorded', () => {
    given()
      .when(commands.changeBed, { bed: 'b1', label: 'L1', ceilingTrack: true }, { by })
      .appends(['bed-changed', 'ward/larch', { bed: 'b1', ceilingTrack: true }]);
  });
  it('when an unknown bed is changed or closed, then that is refused', () => {
    given().when(commands.changeBed, { bed: 'b9', label: 'L9' }, { by }).refuses('bed-unknown', '/bed');
    given().when(commands.closeBed, { bed: 'b9' }, { by }).refuses('bed-unknown', '/bed');
  });
  it("when a bed takes another bed's label, then that is refused", () => {
    given().when(commands.changeBed, { bed: 'b1', label: 'L2' }, { by }).refuses('bed-label-used', '/label');
  });
  it('when a bed is changed to what it is, then that is said', () => {
    given().when(commands.changeBed, { bed: 'b1', label: 'L1' }, { by }).refuses('nothing-to-change');
  });
  it('given an empty bed, when it is closed, then its guard stream closes with it', () => {
    given(arrived('anna', 'b1'), left('anna', 'b1', { at: hours(1) }))
      .when(commands.closeBed, { bed: 'b1' }, { by })
      .appends(['bed-closed', 'ward/larch', { bed: 'b1' }], ['bed-withdrawn', 'bed/b1', { bed: 'b1' }]);
  });
  it('given a bed freed at 10:00, when its closing at 09:30 is entered late, then someone was in it', () => {
    given(arrived('anna', 'b1'), left('anna', 'b1', { at: hours(1) }))
      .when(commands.closeBed, { bed: 'b1' }, { by, at: hours(0.5), now: hours(2) })
      .refuses('bed-taken-then', '/bed');
  });
  it('given someone in it, when a bed is closed, then that is refused', () => {
    given(arrived('anna', 'b1'))
      .when(commands.closeBed, { bed: 'b1' }, { by })
      .refuses('bed-occupied', '/bed');
  });
});

describe('documents of a ward', () => {
  const own = { ...JSON.parse(JSON.stringify(DEFAULT_PROTOCOL)), id: 'larch-own', version: 1 };
  it('when its own protocol is published, then the event keeps it whole', () => {
    given()
      .when(commands.publishProtocol, { document: own }, { by })
      .appends(['protocol-published', 'ward/larch', { id: 'larch-own', version: 1, document: own }]);
  });
  it('when a protocol skips a version, then the next one is named', () => {
    given()
      .when(commands.publishProtocol, { document: { ...own, version: 2 } }, { by })
      .refuses('version-not-next', '/document/version');
  });
  it('when a protocol has a fault, then its place is pointed at', () => {
    given()
      .when(commands.publishProtocol, { document: { ...own, stages: [] } }, { by })
      .refuses('protocol-faulty', '/document/stages');
  });
  it('when rules version 2 follow the defaults, then they are published; version 1 and 3 are not next', () => {
    given()
      .when(commands.publishRules, { document: { ...DEFAULT_RULES, version: 2 } }, { by })
      .appends(['rules-published', 'ward/larch', { version: 2, document: { ...DEFAULT_RULES, version: 2 } }]);
    for (const version of [1, 3]) {
      given()
        .when(commands.publishRules, { document: { ...DEFAULT_RULES, version } }, { by })
        .refuses('version-not-next', '/document/version');
    }
  });
  it('when rules lack a source for a number, then its place is pointed at', () => {
    const { source: _source, ...unsourced } = DEFAULT_RULES.start.systolicBelow;
    const document = {
      ...DEFAULT_RULES,
      version: 2,
      start: { ...DEFAULT_RULES.start, systolicBelow: unsourced },
    };
    given()
      .when(commands.publishRules, { document }, { by })
      .refuses('rules-faulty', '/document/start/systolicBelow/source');
  });
  it('when a limit of the rules cannot be meant, then its place is pointed at', () => {
    const document = {
      ...DEFAULT_RULES,
      version: 2,
      signs: { ...DEFAULT_RULES.signs, stagesLost: { ...DEFAULT_RULES.signs.stagesLost, value: 0 } },
    };
    given()
      .when(commands.publishRules, { document }, { by })
      .refuses('rules-faulty', '/document/signs/stagesLost/value');
  });
});
