/** How far the published sets of this room were read: the early-warning score, critical care, pressure. */
import { readIn, type ReadIn } from '../../../kernel/read-in.ts';

export const SETS_READ = {
  'NEWS2: points': readIn(
    'confirmed',
    'read in a stored copy of chart 1; the columns checked against known scoring',
  ),
  'NEWS2: bands from 5, from 7 and one parameter at 3': readIn('confirmed', 'read at the source'),
  'NEWS2: band 1 to 4, every 4 to 6 hours': readIn('restated', 'read in a restatement'),
  'NEWS2: total 0, every 12 hours': readIn('from memory', 'in no text that could be read'),
  'NEWS2: cautions (age, pregnancy, scale 2, judgement)': readIn('from memory', 'in our words'),
  'Critical care: what stands against moving (bars)': readIn(
    'restated',
    'read in a review that tabulates the consensus; which of them hold in bed as well was lost in that text',
  ),
  'Critical care: confused and not following': readIn(
    'restated',
    'read in a review that tabulates the consensus',
  ),
  'Critical care: a drug for the blood pressure': readIn(
    'confirmed',
    'no dose was agreed: local policy decides',
  ),
  'Critical care: temperature with active cooling': readIn('from memory', 'in no text that could be read'),
  'Critical care: slow rhythm that needs no drug': readIn(
    'from memory',
    'asks first at the source; the limit below does',
  ),
  'Pressure set: lying, then standing': readIn('restated', 'the leaflet itself was not read'),
  'Pressure set: symptoms count as abnormal': readIn('from memory', 'in no text that could be read'),
  'Muscle grades behind the leg parts': readIn('from memory', 'Medical Research Council grades 3 and 4'),
  'Stop signs during a session': readIn(
    'restated',
    'read in a weak copy of published guidance; the rest is common practice',
  ),
} as const satisfies Readonly<Record<string, ReadIn>>;
