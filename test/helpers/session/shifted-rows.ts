/** Rows of sessions as kept, of a bender whose springback moves. */
import type { KeptRow } from '../../../src/journal/kept-row.ts';
import { times } from '../../../src/maths/matrix.ts';
import type { Kin } from '../../../src/springback/history.ts';
import { NOTHING_SEEN } from '../../../src/springback/scatter.ts';

export const KIN: Kin = {
	bender: 'shop',
	die: '6 in',
	od: 38.1,
	wall: 2.41,
	clr: 152.4,
	material: '1020-dom',
	k: 0.021,
};
const MACHINE = [3.4, 5, 0.1, 1, 0];

/** Session `n`, a day after the one before; its springback is `more` than usual. */
export function row(n: number, more = 0, parts: Partial<KeptRow> = {}): KeptRow {
	const at = new Date(Date.UTC(2026, 9, 1 + n, 8)).toISOString();
	const id = `s${String(n).padStart(5, '0')}`;
	const information = MACHINE.map((_, i) => MACHINE.map((__, j) => (i === j ? 5 : 0)));
	const vector = times(
		information,
		MACHINE.map((value, i) => (i === 0 ? value + more : value)),
	);
	const lesson = {
		kin: KIN,
		at,
		session: id,
		pulls: 4,
		readings: 8,
		information,
		vector,
		scatter: NOTHING_SEEN,
		right: 0,
	};
	return {
		id,
		path: `/home/${id}.log`,
		job: { name: 'Rescue rail', file: '/jobs/rail.json', units: 'in', bender: 'shop', die: '6 in', heat: 'H-7' },
		at,
		startId: id,
		touched: at,
		status: 'done',
		listed: null,
		problem: null,
		isDamaged: false,
		isImported: false,
		besides: [],
		kin: KIN,
		pulls: 4,
		lesson,
		figures: { springback: 5.5 + more + (n % 2) / 5, error: 0.1, miss: null, taken: 3, pulls: 5 },
		...parts,
	} as KeptRow;
}

/** Newest first: so many as usual, and so many with more springback. */
export const rows = (usual: number, shifted: number, by = 1.5): KeptRow[] =>
	Array.from({ length: usual + shifted }, (_, n) => row(n, n < usual ? 0 : by)).reverse();
