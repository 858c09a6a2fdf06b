export const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);

/** To so many decimals: what a sum of decimals leaves behind them goes. */
export const roundedTo = (value: number, places: number): number => Number(value.toFixed(places));

/** What two ways to one number differ by, in parts of it or of 1: sums in another order, or the same lengths in another unit. */
const ROUNDING = 1e-9;

/** Whether a is the larger of two numbers by more than rounding: of numbers that should be the same neither is. */
export const exceeds = (a: number, b: number): boolean => a - b > ROUNDING * Math.max(1, Math.abs(b));

/** The probability that odds of this logarithm stand for (the logistic function). */
export const ofLogOdds = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));
