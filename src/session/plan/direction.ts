/** What the last leg's direction may be off by, in degrees; its place may be off by the job's tolerance of a length. */
export const MOST_ASKEW = 0.25;
