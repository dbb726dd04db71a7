/** A sheet of every ward each hour, as a file, for when nothing else is left. */
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { WardId } from '@footboard/shared/kernel/ids';
import { HOUR } from '@footboard/shared/kernel/times';
import type { Paper } from './sheets.ts';

const KEPT = 48;

export interface HourlyParts {
  readonly paper: Paper;
  readonly wards: () => readonly WardId[];
  readonly folder: string;
  readonly origin: string;
  readonly failed: (ward: string, error: unknown) => void;
}

/** One sheet of each ward now. A ward that fails leaves the others their sheets. */
export async function printAll({ paper, wards, folder, origin, failed }: HourlyParts): Promise<void> {
  for (const ward of wards()) {
    try {
      const { serial, pdf } = await paper.make(ward, null, origin);
      const place = join(folder, ward);
      await mkdir(place, { recursive: true });
      // Whole or not at all: a printer may take the file at any moment.
      const coming = join(place, `.${serial}.part`);
      await writeFile(coming, pdf);
      await rename(coming, join(place, `${serial}.pdf`));
      const files = (await readdir(place)).filter((name) => name.endsWith('.pdf')).toSorted();
      for (const old of files.slice(0, -KEPT)) await rm(join(place, old), { force: true });
    } catch (error) {
      failed(ward, error);
    }
  }
}

/** At once, and then every hour of real time. @returns stops it and waits for what is being written */
export function printHourly(parts: HourlyParts): () => Promise<void> {
  let working: Promise<void> = Promise.resolve();
  const print = () => {
    working = working.then(() => printAll(parts));
  };
  print();
  const timer = setInterval(print, HOUR);
  timer.unref();
  return async () => {
    clearInterval(timer);
    await working;
  };
}
