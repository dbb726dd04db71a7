import { aidRefusals } from './aids/refusals.ts';
import { assessmentRefusals } from './assessments/refusals.ts';
import { correctionRefusals } from './corrections/refusals.ts';
import { dayplanRefusals } from './dayplan/refusals.ts';
import { handlingRefusals } from './handling/refusals.ts';
import { measureRefusals } from './measures/refusals.ts';
import { orderRefusals } from './orders/refusals.ts';
import { peopleRefusals } from './people/refusals.ts';
import { planningRefusals } from './planning/refusals.ts';
import { sessionRefusals } from './sessions/refusals.ts';
import { stayRefusals } from './stays/refusals.ts';
import { wardRefusals } from './wards/refusals.ts';

/** Every "no" a rule may say, code -> title. Stable: a stored outcome and a screen's wording name the code. */
export const REFUSALS = {
  ...wardRefusals,
  ...peopleRefusals,
  ...stayRefusals,
  ...assessmentRefusals,
  ...orderRefusals,
  ...handlingRefusals,
  ...sessionRefusals,
  ...measureRefusals,
  ...dayplanRefusals,
  ...planningRefusals,
  ...aidRefusals,
  ...correctionRefusals,
} as const;
export type RefusalCode = keyof typeof REFUSALS;
