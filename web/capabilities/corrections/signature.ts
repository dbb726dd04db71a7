/** The two signatures that an entry can wait for, in the language of the screen. */
import { confirmEntry, cosignEntry } from '@footboard/shared/capabilities/corrections/commands';
import { following } from '../../i18n/following.ts';
import { sayChange } from './words.ts';

export type Signature = 'confirm' | 'cosign';

const worded = (of: Signature) =>
  following(['title', 'about', 'sends', 'says'], (part) => sayChange(`${of}-${part}`));
const withCommand = <Command>(command: Command, of: Signature) =>
  Object.defineProperty(worded(of) as ReturnType<typeof worded> & { readonly command: Command }, 'command', {
    value: command,
  });

export const SIGNATURE = {
  confirm: withCommand(confirmEntry, 'confirm'),
  cosign: withCommand(cosignEntry, 'cosign'),
};
