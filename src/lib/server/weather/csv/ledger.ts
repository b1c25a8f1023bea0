import { mergeRows, type Entry, type Values } from './repeats.ts';

/** Doubled as often as needed. */
const FIRST_ROOM = 1024;

/** 114 years of hours. */
export const MOST_ENTRIES = 1_000_000;

/** Remembers every day or hour of a file by its key, in flat arrays for their size. */
export class Ledger {
	readonly #width: number;
	readonly #at = new Map<number, number>();
	#values: Float64Array;
	#lines: Uint32Array;

	constructor(width: number) {
		this.#width = width;
		this.#values = new Float64Array(FIRST_ROOM * width);
		this.#lines = new Uint32Array(FIRST_ROOM);
	}

	get isFull(): boolean {
		return this.#at.size >= MOST_ENTRIES;
	}

	put(key: number, line: number, values: Values): Entry {
		const known = this.#at.get(key);
		if (known === undefined) {
			const index = this.#at.size;
			this.#at.set(key, index);
			this.#grow(index);
			this.#write(index, line, values);
			return { status: 'new', values, earlierLine: line };
		}
		const entry = mergeRows(this.#read(known), this.#lines[known] ?? 0, values);
		if (entry.status !== 'repeated') this.#write(known, line, entry.values);
		return entry;
	}

	#read(index: number): Values {
		const start = index * this.#width;
		return Array.from(this.#values.subarray(start, start + this.#width), (value) =>
			Number.isNaN(value) ? null : value
		);
	}

	#write(index: number, line: number, values: Values): void {
		this.#values.set(
			values.map((value) => value ?? NaN),
			index * this.#width
		);
		this.#lines[index] = line;
	}

	#grow(index: number): void {
		if (index < this.#lines.length) return;
		const values = new Float64Array(this.#values.length * 2);
		const lines = new Uint32Array(this.#lines.length * 2);
		values.set(this.#values);
		lines.set(this.#lines);
		this.#values = values;
		this.#lines = lines;
	}
}
