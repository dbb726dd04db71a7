/** How far the tables of the walking measures, and what is said beside them, were read. */
import { readIn, type ReadIn } from '../../../../kernel/read-in.ts';

export const MEASURES_READ = {
  'walking-speed': readIn(
    'restated',
    'two decimals read in a restatement; the third is from memory and not used',
  ),
  'chair-stands': readIn('restated', 'read in two agreeing restatements, not in the leaflet or the paper'),
  'six-minute-walk': readIn('confirmed', "the equations, read in the paper's own abstract"),
  'six-minute-walk: lower limit': readIn('from memory', 'how far below the reference the limit lies'),
  'walking bands: set with people after a stroke': readIn(
    'from memory',
    'the warning beside every walking speed',
  ),
} as const satisfies Readonly<Record<string, ReadIn>>;
