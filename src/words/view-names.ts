import type { ViewName } from '../tube/principal-views.ts';

/** What each view of a drawing is called. */
export const VIEW_NAMES: Readonly<Record<ViewName, string>> = {
	front: 'front view',
	top: 'top view',
	oblique: 'oblique view',
	'x-y': 'x and y',
	'x-z': 'x and z',
	turned: 'turned view',
};

/** What the caption says of another tube that is drawn at an end. */
export const END_MEETS = 'the tube that an end meets in fine dots';

/** Which view is where: `front view left, top view`; empty for a flat tube's only one. */
export function viewPlaces(names: readonly ViewName[], beside: boolean): string {
	if (names.length < 2) return '';
	return names.map((name) => VIEW_NAMES[name]).join(beside ? ' left, ' : ' above, ');
}
