/** The sheet that lies on the bedside page: whose entry it is, which form is on it, and whether it may be used. */
import { computed, provide, ref, shallowRef, watch } from 'vue';
import type { BedView } from '@footboard/shared/capabilities/board/view';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { StayPage } from '@footboard/shared/wire/http';
import { insteadOf, useMeStore } from '../../people/me-store.ts';
import { useWhoStore } from '../../people/who-store.ts';
import { useBoardStore } from '../../sync/board-store.ts';
import { oxygenFlowBefore } from '../assessments/oxygen-before.ts';
import { personAtTheBed } from '../entry/person-at-the-bed.ts';
import { ENTRY_CONTEXT } from '../entry/use-entry.ts';
import type { WardDocuments } from '../wards/use-ward-documents.ts';
import { SHEETS, type SheetKind, type SheetName, type SheetSubject } from './sheets.ts';
import { refusedCommand } from './sheet-commands.ts';

export interface OpenSheet {
  readonly name: SheetName;
  readonly subject: SheetSubject;
}

export function useSheet(page: {
  readonly ward: () => string;
  readonly row: () => BedView | null;
  /** The stay's page, once it is that of whoever is in the bed now. */
  readonly read: () => StayPage | null;
  readonly documents: () => WardDocuments;
  readonly recorded: (says: string, shown: boolean) => void;
}) {
  const board = useBoardStore();
  const who = useWhoStore();
  const me = useMeStore();
  const sheet = shallowRef<OpenSheet | null>(null);
  /** Grows with each sheet that is laid on the page. */
  const turn = ref(0);
  const kind = computed<SheetKind | null>(() => (sheet.value ? SHEETS[sheet.value.name] : null));

  const form = computed<Record<string, unknown>>((before) => {
    if (!sheet.value || !kind.value) return {};
    // Signed out, the board is gone from the screen: what is half written keeps what it was begun with.
    if (!board.board) return before ?? {};
    return kind.value.props(sheet.value.subject, {
      board: board.board,
      beds: board.beds,
      documents: page.documents(),
      role: who.chosen?.role ?? null,
    });
  });
  /** What to do instead, when the sheet is not for the role of whoever is here. */
  const instead = computed(() => {
    const refused =
      sheet.value && refusedCommand(sheet.value.name, (command) => me.may(command, page.ward()));
    return refused ? insteadOf(refused) : null;
  });
  const open = computed({ get: () => sheet.value !== null, set: (to) => !to && close() });
  const changed = computed(() => {
    const subject = sheet.value?.subject;
    // Signed out, nothing is known of the bed: the entry stays that of its stay.
    if (!subject?.stay || !board.board) return null;
    const person = personAtTheBed(subject.stay, subject.bed, board.beds);
    return person.same ? null : person;
  });

  /** An entry is begun for whoever is in the bed now, and stays theirs whatever happens to the bed. */
  function begin(name: SheetName): void {
    const row = page.row();
    if (!row) return;
    const read = page.read();
    turn.value += 1;
    sheet.value = {
      name,
      subject: {
        ward: page.ward(),
        bed: row.bed,
        label: row.label,
        stay: row.stay?.stay ?? null,
        view: row.stay,
        name: read?.identity?.name ?? null,
        oxygenFlowBefore: oxygenFlowBefore(read?.timeline ?? []),
      },
    };
  }
  function close(): void {
    sheet.value = null;
  }

  provide(ENTRY_CONTEXT, {
    ward: page.ward() as WardId,
    now: () => board.serverNow() ?? Date.now(),
    person: (stay) =>
      board.board ? personAtTheBed(stay, sheet.value?.subject.bed ?? '', board.beds) : { same: true },
    recorded: (accepted, says) => page.recorded(says, accepted.shown),
  });
  watch(page.ward, close);
  return { sheet, turn, kind, form, instead, open, changed, begin, close };
}
