import { join } from 'node:path';
import type { ShopChange, WorkshopPort } from '../../../src/screen/benders/workshop-port.ts';
import type { KeptBender } from '../../../src/settings/settings.ts';
import type { KeptDie } from '../../../src/settings/settings-file.ts';
import { keptIn } from '../../../src/tube/kept-tooling.ts';
import { refusal } from './fake-ports.ts';

/** Job files and benders in memory. */
export class FakeWorkshop implements WorkshopPort {
	readonly files = new Map<string, string>();
	readonly changes: ShopChange[] = [];
	/** What the next write throws. */
	fault: Error | null = null;

	constructor(public kept: readonly KeptBender[] = []) {}

	benders(): readonly KeptBender[] {
		return this.kept;
	}

	readonly lookup: WorkshopPort['lookup'] = (bender, die, units) => {
		const record = this.kept.find(({ name }) => name === bender)?.dies.find(({ name }) => name === die);
		return record === undefined ? undefined : keptIn(record, units);
	};

	lessons(): readonly [] {
		return [];
	}

	problems(): readonly string[] {
		return [];
	}

	async change(change: ShopChange): Promise<void> {
		if (this.fault !== null) throw this.fault;
		this.changes.push(change);
		const { bender, die, changes } = change;
		const known = this.kept.find(({ name }) => name === bender) ?? { name: bender, machine: null, dies: [] };
		const others = this.kept.filter(({ name }) => name !== bender);
		if (changes === null) {
			this.kept =
				die === null ? others : [...others, { ...known, dies: known.dies.filter(({ name }) => name !== die) }];
			return;
		}
		const record = (before: KeptBender['machine'] | undefined) => ({
			units: changes.units,
			fields: { ...before?.fields, ...changes.fields } as KeptDie['fields'],
		});
		if (die === null) this.kept = [...others, { ...known, machine: record(known.machine) }];
		else {
			const before = known.dies.find(({ name }) => name === die);
			const dies = [...known.dies.filter(({ name }) => name !== die), { name: die, ...record(before) }];
			this.kept = [...others, { ...known, dies }];
		}
	}

	jobFile(path: string): unknown {
		const text = this.files.get(path);
		if (text === undefined) throw refusal(`${path} is not there.`, 2);
		return JSON.parse(text);
	}

	jobPath(file: string): string {
		return join('yard', file);
	}

	saveJob(path: string, text: string, over: boolean): boolean {
		if (this.fault !== null) throw this.fault;
		if (this.files.has(path) && !over) return false;
		this.files.set(path, text);
		return true;
	}
}
