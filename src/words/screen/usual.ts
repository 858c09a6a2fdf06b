/** What the pages of the screen say alike. */

export const CHOICE = 'Number of your choice';
export const CHOOSE = 'Write the number of a choice and press Enter.';
export const CHOOSE_OR_BACK = 'Write the number of a choice and press Enter; / goes back.';
/** Where letters search a list and none of it has them. */
export const NONE_FOUND = 'Nothing here has that in its name. Press Esc for the whole list.';
export const ONLY_BACK = 'Press / to go back.';

/** What keys and choices that many pages have do. */
export const KEY_SAYS = { back: 'back', help: 'help', more: 'more', goOn: 'go on' } as const;
/** The page that `*` leads to, and the heading over what is not the main thing to do. */
export const MORE_TITLE = 'More';
export const BESIDES = 'Besides';
export const TO_THE_JOBS = 'the jobs';
