/** Each distinct value once, by its number. */
export class Once<T> {
	readonly #numbers = new Map<string, number>();
	readonly all: T[];

	constructor(before: readonly T[]) {
		this.all = [...before];
		for (const [number, value] of before.entries()) this.#numbers.set(JSON.stringify(value), number);
	}

	of(value: T): number {
		const key = JSON.stringify(value);
		const known = this.#numbers.get(key);
		if (known !== undefined) return known;
		this.#numbers.set(key, this.all.length);
		return this.all.push(value) - 1;
	}
}
