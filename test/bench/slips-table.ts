/** `npm run bench:slips`: at least 1,000 slips and 10,000 right readings in each world; a number is the first seed. */
import { slipsIn, slipsLine, WORLDS } from './slips.ts';

/** The thresholds were chosen with 52,700,000 in view. */
const SEED = Number(process.argv.slice(2).find((word) => /^\d+$/.test(word)) ?? 52_700_000);
const SHOPS = 95;

for (const [name, world] of Object.entries(WORLDS)) console.log(slipsLine(name, slipsIn(world, SHOPS, SEED)));
