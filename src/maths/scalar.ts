export const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);

/** To so many decimals: what a sum of decimals leaves behind them goes. */
export const roundedTo = (value: number, places: number): number => Number(value.toFixed(places));

/** What two ways to one number differ by, in parts of it or of 1: sums in another order, or the same lengths in another unit. */
export const ROUNDING = 1e-9;

const hairOf = (value: number): number => ROUNDING * Math.max(1, Math.abs(value));

/** Whether a is the larger of two numbers by more than rounding: of numbers that should be the same neither is. */
export const exceeds = (a: number, b: number): boolean => a - b > hairOf(b);

/** How many whole steps a value holds, and how many it takes to hold it. A hair off a whole number of them is that number: 0.1 is no binary number. */
export const stepsWithin = (value: number, step: number): number => Math.floor(value / step + hairOf(value / step));
export const stepsCovering = (value: number, step: number): number => Math.ceil(value / step - hairOf(value / step));

/** The multiple of a step that lies below a value, above it, nearest to it; one that is the value but for rounding is all three. */
export const floorTo = (value: number, step: number): number => inSteps(stepsWithin(value, step), step);
export const ceilTo = (value: number, step: number): number => inSteps(stepsCovering(value, step), step);
export const nearestTo = (value: number, step: number): number => inSteps(Math.round(value / step), step);
const inSteps = (count: number, step: number): number => roundedTo(count * step, 9);

/** To thousandths and never below the value: what must not be less is not, as it is told. */
export const upToThousandth = (value: number): number => Math.ceil(value * 1000) / 1000;

/** The probability that odds of this logarithm stand for (the logistic function). */
export const ofLogOdds = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));
