/** How far each table of this folder was read, by the rule or the name of the table. */
import { readIn, type ReadIn } from '../../../../kernel/read-in.ts';
import type { SEGMENT_TABLES } from './segments.ts';

const figure = readIn(
  'restated',
  'read in text restatements, not in the printed figure: check the figure once by eye',
);
const bariatric = readIn('restated', 'read in a caregiver article that restates the tables');
const ours = readIn('practice', 'our own, no published source');

export const TABLES_READ: Readonly<Record<string, ReadIn>> = {
  'osha-3182/figure-1': readIn(
    'restated',
    'read in two agreeing text restatements, not in the printed figure: check the figure once by eye',
  ),
  'osha-3182/figure-2': readIn(
    'restated',
    'read in a text restatement, which places exactly 200 lb in its own way: check the printed figure once by eye',
  ),
  'osha-3182/figure-3': readIn('from memory', 'in no text that could be read'),
  'osha-3182/figure-4': figure,
  'osha-3182/figure-5': figure,
  'osha-3182/figure-6': figure,
  'va-bariatric/transfer': bariatric,
  'va-bariatric/lateral': bariatric,
  'ours/edge-of-bed': ours,
  'ours/stand': ours,
  'ours/walk': ours,
};

const sheet = readIn('restated', 'read in a university page that restates the table');
const unread = readIn('from memory', 'the paper was not read');
export const SEGMENTS_READ: Readonly<Record<keyof typeof SEGMENT_TABLES, ReadIn>> = {
  winter: sheet,
  'plagenhoef-men': sheet,
  'plagenhoef-women': sheet,
  'de-leva-men': unread,
  'de-leva-women': unread,
};
