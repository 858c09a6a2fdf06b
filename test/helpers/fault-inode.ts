/** How the sectors of one file of the failing disk reach it, or do not. */
const SECTOR = 512;

export class Inode {
	data: Buffer = Buffer.alloc(0);
	onDisk: Buffer = Buffer.alloc(0);
	/** Sectors whose flush failed: the cache holds them as clean. */
	readonly forgotten = new Set<number>();
	mtimeMs = 0;
	readonly ino: number;
	readonly isFolder: boolean;
	constructor(ino: number, isFolder: boolean) {
		this.ino = ino;
		this.isFolder = isFolder;
	}

	write(at: number, bytes: Uint8Array): void {
		const grown = Buffer.alloc(Math.max(this.data.length, at + bytes.length));
		this.data.copy(grown);
		grown.set(bytes, at);
		this.data = grown;
		for (let s = Math.floor(at / SECTOR); s * SECTOR < at + bytes.length; s++) this.forgotten.delete(s);
	}

	/** The file with each sector as `choose` says: from the cache, from the disk, or its unflushed bytes as zeros. */
	mixed(size: number, choose: (sector: number) => 'keep' | 'drop' | 'zero'): Buffer {
		const out = Buffer.alloc(size);
		for (let i = 0; i < size; i++) {
			const disk = this.onDisk[i] ?? 0;
			const cache = this.data[i] ?? disk;
			const fate = cache === disk ? 'drop' : choose(Math.floor(i / SECTOR));
			out[i] = fate === 'keep' ? cache : fate === 'zero' && i >= this.onDisk.length ? 0 : disk;
		}
		return out;
	}

	flush(): void {
		this.onDisk = this.mixed(this.data.length, (sector) => (this.forgotten.has(sector) ? 'drop' : 'keep'));
	}

	failToFlush(): void {
		const end = Math.max(this.data.length, this.onDisk.length);
		for (let i = 0; i < end; i++) if (this.data[i] !== this.onDisk[i]) this.forgotten.add(Math.floor(i / SECTOR));
	}
}

/** The file after a power cut; `pick(n)` chooses among n fates. Its length may be the old, the new, or one between. */
export function cutInode(inode: Inode, pick: (n: number) => number): Inode {
	const { data, onDisk } = inode;
	const [short, long] = [Math.min(data.length, onDisk.length), Math.max(data.length, onDisk.length)];
	const size = [data.length, onDisk.length, short + Math.floor((long - short) / 2)][pick(3)]!;
	const fates = new Map<number, 'keep' | 'drop' | 'zero'>();
	const after = new Inode(inode.ino, false);
	after.mtimeMs = inode.mtimeMs;
	after.data = inode.mixed(size, (sector) => {
		const fate = fates.get(sector) ?? (['keep', 'drop', 'zero'] as const)[pick(3)]!;
		fates.set(sector, fate);
		return inode.forgotten.has(sector) ? 'drop' : fate;
	});
	after.onDisk = after.data;
	return after;
}
