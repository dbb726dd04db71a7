/**
 * Mean speed of healthy people at their usual pace, in m/s. Bohannon & Andrews, Physiotherapy
 * 2011;97:182-9. Two decimals were confirmed; the third is from memory, and is not used: what is
 * shown and compared is rounded to two. The row from 80 runs to 99.
 */
import { TO_SIGN, type AgeTable } from './published.ts';

export const WALKING_SPEED: AgeTable = {
  source: 'Bohannon & Andrews, Physiotherapy 2011;97:182-9',
  ...TO_SIGN,
  bands: [
    { from: 20, to: 29, male: 1.358, female: 1.341 },
    { from: 30, to: 39, male: 1.433, female: 1.337 },
    { from: 40, to: 49, male: 1.434, female: 1.39 },
    { from: 50, to: 59, male: 1.433, female: 1.313 },
    { from: 60, to: 69, male: 1.339, female: 1.241 },
    { from: 70, to: 79, male: 1.262, female: 1.132 },
    { from: 80, to: 99, male: 0.968, female: 0.943 },
  ],
};
