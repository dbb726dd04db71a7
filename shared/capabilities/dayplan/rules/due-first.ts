/**
 * Whose check comes first, and why, in one sentence each. The order is ours (common practice, no
 * source): whoever a trigger keeps where they are, of them first who is overdue; then the longest
 * overdue; then due; then before the next move. Nobody who has just fallen waits behind a routine check.
 * People off the ward are not in it: nobody can check them there.
 */
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Because } from '../../board/because.ts';
import type { BedView, StayView } from '../../board/view.ts';
import { TRIGGER_HELP } from '../../handling/rules/trigger-help.ts';

/** One occupied bed, in the ward's order of beds. */
export interface Row {
  readonly bed: BedView;
  readonly stay: StayView;
}
export interface DueFirst extends Row {
  readonly because: Because;
}

/** `rows` in the order of beds; equals keep it. `say` writes an instant on the ward's clock. */
export function dueFirst(rows: readonly Row[], t: EpochMs, say: (at: EpochMs) => string): DueFirst[] {
  return rows
    .flatMap((row) => {
      const ranked = rank(row.stay, t, say);
      return ranked ? [{ row, ...ranked }] : [];
    })
    .toSorted((a, b) => a.group - b.group || b.overdueFor - a.overdueFor)
    .map(({ row, because }) => ({ ...row, because }));
}

interface Ranked {
  /** Lower comes first. */
  readonly group: 0 | 1 | 2 | 3 | 4;
  /** Milliseconds past the due time; 0 where nothing is overdue. */
  readonly overdueFor: number;
  readonly because: Because;
}

function rank(stay: StayView, t: EpochMs, say: (at: EpochMs) => string): Ranked | null {
  const { due, trust } = stay;
  if (stay.away) return null;
  const triggers = trust.openTriggers.filter((o) => o.kind !== 'arrival');
  const keeps = triggers.filter((o) => TRIGGER_HELP[o.kind].holds.length > 0);
  const open = triggers.map((o) => `${o.words}, ${say(o.at)}`).join('; ');
  const facts = triggers.map((o) => o.event);
  const of = (rule: string, words: string): Because => ({ rule: `due-first/${rule}`, facts, words });
  const after = open && ` (${open})`;

  if (due.state === 'overdue' && due.at !== null) {
    const overdueFor = t - due.at;
    const long = sayElapsed(overdueFor);
    const words = `Check overdue since ${say(due.at)}${long && `, by ${long}`}`;
    return keeps.length > 0
      ? {
          group: 0,
          overdueFor,
          because: of('overdue-and-kept-still', `${words}; stay put until a nurse has looked: ${open}`),
        }
      : { group: 2, overdueFor, because: of('overdue', `${words}${after}`) };
  }
  if (due.state === 'due' && due.at !== null) {
    return {
      group: keeps.length > 0 ? 1 : 3,
      overdueFor: 0,
      because: of('due', `Check due since ${say(due.at)}${after}`),
    };
  }
  // A comfort or a clinician's plan has no due time, but what happened is still to be looked at.
  if (open) {
    return {
      group: keeps.length > 0 ? 1 : 4,
      overdueFor: 0,
      because: of('before-the-next-move', `Check before the next move: ${open}`),
    };
  }
  const [why] = due.because;
  if (due.state !== 'at-next-move' || !why) return null;
  return {
    group: 4,
    overdueFor: 0,
    because: { rule: 'due-first/before-the-next-move', facts: why.facts, words: `Check: ${why.words}` },
  };
}

/** '3 h 20 min', '45 min'; empty below a minute. Elapsed time, also across a clock change. */
export function sayElapsed(ms: number): string {
  const hours = Math.floor(ms / HOUR);
  const minutes = Math.floor((ms % HOUR) / MINUTE);
  return [hours > 0 ? `${hours} h` : '', minutes > 0 ? `${minutes} min` : ''].filter(Boolean).join(' ');
}
