interface Failures {
	count: number;
	last_ms: number;
}

/** So many may fail before anybody has to wait. */
const FREE = 3;
const LONGEST_MS = 60_000;
const FORGOTTEN_MS = 3_600_000;
/** All that is not known together: so many in a minute, from however many addresses. */
const TOGETHER = 20;
const MINUTE_MS = 60_000;
/** More addresses than this are somebody who changes them. */
const KEPT = 10_000;

/**
 * Slows down who tries passphrases. Each address waits twice as long after each failure, up to a
 * minute, so that a stranger behind the same proxy cannot lock the owner out for longer; all of them
 * together may try so many times a minute, so that another address gains little. A browser that has
 * signed in before is counted for itself and not with the others.
 */
export class Tries {
	readonly #failures = new Map<string, Failures>();
	#recent_ms: number[] = [];

	/**
	 * Counts a try as failed until {@link succeeded}, so that many at once gain nothing.
	 * Tells how long to wait instead, in ms; 0 when it may be made.
	 */
	begin(key: string, isKnown: boolean, now_ms: number): number {
		const wait_ms = Math.max(this.#waitOf(key, now_ms), isKnown ? 0 : this.#waitOfAll(now_ms));
		if (wait_ms > 0) return wait_ms;
		const count = (this.#failures.get(key)?.count ?? 0) + 1;
		this.#failures.delete(key);
		this.#failures.set(key, { count, last_ms: now_ms });
		const [oldest] = this.#failures.keys();
		if (this.#failures.size > KEPT && oldest !== undefined) this.#failures.delete(oldest);
		if (!isKnown) this.#recent_ms.push(now_ms);
		return 0;
	}

	succeeded(key: string): void {
		this.#failures.delete(key);
	}

	#waitOf(key: string, now_ms: number): number {
		const failures = this.#failures.get(key);
		if (!failures) return 0;
		const { count, last_ms } = failures;
		if (now_ms - last_ms > FORGOTTEN_MS) this.#failures.delete(key);
		if (count < FREE) return 0;
		const delay_ms = Math.min(1000 * 2 ** (count - FREE), LONGEST_MS);
		return Math.max(0, last_ms + delay_ms - now_ms);
	}

	#waitOfAll(now_ms: number): number {
		this.#recent_ms = this.#recent_ms.filter((at_ms) => now_ms - at_ms < MINUTE_MS);
		const [first] = this.#recent_ms;
		if (first === undefined || this.#recent_ms.length < TOGETHER) return 0;
		return first + MINUTE_MS - now_ms;
	}
}
