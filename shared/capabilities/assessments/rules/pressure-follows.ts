/**
 * What follows from the pressures on rising: for the stage, the caution, the people, the prescriber.
 * Common practice, no source; to be signed by the ward. The clinician at the bedside decides.
 */
import { isWhole, standingOf } from './pressure-series.ts';
import type { RisingFollows, RisingInput, RisingVerdict } from './rising-verdict.ts';

/**
 * Whether a standing up after the one that fell was measured as far as it was to be. When it fell on
 * sitting up alone, the first standing up is the one to repeat.
 */
function retried({ fired, readings }: Omit<RisingVerdict, 'follows'>, input: RisingInput): boolean {
  const standing = standingOf(readings);
  const fell = fired.find((f) => f.to.series > 0)?.to ?? standing[0];
  return standing.some(
    ({ series, minute }) =>
      fell !== undefined &&
      series > fell.series &&
      (input.demanded ? isWhole(readings, series, input.set) : (minute ?? Infinity) >= (fell.minute ?? 0)),
  );
}

export function followsFrom(verdict: Omit<RisingVerdict, 'follows'>, input: RisingInput): RisingFollows {
  const fell = verdict.fall === 'yes';
  const drop = fell
    ? ({ caution: 'PRESSURE DROP', peopleMore: 1 } as const)
    : ({ caution: null, peopleMore: 0 } as const);
  const withCaution = 'PRESSURE DROP: one more person on rising';
  if (verdict.standNotCleared.length > 0) {
    const unwell = verdict.symptoms.length > 0 || verdict.standingLow !== null;
    return {
      ...drop,
      stage: 'not-cleared',
      sitMinutes: null,
      tellPrescriber: fell || unwell,
      words: [
        ...(unwell ? ['Make safe: sit or lie the person down. No further standing now'] : []),
        ...verdict.standNotCleared.map((why) => `Standing is not cleared: ${why}`),
        ...(unwell ? [] : ['Take the whole set again, and ask about symptoms, before standing counts']),
        ...(fell ? [withCaution] : []),
        ...(fell || unwell ? ['Tell the prescriber'] : []),
      ],
    };
  }
  if (fell && !retried(verdict, input)) {
    const minutes = input.rules.retrySitMinutes.value;
    return {
      ...drop,
      stage: 'retry-once',
      sitMinutes: minutes,
      tellPrescriber: true,
      words: [
        `A fall without symptoms: sit for ${minutes} min, then stand and measure once more`,
        `Until then standing counts with the caution. ${withCaution}`,
        'Tell the prescriber',
      ],
    };
  }
  if (fell) {
    return {
      ...drop,
      stage: 'cleared-with-caution',
      sitMinutes: null,
      tellPrescriber: true,
      words: [`Tried once more after sitting. ${withCaution}`, 'Tell the prescriber'],
    };
  }
  const judged = verdict.fall === 'no';
  return {
    ...drop,
    stage: judged ? 'cleared' : 'not-judged',
    sitMinutes: null,
    tellPrescriber: false,
    words: judged ? [] : ['No pressure was taken at rest and standing: nothing is said for or against it'],
  };
}
