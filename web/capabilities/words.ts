/**
 * Plain words for the codes of events and commands. A code that is missing here is shown with its
 * hyphens taken out, so that a new one is readable before anybody has worded it.
 */
const WORDS: Readonly<Record<string, string>> = {
  // people and equipment
  'on-own': 'On own',
  'stand-by': 'Stand by',
  one: '1 person',
  two: '2 people',
  'three-or-more': '3 or more people',
  none: 'no equipment',
  'walking-support': 'walking support',
  // tasks
  'in-bed': 'Turn or move up in bed',
  'edge-of-bed': 'To the edge of the bed',
  'bed-chair': 'Bed to chair',
  toilet: 'Toilet',
  lateral: 'Across to a trolley',
  stand: 'Stand',
  walk: 'Walk',
  'from-floor': 'Up from the floor',
  // activities
  'bed-exercise': 'Bed exercise',
  'back-raised': 'Back raised',
  'edge-sit': 'Sat on the edge',
  chair: 'Chair',
  'lifted-to-chair': 'Lifted to chair',
  march: 'Marched on the spot',
  stairs: 'Stairs',
  // reasons
  'said-no': 'The person said no',
  'clinically-held': 'Held for a clinical reason',
  'not-here': 'Not on the ward',
  'bad-moment': 'Bad moment',
  'no-people': 'Not enough people',
  'no-kit': 'No equipment',
  'infection-steps': 'Infection steps',
  comfort: 'Comfort first',
  'one-of-two': 'one of two people',
  'low-haemoglobin': 'low haemoglobin',
  // triggers
  arrival: 'Arrived',
  'return-from-surgery': 'Back from surgery',
  'return-from-dialysis': 'Back from dialysis',
  sedation: 'Sedative given',
  'block-on': 'Nerve block or epidural on',
  'block-off': 'Nerve block or epidural off',
  fall: 'Fall, or lowered to the floor',
  faint: 'Faint',
  seizure: 'Seizure',
  'low-glucose': 'Low glucose',
  bleed: 'Bleeding',
  transfusion: 'Transfusion',
  'new-symptom': 'New symptom',
  'new-confusion': 'New confusion',
  'order-change': 'Order changed',
  'attachment-change': 'Line or drain changed',
  'sheath-out': 'Sheath taken out',
  'suspected-clot': 'Clot suspected',
  'failed-attempt': 'An attempt failed',
  'step-down-from-intensive-care': 'Back from intensive care',
  'asked-to-look-again': 'Look again before the next move',
  'board-wrong': 'The board is wrong',
  'early-warning-rise': 'Early-warning score raised',
  // hold scopes
  'out-of-bed': 'Getting out of bed',
  walking: 'Walking',
  standing: 'Standing',
  'raising-the-back': 'Raising the back',
  'all-including-turning': 'Everything, turning too',
  // attachments
  'iv-line': 'Drip or line',
  'urinary-catheter': 'Urinary catheter',
  'chest-drain': 'Chest drain',
  'wound-drain': 'Wound drain',
  'feeding-tube': 'Feeding tube',
  'oxygen-wall': 'Oxygen, from the wall',
  'oxygen-cylinder': 'Oxygen, cylinder',
  monitor: 'Monitor',
  'anyone-trained': 'anyone trained',
  // going and coming
  'home-visit': 'Home visit',
  'intensive-care': 'Intensive care',
  emergency: 'Emergency department',
  'charge-nurse': 'charge nurse',
  'handling-coordinator': 'handling coordinator',
  // trust
  current: 'Current',
  're-check': 'Re-check',
  'not-known': 'Not known',
  // findings
  met: 'Met',
  'not-met': 'Not met',
  'not-tested': 'Not tested',
  'not-applicable': 'Does not apply',
  'stopped-before': 'stopped before this',
  'no-second-person': 'no second person',
  'no-equipment': 'no equipment',
  'limb-absent': 'limb absent',
  'full-with-pressure': 'Full, with pressure set',
  full: 'Full',
  confirm: 'Confirm',
};

export const plain = (code: string): string => code.replaceAll('-', ' ');
/** The words for a code, as they stand at the start of a line. */
export const say = (code: string): string => WORDS[code] ?? sentence(plain(code));
/** The words for a code inside a sentence. */
export const sayInside = (code: string): string => {
  return inside(WORDS[code] ?? plain(code));
};
/** Words as the beginning of a line. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** The same inside a sentence. */
export const inside = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
