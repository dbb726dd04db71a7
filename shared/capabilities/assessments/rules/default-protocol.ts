/**
 * Footboard's default protocol: adults on general wards, built from public measures. To be signed by
 * the ward's clinician before use; local policy and the clinician at the bedside come first.
 */
import type { Protocol, ProtocolPart, ProtocolStage } from './protocol-document.ts';

const practice = 'common practice, no source';
const strength =
  'Medical Research Council muscle grades (from memory): 3 moves against gravity, 4 against some resistance';

const part = (id: string, says: string, extra: Partial<ProtocolPart> = {}): ProtocolPart => ({
  id,
  says,
  sided: false,
  gate: 'required',
  source: practice,
  ...extra,
});

const stage = (
  s: Pick<ProtocolStage, 'id' | 'word' | 'says' | 'parts'> & Partial<ProtocolStage>,
): ProtocolStage => ({
  shows: s.id as NonNullable<ProtocolStage['shows']>,
  securedBy: [],
  firstTimeSecured: false,
  symptomStops: false,
  oneLegRoute: false,
  source: practice,
  ...s,
});

export const DEFAULT_PROTOCOL: Protocol = {
  id: 'footboard-default',
  version: 1,
  name: 'Footboard staged check for adults on general wards',
  source: 'built from public measures; the order of stages is common practice, no source',
  owner: 'ward clinician (to sign)',
  reviewBy: '2027-05-31',
  lowestWord: 'Supported',
  stages: [
    stage({
      id: 'clear',
      word: null,
      says: 'May we start? Orders, holds, signs and alertness; whether the person waits for help and follows instructions, asked in their language or by gesture.',
      parts: [
        part('orders-allow', 'Orders and holds allow it'),
        part('signs-in-range', 'Signs are within the ward limits'),
        part('wakes-to-voice', 'Wakes to voice and stays awake'),
        part('no-new-chest-pain', 'No new chest pain'),
        part('no-new-confusion', 'No new confusion'),
        part('no-active-bleeding', 'No active bleeding'),
      ],
      source:
        'Hodgson et al., Crit Care 2014;18:658 and the ward cut-offs tabulated in Crit Care Res Pract 2020 ID 7840743, as far as they apply to wards',
    }),
    stage({
      id: 'upright',
      word: 'Upright',
      says: 'Back raised in steps, then 3 minutes. Meanwhile, lying and on each side: heel, sole and grip.',
      parts: [
        part('back-raised', 'Sits with the back raised for 3 minutes'),
        part('heel-held', 'Heel held 5 cm off the mattress for 5 seconds', {
          sided: true,
          shows: 'leg-against-gravity',
          source: strength,
          gate: 'one-side',
        }),
        part('sole-pushes', "Sole pushes down on the examiner's hand", {
          sided: true,
          shows: 'leg-against-resistance',
          source: strength,
          gate: 'informs',
        }),
        part('grip', "Grips the examiner's hand and lets go when asked", {
          sided: true,
          shows: 'grip',
          gate: 'informs',
        }),
        part('arm-pushes', 'Pushes down hard on the mattress with the arm', {
          sided: true,
          shows: 'arm-pushes',
          gate: 'informs',
        }),
      ],
      securedBy: ['raised-bed'],
    }),
    stage({
      id: 'edge',
      word: 'Edge',
      says: 'Comes to the side of the bed, sits 30 seconds hands free, looks behind each way, picks up a cloth beside each hip.',
      parts: [
        part('comes-to-edge', 'Comes to the side of the bed', { shows: 'comes-to-edge' }),
        part('sits-hands-free', 'Sits 30 seconds, hands free', { shows: 'sits-unheld' }),
        part('looks-behind', 'Looks behind over the shoulder', { sided: true }),
        part('picks-up-cloth', 'Picks up a cloth beside the hip', { sided: true }),
      ],
      securedBy: ['sling', 'two-people'],
      symptomStops: true,
    }),
    stage({
      id: 'stand',
      word: 'Stand',
      says: 'Sit to stand, then weight through both legs for 1 minute.',
      parts: [
        part('rises', 'Rises from sitting'),
        part('leg-bears', 'Leg bears weight for 1 minute', { sided: true, shows: 'leg-bears' }),
      ],
      securedBy: ['sling', 'standing-aid', 'two-people'],
      firstTimeSecured: true,
      symptomStops: true,
      oneLegRoute: true,
    }),
    stage({
      id: 'turn',
      word: 'Turn',
      says: 'Quarter turn and two side-steps to a chair, controlled sit.',
      parts: [
        part('quarter-turn', 'Quarter turn on the feet'),
        part('side-steps', 'Two side-steps to a chair'),
        part('controlled-sit', 'Sits down with control'),
      ],
      securedBy: ['sling', 'two-people'],
      firstTimeSecured: true,
      symptomStops: true,
    }),
    stage({
      id: 'walk',
      word: 'Walk',
      says: 'Walks 3 m, turns, walks back, controlled sit. A stick or frame is still walking.',
      parts: [
        part('walks-out', 'Walks 3 m'),
        part('turns-round', 'Turns round without holding on to furniture'),
        part('walks-back', 'Walks back and sits down with control'),
      ],
      securedBy: ['sling', 'two-people'],
      symptomStops: true,
    }),
  ],
  pressureSet: {
    lying: true,
    standingMinutes: [1, 3],
    within: 0.5,
    source: 'CDC, Measuring Orthostatic Blood Pressure (2017): lying, then 1 and 3 minutes standing',
  },
  toldApart: { exactMinutes: 1, aboutMinutes: 15, source: practice },
};
