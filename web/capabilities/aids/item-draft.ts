/** A piece of equipment as it is written on the form, and back. Pure. */
import {
  itemDescription,
  type ItemDescription,
  type ItemKind,
} from '@footboard/shared/capabilities/aids/values';

export interface ItemDraft {
  label: string;
  kind: ItemKind;
  model: string;
  powered: boolean;
  safeLoadKg: number | null;
  barLoadKg: number | null;
  attachment: ItemDescription['attachment'];
  covers: string[];
  style: ItemDescription['style'];
  fitsFromKg: number | null;
  fitsToKg: number | null;
  /** One model a line. */
  worksWith: string;
  worksWithItems: ItemDescription['worksWithItems'];
  inspectionDue: string;
  lastExamined: string;
  home: string;
}

export const draftOf = (is: ItemDescription | null): ItemDraft => ({
  label: is?.label ?? '',
  kind: is?.kind ?? 'floor-lift',
  model: is?.model ?? '',
  powered: is?.powered ?? true,
  safeLoadKg: is?.safeLoadKg ?? null,
  barLoadKg: is?.barLoadKg ?? null,
  attachment: is?.attachment ?? null,
  covers: [...(is?.covers ?? [])],
  style: is?.style ?? null,
  fitsFromKg: is?.fitsFromKg ?? null,
  fitsToKg: is?.fitsToKg ?? null,
  worksWith: (is?.worksWithModels ?? []).join('\n'),
  worksWithItems: [...(is?.worksWithItems ?? [])],
  inspectionDue: is?.inspectionDue ?? '',
  lastExamined: is?.lastExamined ?? '',
  home: is?.home ?? '',
});

/** What the form says, or what is wrong with it: one sentence a field. Parts that the kind does not have are left out. */
export function descriptionOf(
  draft: ItemDraft,
): { is: ItemDescription } | { wrong: readonly { field: string; detail: string }[] } {
  const { worksWith, inspectionDue, lastExamined, ...rest } = draft;
  const sling = draft.kind === 'sling';
  const lift = draft.kind === 'floor-lift' || draft.kind === 'ceiling-lift';
  const read = itemDescription.safeParse({
    ...rest,
    powered: !sling && draft.kind !== 'walking-aid' && draft.powered,
    barLoadKg: lift ? draft.barLoadKg : null,
    attachment: sling || lift ? draft.attachment : null,
    covers: draft.kind === 'ceiling-lift' ? draft.covers : [],
    style: sling ? draft.style : null,
    fitsFromKg: sling ? draft.fitsFromKg : null,
    fitsToKg: sling ? draft.fitsToKg : null,
    worksWithModels: worksWith
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    inspectionDue: inspectionDue === '' ? null : inspectionDue,
    ...(lastExamined === '' ? {} : { lastExamined }),
  });
  if (read.success) return { is: read.data };
  return {
    wrong: read.error.issues.map(({ path, message }) => ({ field: String(path[0] ?? ''), detail: message })),
  };
}
