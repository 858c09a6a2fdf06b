export const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);

/** The probability that odds of this logarithm stand for (the logistic function). */
export const ofLogOdds = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));
