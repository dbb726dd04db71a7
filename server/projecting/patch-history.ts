import type { Patch } from '@footboard/shared/wire/messages';

const RECENT = 256;

/** True when each patch begins where the one before ended, from `from` to `to` or beyond. Pure. */
function linked(patches: readonly Patch[], from: number, to: number): boolean {
  let at = from;
  for (const patch of patches) {
    if (patch.from !== at) return false;
    at = patch.to;
  }
  return at >= to;
}

/** The linked patches that brought the board where it stands: the last ones at hand, older ones stored. */
export class PatchHistory {
  #recent: Patch[] = [];

  add(patch: Patch): void {
    this.#recent.push(patch);
    if (this.#recent.length > RECENT) this.#recent.shift();
  }

  /**
   * Patches from `feed` to where the board stands (`now`), or null when history does not reach back.
   * @param stored reads the patches that were committed after a feed number.
   */
  async since(
    feed: number,
    now: number,
    stored: (feed: number) => Promise<readonly Patch[]>,
  ): Promise<readonly Patch[] | null> {
    if (feed > now) return null;
    if (feed === now) return [];
    const at = this.#recent.findIndex((patch) => patch.from === feed);
    if (at >= 0) return this.#recent.slice(at);
    const older = await stored(feed);
    return linked(older, feed, now) ? older : null;
  }
}
