/** The measured parts of the early-warning score as fields: what cannot be a reading of a living adult is not counted. */
import { reading } from '@footboard/shared/capabilities/assessments/values';

export const MEASURED = [
  { key: 'breathing', says: 'Breathing rate', unit: 'per min', whole: true },
  { key: 'saturation', says: 'Oxygen saturation', unit: '%', whole: true },
  { key: 'systolic', says: 'Systolic pressure', unit: 'mmHg', whole: true },
  { key: 'pulse', says: 'Pulse', unit: 'per min', whole: true },
  { key: 'temperature', says: 'Temperature', unit: '°C', whole: false },
] as const;
export type Measured = (typeof MEASURED)[number];
export type MeasuredKey = Measured['key'];

/** Any instant: only the figure is looked at. */
const at = '2000-01-01T00:00:00Z';
const AS_READING: Readonly<Record<MeasuredKey, (value: number) => unknown>> = {
  breathing: (perMinute) => ({ kind: 'breathing', perMinute, at }),
  saturation: (saturation) => ({ kind: 'oxygen', saturation, at }),
  // The lowest diastolic there is: only the systolic one is asked for here.
  systolic: (systolic) => ({ kind: 'pressure', posture: 'seated', systolic, diastolic: 20, at }),
  pulse: (perMinute) => ({ kind: 'heart-rate', perMinute, at }),
  temperature: (celsius) => ({ kind: 'temperature', celsius, at }),
};

/** What is wrong with a figure, with its unit; nothing for an empty field. */
export function measuredFault(
  { key, says, unit, whole }: Measured,
  value: number | null,
): readonly { detail: string }[] {
  if (value === null) return [];
  if (whole && !Number.isInteger(value)) return [{ detail: `${says} (${unit}) is a whole number` }];
  const read = reading.safeParse(AS_READING[key](value));
  return read.success ? [] : [{ detail: read.error.issues[0]!.message }];
}

/** Only the figures that can be right; one that cannot counts as not taken. */
export const soundParts = (
  typed: Readonly<Partial<Record<MeasuredKey, number | null>>>,
): Partial<Record<MeasuredKey, number>> =>
  Object.fromEntries(
    MEASURED.flatMap((one) => {
      const value = typed[one.key] ?? null;
      return value !== null && measuredFault(one, value).length === 0 ? [[one.key, value]] : [];
    }),
  );
