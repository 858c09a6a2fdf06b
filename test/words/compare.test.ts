import { expect, test } from 'vitest';
import { compared } from '../../src/review/compare.ts';
import { compareTables } from '../../src/words/compare.ts';
import { keptSession } from '../helpers/screen/kept-session.ts';

test('a session that no tube was bent in is no session like another: it is said beside what it came to', () => {
	const { view } = keptSession().story;
	const practiced = {
		...view,
		id: `${view.id}-practice`,
		started: '9999-01-01T00:00:00.000Z',
		simulated: true,
	} as const;
	const [head] = compareTables(compared(view, practiced)!, () => null);
	expect(head).toContainEqual(['came to', 'finished', 'finished, simulated']);
});
