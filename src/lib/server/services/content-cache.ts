import { createHash } from 'node:crypto';

/**
 * Keeps what is dear to make by the content it is made from, so that nothing has to tell when that
 * changes. What was asked for longest ago goes first.
 */
export class ContentCache<Value> {
	#kept = new Map<string, Value>();
	#size: number;

	constructor(size: number) {
		this.#size = size;
	}

	/** The value of this content, made where it is not kept. Functions in it do not count. */
	get(content: unknown, make: () => Value): Value {
		const key = keyOf(content);
		const known = this.#kept.get(key);
		this.#kept.delete(key);
		const value = known ?? make();
		this.#kept.set(key, value);
		const tooMany = Math.max(0, this.#kept.size - this.#size);
		for (const oldest of [...this.#kept.keys()].slice(0, tooMany)) this.#kept.delete(oldest);
		return value;
	}

	forget(content: unknown): void {
		this.#kept.delete(keyOf(content));
	}
}

function keyOf(content: unknown): string {
	return createHash('sha256').update(JSON.stringify(content)).digest('base64');
}
