/**
 * How far the source of each limit was read. A source that says of itself that it is practice, from
 * memory or restated is taken at its word; every other one stands here, and a test asks for it.
 */
import { readIn, type ReadIn } from '../../../kernel/read-in.ts';

const atSource = readIn('confirmed', 'read in the source, its abstract or a review that tabulates it');
const review = readIn('restated', 'read in a review that tabulates the source');
const summary = readIn('restated', 'read as an abstract or a summary only');

/** By how the source begins. */
const SOURCES_READ: readonly (readonly [begins: string, read: ReadIn])[] = [
  ['published ward and intensive-care cut-offs, Crit Care Res Pract 2020', atSource],
  ['Hodgson et al., Crit Care 2014;18:658', atSource],
  ['Japanese consensus of 2023 as tabulated', review],
  ['Royal College of Physicians, National Early Warning Score', atSource],
  ['Freeman et al., Auton Neurosci 2011', atSource],
  ['Shaw et al., J Hypertens 2017', atSource],
  ['Jordan et al. consensus, Clin Auton Res 2022', atSource],
  ['Waters, Am J Nurs 2007', atSource],
  ['peri-operative nursing ergonomic guidance', atSource],
  ['US Centers for Disease Control and Prevention, timed up and go', atSource],
  ['Cesari et al., J Am Geriatr Soc 2005', atSource],
  ['PMC4912425', atSource],
  ['Alamgir et al., Injury 2009', summary],
  ['up three times a day', summary],
  ['spells of 20 minutes', summary],
  ['about 900 steps a day', summary],
  ['7.75 min a move', summary],
];

/** Limits whose own value was read less well than the rest of their source. */
const LIMITS_READ: Readonly<Record<string, ReadIn>> = {
  'rising.initialSystolicFall': readIn('restated', 'the initial fall, read in a restatement'),
  'rising.initialDiastolicFall': readIn('restated', 'the initial fall, read in a restatement'),
  'rising.initialWithinSeconds': readIn('restated', 'the initial fall, read in a restatement'),
  'rising.heartRateRise': readIn(
    'restated',
    'read in restatements; long bed rest excludes the diagnosis, so only the rise is shown',
  ),
  'criticalCare.endExpiratoryAbove': review,
  'criticalCare.sedationAskBelow': review,
  'criticalCare.sedationBelow': review,
  'criticalCare.sedationAskAbove': review,
  'criticalCare.sedationAbove': review,
};

interface Sourced {
  readonly source: string;
}
/** Null for a source nobody has said anything of. */
export function limitRead(path: readonly string[], { source }: Sourced): ReadIn | null {
  const own = LIMITS_READ[path.join('.')];
  if (own) return own;
  if (/from memory/.test(source)) return readIn('from memory', 'the part its source names');
  if (/practice|no published source/.test(source)) return readIn('practice', 'no source');
  if (/restated|weak copy/.test(source)) return readIn('restated', 'not read at the source');
  return SOURCES_READ.find(([begins]) => source.startsWith(begins))?.[1] ?? null;
}
