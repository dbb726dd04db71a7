/** Initials of who lies on the ward, read from the vault and kept nowhere. */
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { stayBegun } from '@footboard/shared/capabilities/stays/events';
import type { Log } from '../../log/log.ts';
import type { Boards } from '../../projecting/board.ts';
import type { Vault } from '../../vault/vault.ts';
import { boardNow } from '../board/queries.ts';

const segmenter = new Intl.Segmenter();
const first = (word: string): string => [...segmenter.segment(word)][0]?.segment.toLocaleUpperCase() ?? '';

/** "Ana Maria Vale" -> "A.V.": the first and the last word, as a person is called and filed. */
export function initialsIn(name: string): string {
  const words = name.split(/[\s,]+/).filter((word) => /\p{L}/u.test(word));
  const ends = words.length > 1 ? [words[0]!, words.at(-1)!] : words;
  return ends.map((word) => `${first(word)}.`).join('');
}

/**
 * By stay. Whoever does not wish to be shown on walls, has no name recorded, or was erased is left out.
 */
export async function initialsOf(
  ports: { readonly boards: Boards; readonly log: Log; readonly vault: Vault },
  ward: WardId,
): Promise<Record<StayId, string>> {
  const { board } = boardNow(ports.boards, ward);
  const shown = board.beds.flatMap(({ stay }) => (stay && stay.wall !== 'nothing' ? [stay.stay] : []));
  if (shown.length === 0) return {};
  const slices = await ports.log.readStreams(
    ward,
    shown.map((stay) => streamKey('stay', stay)),
  );
  const refs = new Map<StayId, string>();
  for (const stay of shown) {
    const begun = slices.get(streamKey('stay', stay))?.events.find(({ type }) => type === stayBegun.name);
    const ref = (begun?.payload as { identity?: { ref: string } } | undefined)?.identity?.ref;
    if (ref !== undefined) refs.set(stay, ref);
  }
  if (refs.size === 0) return {};
  const opened = await ports.vault.open([...new Set(refs.values())]);
  const found: Record<StayId, string> = {};
  for (const [stay, ref] of refs) {
    const text = opened.get(ref);
    const name = text ? (JSON.parse(text) as { name?: string }).name : undefined;
    const letters = name ? initialsIn(name) : '';
    if (letters !== '') found[stay] = letters;
  }
  return found;
}
