/**
 * Our own table for the edge of the bed, standing and walking. No published source: to be signed by
 * the ward before use.
 */
import type { Table } from './table.ts';

const source = 'no published source, to be signed by the ward';

export interface EdgeCase {
  /** How the person was last seen to come to the edge. */
  readonly comes: 'alone' | 'helped' | 'lifted';
}
export const EDGE: Table<EdgeCase> = {
  rule: 'ours/edge-of-bed',
  source,
  rows: [
    {
      when: { comes: 'alone' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'comes to the edge alone: stand by',
    },
    {
      when: { comes: 'helped' },
      options: [{ people: ['two', 'two'], aid: 'slide-sheet' }],
      says: 'comes to the edge with help: slide sheet, two',
    },
    {
      when: { comes: 'lifted' },
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'does not come to the edge: sling lift, two',
    },
  ],
};

export interface StandCase {
  readonly seen: 'free' | 'held' | 'not';
}
export const STAND: Table<StandCase> = {
  rule: 'ours/stand',
  source,
  rows: [
    {
      when: { seen: 'free' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'seen to stand free and steady: stand by',
    },
    {
      when: { seen: 'held' },
      options: [{ people: ['two', 'two'], aid: 'standing-aid' }],
      says: 'not seen to stand free and steady: standing aid, two',
    },
    {
      when: { seen: 'not' },
      options: [{ people: ['two', 'two'], aid: 'sling-lift', item: 'lift if the person must be moved' }],
      says: "standing not cleared: only in a staged check or a therapist's session",
    },
  ],
};

export interface WalkCase {
  readonly seen: 'free-alone' | 'free-with-someone' | 'held' | 'not';
}
export const WALK: Table<WalkCase> = {
  rule: 'ours/walk',
  source,
  rows: [
    {
      when: { seen: 'free-alone' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'walked free with nobody helping: stand by',
    },
    {
      when: { seen: 'free-with-someone' },
      options: [{ people: ['one', 'one'], aid: 'none' }],
      says: 'walked free with someone helping: one',
    },
    {
      when: { seen: 'held' },
      options: [{ people: ['two', 'two'], aid: 'none', item: 'chair following' }],
      says: 'walked held safe: two with a chair following',
    },
    {
      when: { seen: 'not' },
      options: [{ people: ['two', 'two'], aid: 'sling-lift', item: 'lift if the person must be moved' }],
      says: "walking not cleared: only in a therapist's session",
    },
  ],
};
