/** The two signatures that an entry can wait for. */
import { confirmEntry, cosignEntry } from '@footboard/shared/capabilities/corrections/commands';

export type Signature = 'confirm' | 'cosign';

export const SIGNATURE = {
  confirm: {
    command: confirmEntry,
    title: 'Confirm your entry',
    about:
      'It was recorded under your name before you had signed in. Confirmed, it counts as yours in your role. If it is not yours, or not right, withdraw or correct it instead.',
    sends: 'It is mine, as it stands',
    says: 'Own entry confirmed',
  },
  cosign: {
    command: cosignEntry,
    title: 'Second signature',
    about:
      'It counts already. Sign only what you saw, or can answer for; what is not right is corrected or withdrawn.',
    sends: 'I answer for it too',
    says: 'Second signature given',
  },
} as const;
