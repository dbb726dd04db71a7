/** Moving up in a chair. */
import type { Table } from './table.ts';

export interface InChairCase {
  readonly assists: 'fully' | 'partly' | 'not';
  /** Both arms can push. */
  readonly arms: boolean;
  /** The back of the chair goes down. */
  readonly reclines: boolean;
  readonly cooperative: boolean;
}

/**
 * OSHA 3182 figure 5. "Two or more" for those who neither assist nor cooperate is read as an open
 * range, as in figure 4; later VA guidance asks for three or more when the person does not cooperate.
 */
export const IN_CHAIR: Table<InChairCase> = {
  rule: 'osha-3182/figure-5',
  source: 'OSHA 3182 (2003, rev. 2009), figure 5',
  rows: [
    {
      when: { assists: 'fully' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'assists fully: stand by',
    },
    {
      when: { assists: 'partly', arms: true },
      options: [{ people: ['one', 'one'], aid: 'none' }],
      says: 'assists partly, both arms push: the person lifts, one helper pushes the knees back',
    },
    {
      when: { assists: 'partly', arms: false },
      options: [{ people: ['two', 'two'], aid: 'seated-transfer-aid' }],
      says: 'assists partly, arms do not push: two with a seated transfer aid',
    },
    {
      when: { assists: 'not', reclines: true },
      options: [{ people: ['two', 'two'], aid: 'slide-sheet' }],
      says: 'not able to assist, the chair reclines: back down, friction-reducing sheet, two',
    },
    {
      when: { assists: 'not', reclines: false, cooperative: true },
      options: [
        { people: ['one', 'two'], aid: 'sling-lift' },
        { people: ['one', 'two'], aid: 'standing-aid', item: 'standing aid without power' },
      ],
      says: 'not able to assist, cooperates: sling lift or standing aid without power, one to two',
    },
    {
      when: { assists: 'not', reclines: false, cooperative: false },
      options: [{ people: ['two', 'three-or-more'], aid: 'sling-lift' }],
      says: 'not able to assist, does not cooperate: sling lift, two or more',
    },
  ],
};

/** How one helper does it, where the figure leaves it to one. */
export const KNEES_CAUTION = 'The person lifts with the arms; the helper pushes the knees back';
/** The plan does not know the chair: it takes the row of one that does not recline and says the other. */
export const RECLINES_CAUTION =
  'For a chair that does not recline. If it does, ask: back down, friction-reducing sheet, two people (figure 5)';
