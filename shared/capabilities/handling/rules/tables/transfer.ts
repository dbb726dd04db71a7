/** Bed to chair, chair to toilet, and from a chair to a trolley. */
import type { Table } from './table.ts';

export interface TransferCase {
  readonly bears: 'full' | 'partial' | 'none';
  readonly cooperative: boolean;
  /** Both arms can push. */
  readonly arms: boolean;
}

/** OSHA 3182 figure 1, read in two agreeing text restatements; check the printed figure once by eye. */
export const TRANSFER: Table<TransferCase> = {
  rule: 'osha-3182/figure-1',
  source: 'OSHA 3182 (2003, rev. 2009), figure 1',
  rows: [
    {
      when: { bears: 'full' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'bears full weight: stand by for safety',
    },
    {
      when: { bears: 'partial', cooperative: true },
      options: [
        { people: ['one', 'one'], aid: 'belt', item: 'belt, stand and turn' },
        { people: ['one', 'one'], aid: 'standing-aid', item: 'powered standing aid' },
      ],
      says: 'bears part of the weight and cooperates: standing aid, or belt with stand and turn',
    },
    {
      when: { bears: 'partial', cooperative: false },
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'bears part of the weight and does not cooperate: sling lift',
    },
    {
      when: { bears: 'none', cooperative: true, arms: true },
      options: [{ people: ['one', 'one'], aid: 'seated-transfer-aid', item: 'belt until proficient alone' }],
      says: 'bears no weight, cooperates, both arms push: seated transfer aid',
    },
    {
      when: { bears: 'none' },
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'bears no weight: sling lift',
    },
  ],
};

/** VA bariatric tables (rev. 2007), from the ward's bariatric weight upwards. */
export const BARIATRIC_TRANSFER: Table<TransferCase> = {
  rule: 'va-bariatric/transfer',
  source: 'VA bariatric tables (rev. 2007), restated',
  rows: [
    {
      when: { bears: 'full' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'bears full weight: stand by',
    },
    {
      when: { cooperative: false },
      options: [{ people: ['three-or-more', 'three-or-more'], aid: 'bariatric-lift' }],
      says: 'does not fully cooperate: bariatric lift, at least three',
    },
    {
      when: { cooperative: true, arms: true },
      options: [
        {
          people: ['two', 'two'],
          aid: 'seated-transfer-aid',
          item: 'seated transfer aid rated for the weight',
        },
      ],
      says: 'cooperates and both arms push: rated seated transfer aid, at least two',
    },
    {
      when: { cooperative: true, arms: false },
      options: [
        { people: ['two', 'two'], aid: 'standing-aid', item: 'standing aid rated for the weight' },
        { people: ['two', 'three-or-more'], aid: 'bariatric-lift' },
      ],
      says: 'cooperates without arm strength: rated standing aid, or bariatric lift',
    },
  ],
};

/** OSHA 3182 figure 3, from memory: shown beside the lateral plan as what applies from a chair. */
export const CHAIR_TO_TROLLEY: Table<Omit<TransferCase, 'arms'>> = {
  rule: 'osha-3182/figure-3',
  source: 'OSHA 3182 (2003, rev. 2009), figure 3, from memory',
  rows: [
    {
      when: { bears: 'full' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none', item: 'a step if the trolley is high' }],
      says: 'bears full weight: stand by, if the height of the trolley allows',
    },
    {
      when: { bears: 'partial', cooperative: true },
      options: [{ people: ['one', 'two'], aid: 'standing-aid' }],
      says: 'bears part of the weight and cooperates: standing aid, two',
    },
    {
      when: {},
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'sling lift, three people if very heavy',
    },
  ],
};
