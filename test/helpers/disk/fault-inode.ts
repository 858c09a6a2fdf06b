/** How the sectors of one file of the failing disk reach it, or do not. */
const SECTOR = 512;

/** The bytes cut, or filled up with zeros, to this size. */
function sized(bytes: Buffer, size: number): Buffer {
	const out = Buffer.alloc(size);
	bytes.copy(out);
	return out;
}

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

	/** The file with each unflushed sector as `choose` says: from the cache, from the disk, or its new bytes as zeros. */
	mixed(size: number, choose: (sector: number) => 'keep' | 'drop' | 'zero'): Buffer {
		const disk = sized(this.onDisk, size);
		const cache = sized(this.data, size);
		// Beyond its end the cache has no say: a truncation that was not flushed leaves what was there.
		if (this.data.length < this.onDisk.length) this.onDisk.copy(cache, this.data.length, this.data.length);
		for (let from = 0; from < size; from += SECTOR) {
			const to = Math.min(size, from + SECTOR);
			if (disk.subarray(from, to).equals(cache.subarray(from, to))) continue;
			const fate = choose(from / SECTOR);
			if (fate === 'keep') cache.copy(disk, from, from, to);
			else if (fate === 'zero') disk.fill(0, Math.max(from, this.onDisk.length), to);
		}
		return disk;
	}

	flush(): void {
		this.onDisk = this.mixed(this.data.length, (sector) => (this.forgotten.has(sector) ? 'drop' : 'keep'));
	}

	failToFlush(): void {
		const end = Math.max(this.data.length, this.onDisk.length);
		const [cache, disk] = [sized(this.data, end), sized(this.onDisk, end)];
		for (let from = 0; from < end; from += SECTOR)
			if (!cache.subarray(from, from + SECTOR).equals(disk.subarray(from, from + SECTOR)))
				this.forgotten.add(from / SECTOR);
	}
}

/** The file after a power cut; `pick(n)` chooses among n fates. Its length may be the old, the new, or one between. */
export function cutInode(inode: Inode, pick: (n: number) => number): Inode {
	const { data, onDisk } = inode;
	const [short, long] = [Math.min(data.length, onDisk.length), Math.max(data.length, onDisk.length)];
	const size = [data.length, onDisk.length, short + Math.floor((long - short) / 2)][pick(3)]!;
	const after = new Inode(inode.ino, false);
	after.mtimeMs = inode.mtimeMs;
	after.data = inode.mixed(size, (sector) => {
		const fate = (['keep', 'drop', 'zero'] as const)[pick(3)]!;
		return inode.forgotten.has(sector) ? 'drop' : fate;
	});
	after.onDisk = after.data;
	return after;
}
