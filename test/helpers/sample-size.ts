/** Whether samples are run at their full size, as `npm run test:whole` does. */
const WHOLE = process.env.PULLBOOK_TESTS === 'whole';

/** How many of a seeded sample to run: in every run of the tests its first few, at its full size all. */
export const sample = (few: number, all: number): number => (WHOLE ? all : few);
