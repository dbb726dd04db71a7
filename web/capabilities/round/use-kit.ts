import { computed, shallowRef, watch } from 'vue';
import {
  fitPage,
  itemsPage,
  type FitPage,
  type ItemLine,
  type ItemsPage,
} from '@footboard/shared/wire/items';
import { getPage } from '../../asking/get-page.ts';

/** One piece that goes along, as it is known now. */
export interface KitPiece {
  readonly line: ItemLine;
  /** Of the pieces that fit, this set can be used now. */
  readonly usableNow: boolean;
}
export type Kit =
  | { readonly is: 'asking' }
  /** The list could not be read: nothing is said about the equipment. */
  | { readonly is: 'not-read' }
  /** The task asks for nothing that a ward keeps on its list. */
  | { readonly is: 'nothing' }
  | { readonly is: 'none-fits'; readonly warnings: readonly string[] }
  | {
      readonly is: 'set';
      readonly main: KitPiece;
      readonly sling: KitPiece | null;
      readonly warnings: readonly string[];
    };

/** What of the ward's equipment one person's task takes: the first set that fits, usable ones first. */
export function useKit(
  of: () => { ward: string; stay: string; task: string | null; version: number; aid: string | null },
) {
  const fit = shallowRef<FitPage | null>(null);
  const items = shallowRef<ItemsPage | null>(null);
  const failed = shallowRef(false);

  async function ask(): Promise<void> {
    const { ward, aid, stay } = of();
    if (aid === null || aid === 'none') return;
    const [a, b] = await Promise.all([
      getPage(`/api/wards/${ward}/fit`, fitPage),
      getPage(`/api/wards/${ward}/items`, itemsPage),
    ]);
    if (of().stay !== stay) return;
    failed.value = !a.ok || !b.ok;
    if (a.ok) fit.value = a.page;
    if (b.ok) items.value = b.page;
  }
  watch(
    () => Object.values(of()).join(' '),
    () => void ask(),
    { immediate: true },
  );

  const kit = computed((): Kit => {
    if (failed.value) return { is: 'not-read' };
    if (!fit.value || !items.value) return { is: 'asking' };
    const { stay, task } = of();
    const found = fit.value.stays.find((s) => s.stay === stay)?.tasks.find((t) => t.task === task);
    if (!found) return { is: 'nothing' };
    const [set] = found.sets;
    const piece = (id: string | null): KitPiece | null => {
      const line = items.value!.items.find(({ item }) => item === id);
      return line ? { line, usableNow: line.usable.word === 'usable' } : null;
    };
    const main = set ? piece(set.item) : null;
    if (!set || !main) return { is: 'none-fits', warnings: found.warnings };
    return { is: 'set', main, sling: piece(set.sling), warnings: found.warnings };
  });
  return { kit, ask };
}
