/**
 * Signatures under an entry. Under a name that nobody had checked, an entry may make it safer and no
 * more, whatever role is written beside it; confirmed by that same person, it counts as theirs. A
 * second signature answers for an entry and changes no rule.
 */
import { isQualified, type Author } from '../../../kernel/author.ts';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import { entryConfirmed, entryCosigned } from '../events.ts';

/** Who an entry is taken to be by. */
export const heardAs = ({ author, source }: LoggedEvent): Author =>
  source.unconfirmed && isQualified(author) ? { staff: author.staff, role: 'aide' } : author;

export const isConfirmation = (event: LoggedEvent): boolean => event.type === entryConfirmed.name;
const isCosignature = (event: LoggedEvent): boolean => event.type === entryCosigned.name;
export const isSignature = (event: LoggedEvent): boolean => isConfirmation(event) || isCosignature(event);

/** Whether a signature is one that this entry was waiting for. */
export const signs = (signature: LoggedEvent, entry: LoggedEvent): boolean => {
  if (signature.source.unconfirmed) return false;
  const own = signature.author.staff === entry.author.staff;
  return isConfirmation(signature)
    ? entry.source.unconfirmed === true && own
    : entry.source.cosign !== undefined && !own && isQualified(signature.author);
};
