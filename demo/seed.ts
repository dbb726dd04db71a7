/** Writes the week into an empty log: decided in memory, appended in batches of at most an hour of ward time. */
import { createHash } from 'node:crypto';
import type { CommandId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import type { EventToAppend, Log, TextToKeep } from '@footboard/server/log/log';
import type { Entry } from './entry.ts';
import { Ledger } from './ledger.ts';

export interface Seeded {
  readonly entries: number;
  readonly events: number;
  /** Entries a ward would have refused, with the code: staff try things too. */
  readonly refused: readonly { command: string; code: string; at: EpochMs }[];
}

/** `setClock` sets the demo database's recorded time before each batch. */
export async function seed(
  log: Log,
  entries: readonly Entry[],
  setClock: (at: EpochMs) => Promise<void>,
): Promise<Seeded> {
  const ledger = new Ledger();
  const refused: Seeded['refused'][number][] = [];
  let events: EventToAppend[] = [];
  let texts: TextToKeep[] = [];
  let batchFrom = 0;
  let batchTo = 0;
  let batches = 0;
  let total = 0;

  const write = async () => {
    if (events.length === 0) return;
    batches += 1;
    await setClock(batchTo);
    await log.append({
      command: {
        commandId: `demo-seed-${batches}` as CommandId,
        ward: events[0]!.ward as WardId,
        name: 'demo-seed',
        bodyHash: createHash('sha256').update(`demo-seed-${batches}`).digest('hex'),
        author: { staff: 'first-run' as StaffId, role: 'administrator' },
        outcome: 'accepted',
        result: { events: events.length },
      },
      events,
      texts,
    });
    total += events.length;
    events = [];
    texts = [];
  };

  for (const entry of entries) {
    if (events.length > 0 && (entry.at - batchFrom > HOUR / 2 || events.length >= 400)) await write();
    if (events.length === 0) batchFrom = entry.at;
    const decided = ledger.decide(entry);
    if (decided === null) continue;
    if ('refused' in decided) {
      refused.push({ command: entry.command, code: decided.refused, at: entry.at });
      continue;
    }
    events.push(...decided.events);
    texts.push(...decided.texts);
    batchTo = entry.at;
  }
  await write();
  return { entries: entries.length, events: total, refused };
}
