import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { attachmentAdded, cameBack, wentOffWard } from '@footboard/shared/capabilities/stays/events';
import { retractionMade } from '@footboard/shared/capabilities/corrections/events';
import { AIDE, arrived, entry, fact, given, hours, iso, left, NURSE, STAFF } from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const gone = (reason: 'test' | 'theatre' | 'dialysis' | 'home-visit' | 'other', at = hours(1)) =>
  fact(wentOffWard, 'anna', { reason }, { at, id: 'gone' });

describe('which stay an entry belongs to', () => {
  const weight = { stay: 'anna', weight: { kg: 70, how: 'measured' } } as const;
  const givenClosed = given(
    anna,
    left('anna', 'b1', { at: hours(2) }),
    arrived('ben', 'b1', { at: hours(2.1) }),
  );

  it('given a closed stay, when a late entry from before its end comes in, then it goes to that stay alone', () => {
    givenClosed
      .when(commands.recordWeight, weight, { at: hours(1), now: hours(4) })
      .appends(['weight-recorded', 'stay/anna', { weight: weight.weight }]);
  });
  it('given a closed stay, when an entry from after its end comes in, then the next person is left alone', () => {
    givenClosed
      .when(commands.recordWeight, weight, { at: hours(2), now: hours(4) })
      .refuses('stay-ended', '/stay');
    givenClosed
      .when(commands.recordWeight, weight, { at: hours(3), now: hours(4) })
      .refuses('stay-ended', '/stay');
  });
  it('when something is entered from before the arrival, then that is refused', () => {
    given(anna)
      .when(commands.recordWeight, weight, { at: hours(-0.1) })
      .refuses('before-stay', '/stay');
  });
  it('when the stay is unknown, then that is said', () => {
    given().when(commands.recordWeight, weight).refuses('stay-unknown', '/stay');
  });
});

describe('off the ward and back', () => {
  it('when a person goes for a test, then that is recorded with the time due back', () => {
    given(anna)
      .when(commands.goOffWard, { stay: 'anna', reason: 'test', dueBack: iso(4) }, { by: AIDE })
      .appends(['went-off-ward', 'stay/anna', { reason: 'test', dueBack: iso(4) }]);
  });
  it('when they are away already, or due back before leaving, then that is said', () => {
    given(anna, gone('test'))
      .when(commands.goOffWard, { stay: 'anna', reason: 'test' })
      .refuses('already-off-ward');
    given(anna)
      .when(commands.goOffWard, { stay: 'anna', reason: 'test', dueBack: iso(2) })
      .refuses('due-back-in-past', '/dueBack');
  });
  it('given theatre, dialysis, a test or what is not named, when the person is back, then that is a trigger in the same act', () => {
    for (const [reason, kind] of [
      ['theatre', 'return-from-surgery'],
      ['dialysis', 'return-from-dialysis'],
      ['test', 'asked-to-look-again'],
      ['other', 'asked-to-look-again'],
    ] as const) {
      given(anna, gone(reason))
        .when(commands.comeBack, { stay: 'anna' }, { by: AIDE })
        .appends(['came-back', 'stay/anna', {}], ['trigger-recorded', 'stay/anna', { kind }]);
    }
  });
  it('given a visit home, when the person is back, then nothing else happens', () => {
    given(anna, gone('home-visit'))
      .when(commands.comeBack, { stay: 'anna' })
      .appends(['came-back', 'stay/anna', {}]);
  });
  it('given they never left, came back, or the leaving was withdrawn, when they come back, then that is said', () => {
    given(anna).when(commands.comeBack, { stay: 'anna' }).refuses('not-off-ward');
    given(anna, gone('theatre'), fact(cameBack, 'anna', {}, { at: hours(2) }))
      .when(commands.comeBack, { stay: 'anna' })
      .refuses('not-off-ward');
    given(
      anna,
      gone('theatre'),
      fact(retractionMade, 'anna', { target: entry('gone'), reason: 'never-happened' }, { at: hours(2) }),
    )
      .when(commands.comeBack, { stay: 'anna' })
      .refuses('not-off-ward');
  });
});

