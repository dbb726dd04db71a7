import { policyRow } from '@footboard/shared/capabilities/people/policy/document';

/** Commands that may go out with a claimed name when no code can be checked: they only make safer. */
export const mayGoUnconfirmed = (command: string | undefined): boolean => {
  const row = command === undefined ? undefined : policyRow(command);
  return row?.moves === 'safer' && row.unconfirmed === 'recorded';
};
