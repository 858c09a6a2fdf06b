/** The element at `index`, counted from 0. @throws RangeError where the list has none there */
export function at<T>(list: readonly T[], index: number): T {
	const found = list[index];
	if (found === undefined) throw new RangeError(`index ${index} lies outside a list of ${list.length}`);
	return found;
}
