/** A job file that is written and written over on a disk that fails. */
import { JobNotSaved, saveJobFile } from '../../src/job/save.ts';
import { PowerCut } from '../helpers/disk/fault-fs.ts';
import { must, type Subject } from './subject.ts';

const FILE = '/bar.json';
const TEXTS = ['one', 'two, which is longer than a sector: '.padEnd(1300, 'x'), 'three'];

interface Left {
	sent: number;
	acked: number;
	error: unknown;
}

export const jobSubject: Subject<Left> = {
	name: 'job files',
	run(fs) {
		const left: Left = { sent: 0, acked: 0, error: null };
		try {
			for (const [n, text] of TEXTS.entries()) {
				left.sent = n + 1;
				saveJobFile(FILE, text, n > 0, fs);
				left.acked = n + 1;
			}
		} catch (error) {
			left.error = error;
		}
		return left;
	},
	check(fs, left) {
		const { error } = left;
		must(error === null || error instanceof JobNotSaved || error instanceof PowerCut, `ended by ${error}`);
		const kept = fs.files().includes(FILE) ? TEXTS.indexOf(fs.readFileSync(FILE).toString()) + 1 : 0;
		must(kept > 0 || !fs.files().includes(FILE), 'a part of a file stands there');
		must(kept >= left.acked && kept <= left.sent, `text ${kept} is read, ${left.acked} were called saved`);
		must(saveJobFile(FILE, 'further', true, fs), 'one more could not be saved');
		must(fs.readFileSync(FILE).toString() === 'further', 'one more was not read back');
	},
};
