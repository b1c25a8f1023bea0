import type { Call, WeatherSource } from '../../weather/source/contract.ts';

/**
 * Whether all that a source brought before would be asked for and read in the same way now. More
 * addresses, other limits and another reach change nothing of what is there.
 */
export function readsAlike(before: WeatherSource, after: WeatherSource): boolean {
	const now = new Set(after.calls.map(howRead));
	return before.calls.every((call) => now.has(howRead(call)));
}

function howRead({ part, first, address, headers, format, mapping }: Call): string {
	return canonical({ part, first, address, headers, format, mapping });
}

/** Field by field in the order of their names: forms and imports write them in orders of their own. */
function canonical(value: unknown): string {
	return JSON.stringify(value, (_key, inner: unknown) =>
		typeof inner === 'object' && inner !== null && !Array.isArray(inner)
			? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
			: inner
	);
}
