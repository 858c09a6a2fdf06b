/** What the pages of the screen say alike. */

export const CHOICE = 'Number of your choice';
export const CHOOSE = 'Write the number of a choice and press Enter.';
export const CHOOSE_OR_BACK = 'Write the number of a choice and press Enter; / goes back.';
export const ONLY_BACK = 'Press / to go back.';
