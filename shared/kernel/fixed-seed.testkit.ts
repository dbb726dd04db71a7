/** Every property of this run draws the same cases: FOOTBOARD_SEED, or the seed written here. */
import * as fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FOOTBOARD_SEED ?? 20260501) });
