export interface Pace {
	/** So many at once, after a time of quiet. */
	burst: number;
	/** Seconds after which one more is granted. */
	each_s: number;
}

interface Bucket {
	/** What is granted now, fractions included. */
	tokens: number;
	at_ms: number;
}

/** Some 100 bytes each. */
const MOST_KNOWN = 10_000;

/**
 * Grants so many of something to each asker, and then one more every so often. Remembers the askers
 * that were seen last, a bounded number of them; one that is forgotten starts afresh.
 */
export class TokenBuckets {
	readonly #buckets = new Map<string, Bucket>();
	readonly #pace: Pace;
	readonly #most: number;

	constructor(pace: Pace, most = MOST_KNOWN) {
		this.#pace = pace;
		this.#most = most;
	}

	/** Takes one: 0 where it is granted, else the whole seconds to wait for the next. */
	take(asker: string, now_ms: number): number {
		const { burst, each_s } = this.#pace;
		const { tokens, at_ms } = this.#buckets.get(asker) ?? { tokens: burst, at_ms: now_ms };
		// A clock that was set back grants nothing and takes nothing.
		const passed_s = Math.max(0, now_ms - at_ms) / 1000;
		const granted = Math.min(burst, tokens + passed_s / each_s);
		const isGranted = granted >= 1;
		this.#keep(asker, { tokens: isGranted ? granted - 1 : granted, at_ms: now_ms });
		return isGranted ? 0 : Math.max(1, Math.ceil((1 - granted) * each_s));
	}

	get size(): number {
		return this.#buckets.size;
	}

	/** Last in the map is seen last. */
	#keep(asker: string, bucket: Bucket): void {
		this.#buckets.delete(asker);
		this.#buckets.set(asker, bucket);
		if (this.#buckets.size <= this.#most) return;
		const oldest = this.#buckets.keys().next().value;
		if (oldest !== undefined) this.#buckets.delete(oldest);
	}
}
