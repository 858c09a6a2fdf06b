import type { HomePage } from '../home-view.ts';

/** What the pages under the home page have in common. */
export const TO_HOME = { label: 'back', step: { step: 'page', page: { page: 'home' } } } as const;
/** Help, from which one comes back to the page that asked for it. */
export function helpFrom(from: HomePage) {
	return { label: 'help', step: { step: 'page', page: { page: 'help', from } } } as const;
}

export const CHOOSE = 'Write the number of a choice and press Enter; / goes back.';
