import fc from 'fast-check';

/** Random cases are the same in every run; another seed is tried with `DRAW_SEED=7 npx vitest …`. */
const seed = Number(process.env.DRAW_SEED ?? 20260314);
if (!Number.isSafeInteger(seed)) throw new Error('DRAW_SEED is a whole number');

fc.configureGlobal({ seed });
