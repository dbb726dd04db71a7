/** What the sheet of a walking measure offers, in the language of the screen. */
import { walkingSupport } from '@footboard/shared/capabilities/assessments/values';
import { SUPPORT } from '../../board/words.ts';
import { say } from './words.ts';

export const kinds = [
  {
    value: 'gait-speed',
    get says() {
      return say('walking-speed');
    },
  },
  {
    value: 'six-minute-walk',
    get says() {
      return say('six-minute-walk');
    },
  },
  {
    value: 'chair-stands',
    get says() {
      return say('chair-stands-in-30-s');
    },
  },
  {
    value: 'five-rises',
    get says() {
      return say('five-rises');
    },
  },
  {
    value: 'up-and-go',
    get says() {
      return say('up-and-go-3-m');
    },
  },
] as const;
export const HOW: Readonly<Record<(typeof kinds)[number]['value'], string>> = {
  get 'gait-speed'() {
    return say('time-a-straight-course-at-an');
  },
  get 'six-minute-walk'() {
    return say('as-far-as-the-person-can');
  },
  get 'chair-stands'() {
    return say('full-stands-in-30-s-arms');
  },
  get 'five-rises'() {
    return say('time-to-stand-up-and-sit');
  },
  get 'up-and-go'() {
    return say('from-the-chair-3-m-out');
  },
};
export const courses = [4, 6, 10].map((value) => ({ value, says: `${value} m` }));
export const paces = [
  {
    value: 'usual',
    get says() {
      return say('usual-pace');
    },
  },
  {
    value: 'fast',
    get says() {
      return say('as-fast-as-is-safe');
    },
  },
] as const;
export const starts = [
  {
    value: 'walking',
    get says() {
      return say('already-walking');
    },
  },
  {
    value: 'from-standing',
    get says() {
      return say('from-standing-on-a-word');
    },
  },
] as const;
export const turns = [
  {
    value: false,
    get says() {
      return say('straight');
    },
  },
  {
    value: true,
    get says() {
      return say('with-a-turn');
    },
  },
];
export const arms = [
  {
    value: false,
    get says() {
      return say('without-arms');
    },
  },
  {
    value: true,
    get says() {
      return say('arms-were-used');
    },
  },
];
export const supports = walkingSupport.options.map((value) => ({
  value,
  get says() {
    return SUPPORT[value].charAt(0).toUpperCase() + SUPPORT[value].slice(1);
  },
}));
export const sexes = [
  {
    value: 'female',
    get says() {
      return say('woman');
    },
  },
  {
    value: 'male',
    get says() {
      return say('man');
    },
  },
] as const;
export const agos = [
  {
    value: 0,
    get says() {
      return say('just-now');
    },
  },
  {
    value: 30,
    get says() {
      return say('about-30-min-ago');
    },
  },
  {
    value: 60,
    get says() {
      return say('about-1-h-ago');
    },
  },
  {
    value: 120,
    get says() {
      return say('about-2-h-ago');
    },
  },
];
