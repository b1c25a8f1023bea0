export interface PageTimes {
	requests: number;
	median_ms: number;
	p95_ms: number;
	slowest_ms: number;
}

/** Somebody reads between two pages. */
const PAUSE_MS = 60;

/** Asks for one page after the other while `goesOn` says so, each read to its end. */
export async function pageTimes(
	pages: readonly string[],
	goesOn: (asked: number) => boolean | Promise<boolean>
): Promise<PageTimes> {
	const times_ms: number[] = [];
	while (await goesOn(times_ms.length)) {
		const start_ms = performance.now();
		const response = await fetch(pages[times_ms.length % pages.length] ?? '');
		await response.text();
		times_ms.push(performance.now() - start_ms);
		if (!response.ok) throw new Error(`${response.url} answered ${response.status}`);
		await new Promise((done) => setTimeout(done, PAUSE_MS));
	}
	const sorted = times_ms.toSorted((a, b) => a - b);
	return {
		requests: sorted.length,
		median_ms: quantile(sorted, 0.5),
		p95_ms: quantile(sorted, 0.95),
		slowest_ms: sorted.at(-1) ?? 0
	};
}

/** The smallest value that so large a part is not above. */
function quantile(sorted: readonly number[], part: number): number {
	return sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)] ?? 0;
}
