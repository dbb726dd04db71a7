/** What to mind with this person whatever the task, each with its reason. */
import type { Because } from '../../board/because.ts';
import type { PlanInput } from './types.ts';

type Caution = { words: string; because: Because[] };

export function staysCautions(input: PlanInput, sedatedUntil: number | null): Caution[] {
  const out: Caution[] = [];
  const say = (rule: string, words: string, facts: readonly (string | undefined)[]) =>
    out.push({
      words,
      because: [{ rule, words, facts: facts.filter((f) => f !== undefined) as Because['facts'] }],
    });
  const c = input.capability;
  if (input.pressureDrop) {
    say(
      'pressure-drop',
      'PRESSURE DROP on rising: rise in steps, sit first, one more person; prescriber told',
      [input.pressureDrop.fact],
    );
  }
  if (c.waitsForHelp === 'no' || c.waitsForHelp === 'varies') {
    say(
      'waits-for-help',
      `Waits for help: ${c.waitsForHelp}. Never alone, one person within reach day and night`,
      c.because.find((b) => b.rule === 'capability/worst-of-the-window')?.facts ?? [],
    );
  }
  if (input.firstTimeUpPending) {
    const { value, fact } = input.firstTimeUpPending;
    const words =
      value === true
        ? 'First time up since surgery or bed rest is still ahead'
        : 'First time up since surgery or bed rest was done free: to be repeated, held safe';
    say('first-time-up', words, [fact]);
  }
  if (sedatedUntil !== null)
    say('night/sedative', 'Sedative given: one more person at night', [input.sedatedAt?.fact]);
  if (c.weightMarked === 'unknown')
    say('weight/unknown', 'Weight unknown: weigh or estimate', [input.arrival ?? undefined]);
  if (c.weightMarked !== 'unknown' && c.weightMarked !== 'measured') {
    say('weight/estimated', 'Weight is an estimate: counts with the margin added', [input.weight?.fact]);
  }
  for (const [which, order] of input.orders.precautions) {
    say('order/precaution', `${which[0]!.toUpperCase()}${which.slice(1)} precautions as ordered`, [
      order.fact,
    ]);
  }
  if (input.orders.brace) say('order/brace', 'Brace', [input.orders.brace.fact]);
  for (const a of input.attachments) {
    const { kind, disconnects } = a.value;
    const who =
      disconnects === 'nobody'
        ? 'nobody disconnects it'
        : `${disconnects.replaceAll('-', ' ')} disconnects it`;
    say('attachments', `${kind.replaceAll('-', ' ')}: ${who}`, [a.fact]);
  }
  return out;
}
