// One invented stay of as many facts as asked, the mix of a long stay: sessions most of all, a check or a
// confirm each shift, now and then an order, a trigger, a line, a hold. Straight as the log would give them.
const HOUR = 3_600_000;
export const FROM = Date.parse('2026-03-02T08:00:00Z');
const NURSE = { staff: 'nurse-ada', role: 'nurse' };
const AIDE = { staff: 'aide-bo', role: 'aide' };
const iso = (at) => new Date(at).toISOString();

const SIDES = ['left', 'right'];
const met = (part, sided) =>
  sided ? SIDES.map((side) => ({ part, side, result: 'met' })) : [{ part, result: 'met' }];
/** A whole check, each part with its finding. */
function check(protocol, at, full) {
  return {
    protocol: { id: protocol.id, version: protocol.version },
    depth: full ? 'full-with-pressure' : 'full',
    stages: protocol.stages.map((stage, i) => ({
      stage: stage.id,
      outcome: 'met',
      how: 'free',
      people: 0,
      findings: stage.parts.flatMap((part) => met(part.id, part.sided)),
      symptom: false,
      at: iso(at + i * 60_000),
    })),
    readings: [
      { kind: 'pressure', posture: 'lying', systolic: 128, diastolic: 78, heartRate: 72, at: iso(at) },
      { kind: 'oxygen', saturation: 96, litresPerMinute: 0, at: iso(at) },
      ...(full
        ? [1, 3].map((minute) => ({
            kind: 'pressure', posture: 'standing', minute, systolic: 121, diastolic: 76, heartRate: 80,
            at: iso(at + (4 + minute) * 60_000),
          }))
        : []),
    ],
    ...(full ? { risingSymptoms: [] } : {}),
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    wears: ['shoes'],
    walkingSupport: 'frame',
    answers: [],
    firstTimeUp: false,
  }; // prettier-ignore
}
const session = (at, n) => ({
  session: {
    outcome: n % 9 === 4 ? 'not-done' : 'done',
    ...(n % 9 === 4 ? { notDone: { group: 'said-no', example: 'tired' } } : {}),
    occasion: ['planned', 'toilet', 'meal'][n % 3],
    activities: n % 9 === 4 ? [] : n % 2 ? ['chair'] : ['stand', 'walk'],
    startedAt: iso(at),
    minutesOutOfBed: 10 + (n % 40),
    metres: 5 * (n % 9),
    effort: n % 5,
    events: [],
    left: 'chair',
    firstTimeUp: false,
  },
});

/** The events of the stay's stream, oldest first; about one every two hours. */
export function longStay(count, protocol) {
  const events = [];
  const tell = (type, payload, at, author = NURSE) => {
    const n = events.length + 1;
    events.push({
      ward: 'bench', position: n, stream: 'stay/s1', version: n, id: `e${n}`, type, payload, occurred: at,
      precision: 'exact', entered: at, enteredOffsetMinutes: 60, recorded: at + 30_000, author,
      source: { kind: 'person', device: 'phone-1' },
    }); // prettier-ignore
    return `e${n}`;
  };
  tell('stay-begun', { stay: 's1', person: 'p1', bed: 'b1', from: 'emergency' }, FROM);
  tell(
    'usual-way-recorded',
    { usualWay: { moves: 'walks', transfers: 'alone', stairs: 'yes' } },
    FROM + HOUR,
  );
  tell('weight-recorded', { weight: { kg: 74, how: 'measured' } }, FROM + HOUR);
  let lastCheck = tell('assessment-recorded', check(protocol, FROM + 2 * HOUR, true), FROM + 2 * HOUR);
  for (let n = 0; events.length < count; n++) {
    const at = FROM + (3 + n * 2) * HOUR;
    if (n % 24 === 9) tell('order-changed', { order: { about: 'activity', most: 'walk' } }, at);
    else if (n % 24 === 10 || n % 12 === 6) {
      lastCheck = tell('assessment-recorded', check(protocol, at, n % 36 === 10), at);
    } else if (n % 12 === 0) tell('plan-confirmed', { task: 'bed-chair', assessment: lastCheck }, at);
    else if (n % 40 === 17) tell('trigger-recorded', { kind: 'new-symptom' }, at, AIDE);
    else if (n % 40 === 29) {
      tell(
        'attachment-added',
        { attachment: `a${n}`, kind: 'iv-line', disconnects: 'nurse', needsOwnPerson: false },
        at,
      );
    } else tell('session-recorded', session(at, n), at, n % 2 ? AIDE : NURSE);
  }
  return events;
}
