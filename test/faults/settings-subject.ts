/** Settings that are changed one after the other on a disk that fails. */
import { openSettings } from '../../src/settings/settings.ts';
import { SettingsError } from '../../src/settings/settings-error.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { must, type Subject } from './subject.ts';

const HOME = '/home';
const FOLDERS = ['/tubes', '/jobs', '/rails', '/braces'];

/** The folders that were set, how many of them were called kept, and the error that ended it. */
interface Left {
	sent: string[];
	acked: number;
	error: unknown;
}

export const settingsSubject: Subject<Left> = {
	name: 'settings',
	async run(fs) {
		const left: Left = { sent: [], acked: 0, error: null };
		try {
			for (const jobs of FOLDERS) {
				left.sent.push(jobs);
				await openSettings(HOME, fs).setPreferences({ jobs });
				left.acked = left.sent.length;
			}
		} catch (error) {
			left.error = error;
		}
		return left;
	},
	check: async (fs, left) => {
		must(
			left.error === null || left.error instanceof SettingsError || left.error instanceof PowerCut,
			`ended by ${left.error}`,
		);
		const { jobs } = openSettings(HOME, fs).preferences();
		const kept = jobs === undefined ? 0 : left.sent.indexOf(jobs) + 1;
		must(jobs === undefined || kept > 0, `what was never set is read: ${jobs}`);
		must(kept >= left.acked, `lost: change ${kept} is read, ${left.acked} were called kept`);
		await furtherChange(fs);
	},
};

async function furtherChange(fs: FaultFs): Promise<void> {
	await openSettings(HOME, fs).setDie('shop', '6 in', { units: 'in', fields: { clr: 6 } });
	const again = openSettings(HOME, fs);
	must(again.problems.length === 0, `after one more change there is a problem: ${again.problems[0]}`);
	must(again.tooling('shop', '6 in', 'in')?.clr === 6, 'one more change was not read back');
}
