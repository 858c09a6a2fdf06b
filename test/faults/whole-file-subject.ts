/** Files that are written and written over, whole or not at all, on a disk that fails: jobs and pages to print. */
import { PdfNotSaved, savePdf } from '../../src/cli/save-pdf.ts';
import { JobNotSaved, saveJobFile } from '../../src/job/save.ts';
import { type FaultFs, PowerCut } from '../helpers/disk/fault-fs.ts';
import { must, type Subject } from './subject.ts';

const FILE = '/bar';
const TEXTS = ['one', 'two, which is longer than a sector: '.padEnd(1300, 'x'), 'three'];

interface Left {
	sent: number;
	acked: number;
	error: unknown;
}

/** Writes a text under a name, over what is there where that is wanted. */
type Save = (text: string, over: boolean, fs: FaultFs) => void;

function wholeFileSubject(name: string, save: Save, isOurs: (error: unknown) => boolean): Subject<Left> {
	return {
		name,
		run(fs) {
			const left: Left = { sent: 0, acked: 0, error: null };
			try {
				for (const [n, text] of TEXTS.entries()) {
					left.sent = n + 1;
					save(text, n > 0, fs);
					left.acked = n + 1;
				}
			} catch (error) {
				left.error = error;
			}
			return left;
		},
		check(fs, { sent, acked, error }) {
			must(error === null || isOurs(error) || error instanceof PowerCut, `ended by ${error}`);
			const isThere = fs.files().includes(FILE);
			const kept = isThere ? TEXTS.indexOf(fs.readFileSync(FILE).toString()) + 1 : 0;
			must(kept > 0 || !isThere, 'a part of a file stands there');
			must(kept >= acked && kept <= sent, `text ${kept} is read, ${acked} were called saved`);
			save('further', true, fs);
			must(fs.readFileSync(FILE).toString() === 'further', 'one more was not read back');
		},
	};
}

export const jobSubject = wholeFileSubject(
	'job files',
	(text, over, fs) => must(saveJobFile(FILE, text, over, fs), 'a free name was taken'),
	(error) => error instanceof JobNotSaved,
);

export const paperSubject = wholeFileSubject(
	'pages to print',
	(text, over, fs) => savePdf(FILE, Buffer.from(text), over, fs),
	(error) => error instanceof PdfNotSaved,
);
