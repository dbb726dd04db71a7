/**
 * The staged protocol as data. A ward may publish its own; an assessment names the version it was
 * done under, so every version stays readable. What a stage or part tells the handling rules is said
 * by `shows`, a fixed vocabulary: ids and words belong to the protocol, meanings to the rules.
 */
import { z } from 'zod';
import { securedWith } from '../values.ts';

const id = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,39}$/, 'an id is lower-case words joined by "-", 40 signs at most');
const words = z.string().trim().min(1, 'say it in words').max(400);

/** What a cleared stage means to the handling rules, in the order in which they build on each other. */
export const STAGE_MEANINGS = ['clear', 'upright', 'edge', 'stand', 'turn', 'walk'] as const;
export const stageMeaning = z.enum(STAGE_MEANINGS);
export type StageMeaning = z.infer<typeof stageMeaning>;

/** What a part tells about the person, for the handling rules. */
export const partMeaning = z.enum([
  'leg-against-gravity',
  'leg-against-resistance',
  'leg-bears',
  'arm-pushes',
  'grip',
  'comes-to-edge',
  'sits-unheld',
]);
export type PartMeaning = z.infer<typeof partMeaning>;

export const protocolPart = z.strictObject({
  id,
  says: words,
  /** Tested left and right, each with its own finding. */
  sided: z.boolean(),
  /**
   * `required`: not met (on either side) keeps the person at the stage before. `one-side`: one side
   * that meets is enough, so that a one-leg route stays open. `informs`: only the plan uses it.
   */
  gate: z.enum(['required', 'one-side', 'informs']),
  shows: partMeaning.optional(),
  source: words,
});
export type ProtocolPart = z.infer<typeof protocolPart>;

export const protocolStage = z.strictObject({
  id,
  /** The tier's word once this stage is cleared; null when clearing it alone is not yet a tier. */
  word: z.string().trim().min(1).max(24).nullable(),
  says: words,
  shows: stageMeaning.nullable(),
  parts: z.array(protocolPart).min(1, 'a stage has at least one part').max(20),
  /** What may hold the person safe here; empty when the stage can only be done free. */
  securedBy: z.array(securedWith).max(4),
  /** Done secured the first time after surgery or bed rest. */
  firstTimeSecured: z.boolean(),
  /** A symptom during this stage means it is not cleared. */
  symptomStops: z.boolean(),
  /** May be met on one leg with both arms pushing; later stages then need a therapist. */
  oneLegRoute: z.boolean(),
  source: words,
});
export type ProtocolStage = z.infer<typeof protocolStage>;

export const protocolDocument = z
  .strictObject({
    id,
    version: z.number().int().min(1),
    name: words,
    source: words,
    owner: words,
    reviewBy: z.iso.date(),
    /** The tier's word when assessed and nothing is cleared. */
    lowestWord: z.string().trim().min(1).max(24),
    stages: z.array(protocolStage).min(1, 'a protocol has at least one stage').max(20),
    /** Readings a pressure set demands; minutes standing, each within `within` minutes. */
    pressureSet: z.strictObject({
      lying: z.boolean(),
      standingMinutes: z.array(z.number().min(0).max(30)).min(1).max(6),
      within: z.number().min(0).max(5),
      source: words,
    }),
    /** Two findings closer than this are of the same time: neither is later than the other. */
    toldApart: z.strictObject({
      exactMinutes: z.number().min(0).max(60),
      aboutMinutes: z.number().min(0).max(240),
      source: words,
    }),
  })
  .superRefine((p, ctx) => {
    const fault = (path: (string | number)[], message: string) =>
      ctx.addIssue({ code: 'custom', path, message });
    const ids = new Set<string>();
    const tierWords = new Set<string>([p.lowestWord, 'Not known']);
    if (p.lowestWord === 'Not known')
      fault(['lowestWord'], '"Not known" is kept for "not assessed here": choose another word');
    let meaningSoFar = -1;
    let worded = false;
    p.stages.forEach((s, i) => {
      if (ids.has(s.id))
        fault(['stages', i, 'id'], `stage "${s.id}" is there twice: give one of them another id`);
      ids.add(s.id);
      if (s.word === null) {
        if (worded)
          fault(['stages', i, 'word'], 'only the first stages may have no word: give this one a word');
      } else {
        worded = true;
        if (tierWords.has(s.word)) {
          const why = s.word === 'Not known' ? 'is kept for "not assessed here"' : 'is there twice';
          fault(['stages', i, 'word'], `the word "${s.word}" ${why}: choose another word`);
        }
        tierWords.add(s.word);
      }
      if (s.shows !== null) {
        const rank = STAGE_MEANINGS.indexOf(s.shows);
        if (rank <= meaningSoFar) {
          fault(
            ['stages', i, 'shows'],
            `"${s.shows}" must come once, in the order ${STAGE_MEANINGS.join(', ')}; a stage of another meaning shows null`,
          );
        }
        meaningSoFar = Math.max(meaningSoFar, rank);
      }
      const parts = new Set<string>();
      s.parts.forEach((part, j) => {
        if (parts.has(part.id))
          fault(
            ['stages', i, 'parts', j, 'id'],
            `part "${part.id}" is there twice: give one of them another id`,
          );
        parts.add(part.id);
      });
    });
    if (!worded) fault(['stages'], 'at least one stage needs a tier word: give the last one a word');
  });
export type Protocol = z.infer<typeof protocolDocument>;
