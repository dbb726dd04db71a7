/** May we start: what the first stage of the last check found, under the default protocol and under a ward's own. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { ask, checked, pressure, said, taken, well } from './may-start-now.testkit.ts';
import { at } from './told-start.testkit.ts';

describe('the stage "may we start" at the last check', () => {
  const finding = (...parts: string[]) => {
    const failed = check('clear', 2, { clear: { outcome: 'not-met' } }, { readings: [] });
    const payload = structuredClone(failed.payload) as {
      stages: { findings: { part: string; result: string }[] }[];
    };
    for (const f of payload.stages[0]!.findings) f.result = parts.includes(f.part) ? 'not-met' : 'met';
    return { ...failed, id: 'asleep', payload };
  };
  it('says each part that was not met, in the words of the protocol, until a later check meets it', () => {
    const told = [checked(), finding('wakes-to-voice', 'no-new-chest-pain')];
    expect(ask(3, told).reasons).toEqual(
      ['Wakes to voice and stays awake', 'No new chest pain'].map((words) => ({
        word: 'not-now',
        words: `${words}: not met at the last check`,
        limit: null,
        source: 'common practice, no source',
        takenAt: hours(2),
        facts: ['asleep'],
      })),
    );
    expect(ask(5, [...told, checked(4)]).word).toBe('may-start');
  });
  it('not met without a finding is said by the name of the stage', () => {
    const none = finding();
    (none.payload as { stages: { findings: unknown[] }[] }).stages[0]!.findings = [];
    expect(said(3, [checked(), none])).toEqual(['not-now: clear: not met at the last check']);
  });
  it('not met only for a reading is left to the readings', () => {
    const told = [checked(1, [...well(1), pressure(85, 1.1)]), taken(2, [pressure(120, 2)])];
    expect(ask(3, told).word).toBe('may-start');
  });
  it('comes from an own protocol of the ward in its own words', () => {
    const document = {
      id: 'birch',
      version: 1,
      name: 'Birch',
      source: 'ours',
      owner: 'ward',
      reviewBy: '2027-01-01',
      lowestWord: 'Low',
      stages: [
        {
          id: 'gate',
          word: null,
          says: 'Ready?',
          shows: 'clear',
          parts: [
            { id: 'calm', says: 'Is calm', sided: false, gate: 'required', source: 'our own source' },
            { id: 'hand', says: 'Lifts a hand', sided: true, gate: 'one-side', source: 'ours' },
            { id: 'tells', says: 'Tells a story', sided: false, gate: 'informs', source: 'ours' },
          ],
          securedBy: [],
          firstTimeSecured: false,
          symptomStops: true,
          oneLegRoute: false,
          source: 'the stage of ours',
        },
        {
          id: 'up',
          word: 'Up',
          says: 'Up',
          shows: 'upright',
          parts: [{ id: 'sits', says: 'Sits', sided: false, gate: 'required', source: 'ours' }],
          securedBy: [],
          firstTimeSecured: false,
          symptomStops: false,
          oneLegRoute: false,
          source: 'ours',
        },
      ],
      pressureSet: { lying: true, standingMinutes: [1], within: 0.5, source: 'ours' },
      toldApart: { exactMinutes: 1, aboutMinutes: 15, source: 'ours' },
    };
    const own = { ...ward, protocols: [{ id: 'birch', version: 1, document }] } as never;
    const gate = (findings: object[], extra: object = {}) => {
      const told: Told = {
        type: 'assessment-recorded',
        at: 2,
        payload: {
          protocol: { id: 'birch', version: 1 },
          depth: 'full',
          stages: [
            {
              stage: 'gate',
              outcome: 'met',
              how: 'free',
              people: 0,
              findings,
              symptom: false,
              at: at(2),
              ...extra,
            },
          ],
          readings: well(2),
          cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
          wears: [],
          answers: [],
          firstTimeUp: false,
        },
      };
      return evaluateStay(stayOf(told), own, calendar, hours(3)).view.mayStart!.reasons.map((r) => [
        r.words,
        r.source,
      ]);
    };
    const met = { result: 'met' };
    const not = { result: 'not-met' };
    expect(gate([{ part: 'calm', ...met }])).toEqual([]);
    expect(gate([{ part: 'calm', ...not }])).toEqual([
      ['Is calm: not met at the last check', 'our own source'],
    ]);
    const hands = (left: object, right: object) => [
      { part: 'hand', side: 'left', ...left },
      { part: 'hand', side: 'right', ...right },
    ];
    expect(gate([{ part: 'calm', ...met }, ...hands(met, not)])).toEqual([]);
    expect(gate([{ part: 'calm', ...met }, ...hands(not, not)])).toEqual([
      ['Lifts a hand: not met at the last check', 'ours'],
    ]);
    expect(
      gate([
        { part: 'calm', ...met },
        { part: 'tells', ...not },
      ]),
    ).toEqual([]);
    expect(gate([{ part: 'calm', ...met }], { symptom: true })).toEqual([
      ['A symptom at the start of the last check', 'the stage of ours'],
    ]);
  });
  it('asks first after a check that cannot be read and found less', () => {
    const unread = check(
      'clear',
      2,
      { clear: { outcome: 'not-met' } },
      { protocol: { id: 'nobodys', version: 9 } },
    );
    expect(said(3, [checked(), unread])).toEqual([
      'ask-first: Protocol nobodys version 9 is not known here: it has a stage not met, so nothing stays cleared',
    ]);
  });
});
