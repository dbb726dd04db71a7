/** Early-warning scores, critical-care signs and "seen asleep", as they are entered. */
import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/assessments/commands';
import { earlyWarningRecorded } from '@footboard/shared/capabilities/assessments/events';
import { makeCorrection } from '@footboard/shared/capabilities/corrections/commands';
import { sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Session } from '@footboard/shared/capabilities/sessions/values';
import { rulesPublished } from '@footboard/shared/capabilities/wards/events';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import {
  AIDE,
  arrived,
  CHARGE_NURSE,
  check,
  checked,
  fact,
  given,
  hours,
  iso,
  LARCH,
  left,
  NURSE,
  STAFF,
  THERAPIST,
} from '../given.testkit.ts';
import type { Step } from '../world.testkit.ts';

const anna = arrived('anna', 'b1', { id: 'arrival' });

function turnedOn(group: 'earlyWarning' | 'criticalCare'): Step {
  const document = structuredClone(DEFAULT_RULES);
  document[group].on.value = true;
  document.version = 2;
  return {
    ...newEvent(rulesPublished, streamKey('ward', LARCH), { version: 2, document: document as never }),
    occurred: hours(-1),
  };
}

describe('an early-warning score', () => {
  const score = { score: 4, anyThree: false, scale: 1 } as const;
  it('is recorded by anyone at the bedside, on any ward', () => {
    for (const by of [AIDE, NURSE, THERAPIST, CHARGE_NURSE]) {
      given(anna)
        .when(commands.recordEarlyWarning, { stay: 'anna', ...score }, { by })
        .appends(['early-warning-recorded', 'stay/anna', score]);
    }
    given(anna)
      .when(commands.recordEarlyWarning, { stay: 'anna', ...score }, { by: STAFF.manager })
      .refuses('not-your-role');
  });
  it.each([
    [2, true],
    [13, false],
    [20, false],
  ])('of %d with one parameter at 3 %s cannot be', (total, anyThree) => {
    given(anna)
      .when(commands.recordEarlyWarning, { stay: 'anna', ...score, score: total, anyThree })
      .refuses('early-warning-impossible', '/score');
  });
  it.each([
    [3, true],
    [12, false],
    [13, true],
    [20, true],
  ])('of %d with one parameter at 3 %s can be', (total, anyThree) => {
    given(anna)
      .when(commands.recordEarlyWarning, { stay: 'anna', ...score, score: total, anyThree })
      .accepts();
  });
  it('is not corrected to one that cannot be', () => {
    const before = fact(earlyWarningRecorded, 'anna', score, { at: hours(1), id: 'scored' });
    const as = (total: number) => ({
      stay: 'anna',
      target: 'scored',
      replacement: { ...score, score: total },
      reason: 'wrong-value' as const,
    });
    given(anna, before)
      .when(makeCorrection, as(15))
      .refuses('early-warning-impossible', '/replacement/score');
    given(anna, before).when(makeCorrection, as(5)).accepts();
  });
  it('belongs to a stay that was running then', () => {
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.recordEarlyWarning, { stay: 'anna', ...score })
      .refuses('stay-ended');
    given(anna)
      .when(commands.recordEarlyWarning, { stay: 'nobody', ...score })
      .refuses('stay-unknown');
  });
  it('that was a trigger may be named by a check, also once it is answered; one that was none may not', () => {
    const scored = (total: number) =>
      fact(earlyWarningRecorded, 'anna', { ...score, score: total }, { at: hours(1), id: 'scored' });
    const answer = check('anna', 'edge', hours(3), { answers: ['scored'] });
    const on = turnedOn('earlyWarning');
    given(on, anna, scored(6)).when(commands.recordAssessment, answer).accepts();
    given(on, anna, scored(6), checked('anna', 'edge', { at: hours(2) }))
      .when(commands.recordAssessment, answer)
      .accepts();
    given(on, anna, scored(4))
      .when(commands.recordAssessment, answer)
      .refuses('answer-not-a-trigger', '/answers/0');
    given(anna, scored(6)).when(commands.recordAssessment, answer).refuses('answer-not-a-trigger');
  });
});

describe('a session beyond a stop limit', () => {
  const walk = (perMinute: number, startedAt = iso(1)) =>
    fact(
      sessionRecorded,
      'anna',
      {
        session: {
          outcome: 'done',
          occasion: 'planned',
          activities: ['walk'],
          startedAt,
          events: [],
          firstTimeUp: false,
          readings: [{ kind: 'heart-rate', perMinute, at: iso(1.1) }],
        } satisfies Session,
      },
      { at: hours(1), by: AIDE, id: 'walk' },
    );
  it('may be named by a check as the trigger that it is, also once it is answered', () => {
    const answer = check('anna', 'edge', hours(3), { answers: ['walk'] });
    given(anna, walk(140)).when(commands.recordAssessment, answer).accepts();
    given(anna, walk(140), checked('anna', 'edge', { at: hours(2) }))
      .when(commands.recordAssessment, answer)
      .accepts();
    given(anna, walk(120)).when(commands.recordAssessment, answer).refuses('answer-not-a-trigger');
  });
});

describe('critical-care signs', () => {
  const signs = { sedation: -1, meanPressure: 70, bars: ['femoral-sheath' as const] };
  it('are recorded by a qualified person on a ward that turned the limits on', () => {
    for (const by of [NURSE, THERAPIST, CHARGE_NURSE]) {
      given(turnedOn('criticalCare'), anna)
        .when(commands.recordCriticalCareSigns, { stay: 'anna', ...signs }, { by })
        .appends(['critical-care-signs-recorded', 'stay/anna', signs]);
    }
    given(turnedOn('criticalCare'), anna)
      .when(commands.recordCriticalCareSigns, { stay: 'anna', ...signs }, { by: AIDE })
      .refuses('not-your-role');
  });
  it('are refused where the limits are off', () => {
    given(anna)
      .when(commands.recordCriticalCareSigns, { stay: 'anna', ...signs })
      .refuses('critical-care-set-off');
    given(turnedOn('earlyWarning'), anna)
      .when(commands.recordCriticalCareSigns, { stay: 'anna', ...signs })
      .refuses('critical-care-set-off');
  });
  it('belong to a stay', () => {
    given(turnedOn('criticalCare'), anna)
      .when(commands.recordCriticalCareSigns, { stay: 'nobody', ...signs })
      .refuses('stay-unknown');
  });
});

describe('seen asleep', () => {
  it('is recorded by anyone at the bedside, for a stay that is running', () => {
    for (const by of [AIDE, NURSE, THERAPIST]) {
      given(anna)
        .when(commands.recordAsleep, { stay: 'anna' }, { by })
        .appends(['asleep-seen', 'stay/anna', {}]);
    }
    given(anna).when(commands.recordAsleep, { stay: 'anna' }, { by: STAFF.records }).refuses('not-your-role');
    given(anna, left('anna', 'b1', { at: hours(2) }))
      .when(commands.recordAsleep, { stay: 'anna' })
      .refuses('stay-ended');
  });
});
