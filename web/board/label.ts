/**
 * A bed's label where it is longer than can be written as high as promised. What every label of the ward
 * begins with tells no bed apart: it stands small before the rest, which keeps its height.
 */
import { SPARE, widthInEm } from './fit.ts';
import { CAP, type TilePlan } from './legible.ts';

export const LABEL_WEIGHT = 700;

/** Shares of a near capital, and of a label's place where even the rest is too long for it. */
const HEAD_SIZE = 0.78;
const LEAST_HEAD = 0.25;

/** As narrow as the font goes, in heights of a capital. */
const wideAs = (label: string): number => widthInEm(label, LABEL_WEIGHT, true) / CAP / SPARE;

export const widestLabel = (labels: readonly string[]): number => Math.max(0, ...labels.map(wideAs));

/** "Nord-" of "Nord-01" and "Nord-12": as much as all share, up to a sign that is no letter or digit, or from a letter to a digit. */
export function sharedHead(labels: readonly string[]): string {
  const [first = ''] = labels;
  if (labels.length < 2) return '';
  let length = 0;
  while (length < first.length && labels.every((label) => label[length] === first[length])) length += 1;
  for (let at = length; at > 0; at--) {
    const [before, after] = [first[at - 1]!, first[at] ?? ''];
    const ends = /[^\p{L}\p{N}]/u.test(before) || (/\p{L}/u.test(before) && /\p{N}/u.test(after));
    if (ends && labels.every((label) => label.length > at)) return first.slice(0, at);
  }
  return '';
}

export interface LabelPlan {
  /** Written small before the rest of every label; empty where whole labels fit. */
  readonly head: string;
  /** What is left is still wider than its place: it is written smaller than promised. */
  readonly tooLong: boolean;
}

export function planLabels(labels: readonly string[], { label, far }: TilePlan): LabelPlan {
  const room = label / far + 1e-6;
  if (widestLabel(labels) <= room) return { head: '', tooLong: false };
  const head = sharedHead(labels);
  return { head, tooLong: widestLabel(labels.map((one) => one.slice(head.length))) > room };
}

interface Part {
  readonly words: string;
  readonly place: number;
  readonly capital: number;
}
/** The shared beginning as small as what is read from close by, in what room the rest leaves it. */
export function labelPlaces(
  label: string,
  head: string,
  { label: room, far, near }: TilePlan,
): { readonly head: Part | null; readonly rest: Part } {
  if (head === '' || !label.startsWith(head))
    return { head: null, rest: { words: label, place: room, capital: far } };
  const words = label.slice(head.length);
  const least = Math.min(room, wideAs(words) * far);
  const wanted = wideAs(head) * near * HEAD_SIZE;
  const forHead = Math.min(wanted, Math.max(room - least, room * LEAST_HEAD));
  return {
    head: { words: head, place: forHead, capital: near * HEAD_SIZE },
    rest: { words, place: room - forHead, capital: far },
  };
}
