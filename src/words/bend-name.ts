/** A bend where it is named by itself: in front of a row, as a choice. */
export const bendName = (bend: number): string => `bend ${bend}`;
