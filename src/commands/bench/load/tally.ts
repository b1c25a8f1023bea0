/** How requests of a kind went. */
export interface Tally {
	requests: number;
	errors: number;
	/** What the first of them said. */
	firstError: string | null;
	median_ms: number;
	p95_ms: number;
	slowest_ms: number;
}

/** Times requests of a kind; one that fails is counted, and the others go on. */
export function tally() {
	const times_ms: number[] = [];
	const errors: string[] = [];
	return {
		async time(request: () => Promise<void>): Promise<void> {
			const start_ms = performance.now();
			try {
				await request();
			} catch (cause) {
				errors.push(String(cause));
			}
			times_ms.push(performance.now() - start_ms);
		},
		told(): Tally {
			const sorted = times_ms.toSorted((a, b) => a - b);
			const quantile = (part: number) =>
				sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)] ?? 0;
			return {
				requests: sorted.length,
				errors: errors.length,
				firstError: errors[0] ?? null,
				median_ms: quantile(0.5),
				p95_ms: quantile(0.95),
				slowest_ms: sorted.at(-1) ?? 0
			};
		}
	};
}
