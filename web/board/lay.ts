/**
 * Sets the lines of a tile as large as they go: each block of words may break over a few lines, and
 * the break is chosen that leaves the smallest words largest. Pure but for the measuring of widths.
 */
import { widthInEm } from './fit.ts';

export interface Block {
  readonly words: string;
  /** Largest size, in the tile's unit. */
  readonly most: number;
  /** Most lines it may take. */
  readonly lines: number;
  /** CSS font weight it is drawn in. */
  readonly weight: number;
  /** How much its size matters beside the others; 1 unless told. */
  readonly matters?: number;
  /** Never drawn larger than the block at this index. */
  readonly notAbove?: number | undefined;
}

export interface Laid {
  readonly lines: readonly string[];
  readonly size: number;
}

/** Height of a line, as a share of its size. */
export const LEAD = 0.95;

/** Words over `count` lines, so that the longest line is as short as it can be; null when there are too few words. */
export function breakWords(words: string, count: number, weight: number): readonly string[] | null {
  const parts = words.split(' ');
  if (parts.length < count) return null;
  if (count === 1) return [words];
  let best: readonly string[] | null = null;
  let bestWidth = Infinity;
  for (let first = 1; first <= parts.length - count + 1; first++) {
    const rest = breakWords(parts.slice(first).join(' '), count - 1, weight);
    if (!rest) continue;
    const lines = [parts.slice(0, first).join(' '), ...rest];
    // "powered standing aid" / "+ frame" reads better than "powered standing" / "aid + frame".
    const split = words.includes(' +') && !lines.some((one) => one.startsWith('+'));
    const width = widest(lines, weight) * (split ? 1.3 : 1);
    if (width < bestWidth) [best, bestWidth] = [lines, width];
  }
  return best;
}

const widest = (lines: readonly string[], weight: number) =>
  Math.max(...lines.map((line) => widthInEm(line, weight)));

/** The same order as the blocks; sizes in the unit of `width` and `height`. */
export function layOut(blocks: readonly Block[], width: number, height: number): readonly Laid[] {
  let best: readonly Laid[] = [];
  let bestScore = -Infinity;
  for (const choice of choices(blocks)) {
    const laid = fill(blocks, choice, width, height);
    // Small words lose far more by shrinking than large ones gain by growing.
    const score = -laid.reduce((sum, { size }, i) => sum + (blocks[i]!.matters ?? 1) / size ** 3, 0);
    if (score > bestScore + 1e-9) [best, bestScore] = [laid, score];
  }
  return best;
}

function choices(blocks: readonly Block[]): readonly (readonly (readonly string[])[])[] {
  return blocks.reduce<readonly (readonly (readonly string[])[])[]>(
    (so, block) => {
      const breaks = Array.from({ length: block.lines }, (_, i) =>
        breakWords(block.words, i + 1, block.weight),
      );
      return so.flatMap((choice) => breaks.flatMap((lines) => (lines ? [[...choice, lines]] : [])));
    },
    [[]],
  );
}

/** Every block as large as its width allows; where they are too tall together, the largest give way first. */
function fill(
  blocks: readonly Block[],
  choice: readonly (readonly string[])[],
  width: number,
  height: number,
): readonly Laid[] {
  const own = blocks.map((block, i) =>
    Math.min(block.most, width / Math.max(1, widest(choice[i]!, block.weight))),
  );
  const sizes = blocks.map((block, i) =>
    block.notAbove === undefined ? own[i]! : Math.min(own[i]!, own[block.notAbove]!),
  );
  let left = height / LEAD;
  let lines = choice.reduce((sum, one) => sum + one.length, 0);
  let cap = Infinity;
  for (const i of sizes.map((_, index) => index).toSorted((a, b) => sizes[a]! - sizes[b]!)) {
    if (sizes[i]! * lines > left) {
      cap = left / lines;
      break;
    }
    left -= sizes[i]! * choice[i]!.length;
    lines -= choice[i]!.length;
  }
  return choice.map((one, i) => ({ lines: one, size: Math.min(sizes[i]!, cap) }));
}
