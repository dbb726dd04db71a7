/** Readings while they are typed: a slot each, with what was typed, its time, and what is wrong with it. */
import { reading, type Reading } from '@footboard/shared/capabilities/assessments/values';
import type { Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { toIso, type EpochMs } from '@footboard/shared/kernel/times';
import { timeFault } from './reading-times.ts';
import type { ReadingSlots, SlotField, SlotKind, SlotValue } from './reading-slot.ts';

export type { ReadingSlots, SlotKind };

const PRESSURE: readonly SlotField[] = [
  { key: 'systolic', says: 'systolic', unit: 'mmHg', whole: true },
  { key: 'diastolic', says: 'diastolic', unit: 'mmHg', whole: true },
  { key: 'heartRate', says: 'heart rate', unit: 'per min', whole: true, optional: true },
];
export const LYING: SlotKind = {
  id: 'pressure-lying',
  says: 'Pressure lying',
  fixed: { kind: 'pressure', posture: 'lying' },
  fields: PRESSURE,
};
export const SEATED: SlotKind = {
  id: 'pressure-seated',
  says: 'Pressure seated',
  fixed: { kind: 'pressure', posture: 'seated' },
  fields: PRESSURE,
};
const minuteWords = (minute: number) => (minute < 1 ? `${minute * 60} s` : `${minute} min`);
export const standing = (minute: number): SlotKind => ({
  id: `pressure-standing-${minute}`,
  says: `Pressure standing, ${minuteWords(minute)}`,
  fixed: { kind: 'pressure', posture: 'standing', minute },
  fields: PRESSURE,
});
/** The same after sitting down once more: a second standing up. */
const again = (minute: number): SlotKind => ({
  ...standing(minute),
  id: `again-standing-${minute}`,
  says: `Second try, standing ${minuteWords(minute)}`,
});
/** About 15 s after rising, where somebody measures that soon. */
const AT_ONCE = 0.25;

/** The second standing up: the minutes of the first that are asked for. */
export const secondTry = (depth: 'full' | 'full-with-pressure', protocol: Protocol): readonly SlotKind[] =>
  (depth === 'full-with-pressure' ? protocol.pressureSet.standingMinutes : [1]).map(again);
const one = (kind: string, says: string, key: string, unit: string, whole: boolean): SlotKind => ({
  id: kind,
  says,
  fixed: { kind },
  fields: [{ key, says, unit, whole }],
});
export const SIGNS: readonly SlotKind[] = [
  one('heart-rate', 'Heart rate', 'perMinute', 'per min', true),
  {
    id: 'oxygen',
    says: 'Oxygen',
    fixed: { kind: 'oxygen' },
    fields: [
      { key: 'saturation', says: 'saturation', unit: '%', whole: true },
      { key: 'litresPerMinute', says: 'oxygen given', unit: 'l per min', whole: false, optional: true },
    ],
  },
  one('breathing', 'Breathing', 'perMinute', 'per min', true),
  one('temperature', 'Temperature', 'celsius', '°C', false),
  one('pain', 'Pain', 'outOfTen', '0 to 10', true),
];

/** The slots a stage asks for: signs and the lying pressure before the start, standing ones at the stand. */
export function slotsFor(
  meaning: string | null,
  depth: 'full' | 'full-with-pressure',
  protocol: Protocol,
): { readonly demanded: readonly SlotKind[]; readonly offered: readonly SlotKind[] } {
  const set = protocol.pressureSet;
  if (meaning === 'clear') {
    const lying = depth === 'full-with-pressure' && set.lying;
    return { demanded: lying ? [LYING] : [], offered: lying ? SIGNS : [LYING, ...SIGNS] };
  }
  if (meaning === 'edge') return { demanded: [], offered: [SEATED] };
  if (meaning === 'stand') {
    return depth === 'full-with-pressure'
      ? { demanded: set.standingMinutes.map(standing), offered: [standing(AT_ONCE)] }
      : { demanded: [], offered: [standing(1), standing(AT_ONCE)] };
  }
  return { demanded: [], offered: [] };
}

const EVERY_SLOT = (slots: ReadingSlots): readonly SlotKind[] =>
  [LYING, SEATED, ...SIGNS, ...Object.keys(slots).flatMap((id) => standingOf(id))].filter((k) => slots[k.id]);
const standingOf = (id: string): SlotKind[] => {
  const [, which, minute] = /^(pressure|again)-standing-(\d+(?:\.\d+)?)$/.exec(id) ?? [];
  return minute === undefined ? [] : [(which === 'again' ? again : standing)(Number(minute))];
};

const asReading = (kind: SlotKind, slot: SlotValue): unknown => ({
  ...kind.fixed,
  ...slot.values,
  at: toIso(slot.at),
});

/** Types one field of a slot; null clears it. The slot's time is that of its first figure, or what was said of it. */
export function typeReading(
  slots: ReadingSlots,
  kind: SlotKind,
  key: string,
  value: number | null,
  now: EpochMs,
): ReadingSlots {
  const before = slots[kind.id];
  const values = { ...before?.values };
  if (value === null) delete values[key];
  else values[key] = value;
  const rest = { ...slots };
  delete rest[kind.id];
  return Object.keys(values).length === 0
    ? rest
    : { ...rest, [kind.id]: { ...(before ?? { at: now }), values } };
}

/** The field of a slot's time, beside its figures. */
export const AT = 'at';

/** What is wrong with a slot, by field, with the unit named. A slot nobody touched is not wrong. */
export function slotFaults(
  kind: SlotKind,
  slots: ReadingSlots,
): Readonly<Record<string, readonly { detail: string }[]>> {
  const slot = slots[kind.id];
  if (!slot) return {};
  const faults: Record<string, { detail: string }[]> = {};
  for (const field of kind.fields) {
    if (slot.values[field.key] === undefined && !field.optional) {
      faults[field.key] = [
        { detail: `Type the ${field.says} (${field.unit}) too, or clear the other figure.` },
      ];
    }
  }
  const time = timeFault(kind, slots, EVERY_SLOT(slots));
  if (time) faults[AT] = [{ detail: time }];
  const read = reading.safeParse(asReading(kind, slot));
  if (!read.success) {
    for (const issue of read.error.issues) {
      const key = String(issue.path[0] ?? kind.fields[0]!.key);
      faults[key] ??= [{ detail: capital(issue.message) }];
    }
  }
  return faults;
}
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Of a check's slots unless `kinds` names others. */
export const anySlotFault = (slots: ReadingSlots, kinds = EVERY_SLOT(slots)): boolean =>
  kinds.some((kind) => Object.keys(slotFaults(kind, slots)).length > 0);

/** The complete and plausible readings: of a check's slots unless `kinds` names others. */
export const readingsOf = (slots: ReadingSlots, kinds = EVERY_SLOT(slots)): readonly Reading[] =>
  kinds.flatMap((kind) => {
    const slot = slots[kind.id];
    const read = slot && reading.safeParse(asReading(kind, slot));
    return read?.success ? [read.data] : [];
  });

/** Demanded slots of a pressure set that are still empty, in words. */
export const missingSlots = (demanded: readonly SlotKind[], slots: ReadingSlots): readonly string[] =>
  demanded.filter((kind) => !slots[kind.id]).map((kind) => kind.says.toLowerCase());
