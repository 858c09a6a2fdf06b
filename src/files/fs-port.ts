import fs from 'node:fs';

export interface FileFacts {
	size: number;
	ino: number;
	dev: number;
	mtimeMs: number;
	/** No folder, pipe or device. */
	isFile(): boolean;
}

/** The file system calls that writing makes, and no others: tests put a failing disk in their place. Errors carry an errno `code`. */
export interface FsPort {
	openSync(path: string, flags: number, mode?: number): number;
	closeSync(fd: number): void;
	/** Writes at the file's end or position; may write fewer bytes than asked. */
	writeSync(fd: number, bytes: Uint8Array, offset: number, length: number): number;
	fdatasyncSync(fd: number): void;
	fsyncSync(fd: number): void;
	ftruncateSync(fd: number, size: number): void;
	fstatSync(fd: number): FileFacts;
	statSync(path: string): FileFacts;
	readFileSync(path: string): Buffer;
	readdirSync(path: string): string[];
	mkdirSync(path: string, mode: number): void;
	unlinkSync(path: string): void;
	/** Gives a file a second name, which must be free. */
	linkSync(from: string, to: string): void;
	/** Puts a file under another name, over what had it. */
	renameSync(from: string, to: string): void;
}

export const realFs: FsPort = {
	openSync: (path, flags, mode) => fs.openSync(path, flags, mode),
	closeSync: (fd) => fs.closeSync(fd),
	writeSync: (fd, bytes, offset, length) => fs.writeSync(fd, bytes, offset, length),
	fdatasyncSync: (fd) => fs.fdatasyncSync(fd),
	fsyncSync: (fd) => fs.fsyncSync(fd),
	ftruncateSync: (fd, size) => fs.ftruncateSync(fd, size),
	fstatSync: (fd) => fs.fstatSync(fd),
	statSync: (path) => fs.statSync(path),
	readFileSync: (path) => fs.readFileSync(path),
	readdirSync: (path) => fs.readdirSync(path),
	mkdirSync: (path, mode) => fs.mkdirSync(path, mode),
	unlinkSync: (path) => fs.unlinkSync(path),
	linkSync: (from, to) => fs.linkSync(from, to),
	renameSync: (from, to) => fs.renameSync(from, to),
};
