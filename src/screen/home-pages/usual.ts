/** What the pages under the home page have in common. */
export const TO_HOME = { label: 'back', step: { step: 'page', page: { page: 'home' } } } as const;
export const CHOOSE = 'Write the number of a choice and press Enter; / goes back.';
