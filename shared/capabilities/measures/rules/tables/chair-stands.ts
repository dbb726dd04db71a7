/**
 * Chair stands in 30 s: below average if FEWER than the number of the row. CDC, 30-Second Chair
 * Stand (2017), from Rikli & Jones 1999; read in two agreeing restatements, not in the leaflet itself.
 */
import { TO_SIGN, type AgeTable } from './published.ts';

export const CHAIR_STANDS: AgeTable = {
  source:
    'US Centers for Disease Control and Prevention, 30-second chair stand (2017), from Rikli & Jones 1999',
  ...TO_SIGN,
  bands: [
    { from: 60, to: 64, male: 14, female: 12 },
    { from: 65, to: 69, male: 12, female: 11 },
    { from: 70, to: 74, male: 12, female: 10 },
    { from: 75, to: 79, male: 11, female: 10 },
    { from: 80, to: 84, male: 10, female: 9 },
    { from: 85, to: 89, male: 8, female: 8 },
    { from: 90, to: 94, male: 7, female: 4 },
  ],
};
