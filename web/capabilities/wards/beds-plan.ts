/** A first list of beds from two numbers, to be edited by hand before the ward is set up. */
import { newId } from '../../people/device.ts';
import { say } from './words.ts';

export interface PlannedBed {
  readonly bed: string;
  label: string;
  bay: string;
  ceilingTrack: boolean;
}

export type Labelling = 'run' | 'bay-letter';

const letterOf = (index: number): string =>
  (index >= 26 ? letterOf(Math.floor(index / 26) - 1) : '') + String.fromCharCode(65 + (index % 26));

/** "4 bays of 6": labels 1 to 24, or A1 to D6. */
export function planBeds(bays: number, each: number, labelling: Labelling): PlannedBed[] {
  return Array.from({ length: bays * each }, (_, index) => {
    const bay = Math.floor(index / each);
    return {
      bed: newId(),
      label: labelling === 'run' ? `${index + 1}` : `${letterOf(bay)}${(index % each) + 1}`,
      bay: labelling === 'run' ? say('bay-3', { bay: bay + 1 }) : say('bay-2', { letterof: letterOf(bay) }),
      ceilingTrack: false,
    };
  });
}

/** Labels that stand on more than one bed: a wall cannot tell such beds apart. */
export function repeatedLabels(beds: readonly { label: string }[]): readonly string[] {
  const seen = new Map<string, number>();
  for (const { label } of beds) seen.set(label.trim(), (seen.get(label.trim()) ?? 0) + 1);
  return [...seen].filter(([label, count]) => label !== '' && count > 1).map(([label]) => label);
}
