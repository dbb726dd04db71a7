import type { RoundPage } from '@footboard/shared/wire/round';

/**
 * Who stands elsewhere than on the list before, by stay: the place they had (from 1), or null for who was
 * not on it. Nobody moves only because somebody above them left the list.
 */
export function movedOf(before: RoundPage | null, now: RoundPage | null): ReadonlyMap<string, number | null> {
  const moved = new Map<string, number | null>();
  if (!before || !now) return moved;
  const stays = new Set<string>(now.entries.map((e) => e.stay));
  const common = before.entries.map((e) => e.stay).filter((stay) => stays.has(stay));
  const listed = new Set<string>(common);
  const still = now.entries.map((e) => e.stay).filter((stay) => listed.has(stay));
  for (const { stay } of now.entries) {
    if (!listed.has(stay)) moved.set(stay, null);
    else if (common.indexOf(stay) !== still.indexOf(stay)) {
      moved.set(stay, before.entries.findIndex((e) => e.stay === stay) + 1);
    }
  }
  return moved;
}