describe('usual way and weight', () => {
  it('when the usual way comes with a wish, then the wish is kept apart', () => {
    const entered = given(anna).when(
      commands.recordUsualWay,
      { stay: 'anna', usual: { moves: 'walks', transfers: 'alone', stairs: 'yes' }, wish: 'to the garden' },
      { by: AIDE },
    );
    entered.appends([
      'usual-way-recorded',
      'stay/anna',
      { usual: { moves: 'walks', transfers: 'alone', stairs: 'yes' }, wish: { ref: expect.any(String) } },
    ]);
    entered.keeps(['stay/anna', 'to the garden']);
  });
  it('an aide weighs; a nurse may estimate', () => {
    const estimated = { stay: 'anna', weight: { kg: 70, how: 'estimated' } } as const;
    given(anna)
      .when(commands.recordWeight, { stay: 'anna', weight: { kg: 70, how: 'measured' } }, { by: AIDE })
      .accepts();
    given(anna)
      .when(commands.recordWeight, estimated, { by: AIDE })
      .refuses('estimate-needs-qualified', '/weight/how');
    given(anna).when(commands.recordWeight, estimated, { by: NURSE }).accepts();
  });
});

describe('attachments', () => {
  const drain = {
    attachment: 'd1',
    kind: 'chest-drain',
    disconnects: 'nurse',
    needsOwnPerson: true,
  } as const;
  const attached = fact(attachmentAdded, 'anna', drain as never, { at: hours(1) });
  it('when an aide sees one, then it is recorded', () => {
    given(anna)
      .when(commands.addAttachment, { stay: 'anna', ...drain }, { by: AIDE })
      .appends(['attachment-added', 'stay/anna', drain]);
  });
  it('when its id is in use, then that is refused', () => {
    given(anna, attached)
      .when(commands.addAttachment, { stay: 'anna', ...drain })
      .refuses('attachment-known', '/attachment');
  });
  it('when a nurse takes it off the list, then its kind is told with it', () => {
    given(anna, attached)
      .when(commands.removeAttachment, { stay: 'anna', attachment: 'd1' })
      .appends(['attachment-removed', 'stay/anna', { attachment: 'd1', kind: 'chest-drain' }]);
  });
  it('when it was not there at that time, or never, then that is refused', () => {
    given(anna, attached)
      .when(commands.removeAttachment, { stay: 'anna', attachment: 'd1' }, { at: hours(0.5), now: hours(2) })
      .refuses('attachment-unknown', '/attachment');
    given(anna, attached)
      .when(commands.removeAttachment, { stay: 'anna', attachment: 'd2' })
      .refuses('attachment-unknown', '/attachment');
  });
  it('an aide does not take one off the list: that is freer', () => {
    given(anna, attached)
      .when(commands.removeAttachment, { stay: 'anna', attachment: 'd1' }, { by: AIDE })
      .refuses('not-your-role');
  });
});

describe('which plan applies', () => {
  it("when the clinician's own plan is entered, then its text is kept apart", () => {
    const entered = given(anna).when(
      commands.setScope,
      { stay: 'anna', scope: 'clinicians-plan', fence: 'traction', plan: 'stays in bed, turns with two' },
      { by: STAFF['charge-nurse'] },
    );
    entered.appends([
      'scope-set',
      'stay/anna',
      { scope: 'clinicians-plan', fence: 'traction', plan: { ref: expect.any(String) } },
    ]);
    entered.keeps(['stay/anna', 'stays in bed, turns with two']);
  });
  it('comfort stands with or without words; staged has none', () => {
    given(anna)
      .when(commands.setScope, { stay: 'anna', scope: 'comfort' })
      .appends(['scope-set', 'stay/anna', { scope: 'comfort' }]);
    given(anna)
      .when(commands.setScope, { stay: 'anna', scope: 'staged' })
      .appends(['scope-set', 'stay/anna', { scope: 'staged' }]);
  });
  it('an aide or a manager does not choose it', () => {
    for (const by of [AIDE, STAFF.manager]) {
      given(anna).when(commands.setScope, { stay: 'anna', scope: 'staged' }, { by }).refuses('not-your-role');
    }
  });
});

describe('what walls show of the person', () => {
  it('is said by a nurse, therapist or charge nurse, for that stay alone', () => {
    for (const showing of ['nothing', 'as-ward'] as const) {
      given(anna)
        .when(commands.setWallShowing, { stay: 'anna', showing })
        .appends(['wall-showing-set', 'stay/anna', { showing }]);
    }
    for (const by of [AIDE, STAFF.manager, STAFF.records]) {
      given(anna)
        .when(commands.setWallShowing, { stay: 'anna', showing: 'nothing' }, { by })
        .refuses('not-your-role');
    }
    given()
      .when(commands.setWallShowing, { stay: 'anna', showing: 'nothing' })
      .refuses('stay-unknown', '/stay');
  });
});
