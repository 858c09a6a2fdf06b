/** A number as the session's sentences show it: at most `places` decimals, no trailing zeros. */
export function show(value: number, places = 3): string {
	return String(Number(value.toFixed(places)));
}
