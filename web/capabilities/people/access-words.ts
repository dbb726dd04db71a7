/** Words for what the pages of access show. A code that is missing here is shown with its hyphens taken out. */
import { sentence } from '../words.ts';
import { say } from './words.ts';

const LOOKED: Readonly<Record<string, string>> = {
  get 'read-stay'() {
    return say('read-a-stay');
  },
  get 'read-board-whole'() {
    return say('read-the-whole-board');
  },
  get 'export-stay'() {
    return say('took-out-a-stay-as-a');
  },
  get 'erase-stay'() {
    return say('erased-the-personal-data-of-a');
  },
  get 'erase-staff'() {
    return say('erased-the-name-of-somebody-who');
  },
  get 'break-glass'() {
    return say('opened-the-ward-for-a-reason');
  },
  get 'review-glass'() {
    return say('reviewed-an-opening');
  },
  get 'read-access-log'() {
    return say('read-this-log');
  },
  get 'read-concerns'() {
    return say('read-near-misses-and-strain');
  },
  get 'sign-in'() {
    return say('signed-in');
  },
  get 'sign-in-refused'() {
    return say('sign-in-refused');
  },
  get 'code-refused'() {
    return say('code-refused-on-a-shared-device');
  },
  get 'device-approved'() {
    return say('approved-a-device');
  },
  get 'device-revoked'() {
    return say('took-a-device-off-the-ward');
  },
};
export const lookedWords = (what: string): string => LOOKED[what] ?? sentence(what.replaceAll('-', ' '));

export const ACCOUNT_STATE = {
  get invited() {
    return say('a-link-is-out');
  },
  get ready() {
    return say('can-sign-in');
  },
  get outside() {
    return say('signs-in-by-single-sign-on');
  },
  get none() {
    return say('cannot-sign-in-yet');
  },
} as const;

export const DEVICE_KIND = {
  get wall() {
    return say('wall');
  },
  get shared() {
    return say('shared-device');
  },
} as const;
export const LEVEL = {
  get whole() {
    return say('the-whole-board');
  },
  get initials() {
    return say('beds-with-initials');
  },
  get 'bed-only'() {
    return say('beds-no-initials');
  },
  get visitors() {
    return say('as-visitors-may-see-it');
  },
} as const;

export const GLASS_REASON = {
  get emergency() {
    return say('emergency');
  },
  get 'cross-cover'() {
    return say('covering-for-this-ward');
  },
  get 'transfer-in'() {
    return say('coming-to-my-ward');
  },
  get other() {
    return say('another-reason');
  },
} as const;

/** How far a screen is behind its ward: the ward's feed number and the one it last painted. */
export function paintedWords(feed: number, painted: number | null): string {
  if (painted === null) return say('has-painted-nothing-yet');
  const behind = feed - painted;
  if (behind <= 0) return say('shows-the-newest');
  return say('changes-behind', { n: behind }, behind);
}
