/** Words for what the pages of access show. A code that is missing here is shown with its hyphens taken out. */
import { sentence } from '../words.ts';

const LOOKED: Readonly<Record<string, string>> = {
  'read-stay': 'Read a stay',
  'read-board-whole': 'Read the whole board',
  'export-stay': 'Took out a stay as a file',
  'erase-stay': 'Erased the personal data of a stay',
  'erase-staff': 'Erased the name of somebody who left',
  'break-glass': 'Opened the ward for a reason',
  'review-glass': 'Reviewed an opening',
  'read-access-log': 'Read this log',
  'sign-in': 'Signed in',
  'sign-in-refused': 'Sign-in refused',
  'code-refused': 'Code refused on a shared device',
  'device-approved': 'Approved a device',
  'device-revoked': 'Took a device off the ward',
};
export const lookedWords = (what: string): string => LOOKED[what] ?? sentence(what.replaceAll('-', ' '));

export const ACCOUNT_STATE = {
  invited: 'a link is out',
  ready: 'can sign in',
  outside: 'signs in by single sign-on',
  none: 'cannot sign in yet',
} as const;

export const DEVICE_KIND = { wall: 'Wall', shared: 'Shared device' } as const;
export const LEVEL = {
  whole: 'the whole board',
  initials: 'beds with initials',
  'bed-only': 'beds, no initials',
  visitors: 'as visitors may see it',
} as const;

export const GLASS_REASON = {
  emergency: 'Emergency',
  'cross-cover': 'Covering for this ward',
  'transfer-in': 'Coming to my ward',
  other: 'Another reason',
} as const;

/** How far a screen is behind its ward: the ward's feed number and the one it last painted. */
export function paintedWords(feed: number, painted: number | null): string {
  if (painted === null) return 'has painted nothing yet';
  const behind = feed - painted;
  if (behind <= 0) return 'shows the newest';
  return `${behind} ${behind === 1 ? 'change' : 'changes'} behind`;
}
