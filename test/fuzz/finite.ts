/** Throws unless every number is one. What a state leads back to has been looked at before. */
export function finite(value: unknown): void {
	JSON.stringify(value, (key, each) => {
		if (typeof each === 'number' && !Number.isFinite(each)) throw new Error(`"${key}" is ${each}`);
		return key === 'past' || key === 'finished' ? undefined : each;
	});
}
