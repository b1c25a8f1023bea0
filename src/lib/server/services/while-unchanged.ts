import type { Context } from '../context.ts';
import { readLakeStamp } from '../storage/lake-changes.ts';

/** Ages and what counts as fresh go by the clock: nothing is kept past its minute. */
const MINUTE_MS = 60_000;

interface Kept<Value> {
	stamp: string;
	span: number;
	value: Value;
}

/** One under way. */
interface Making<Value> {
	of: string;
	made: Promise<Value>;
}

/** What was kept of a lake, if it still stands, and how to keep it anew. */
export interface Look<Value> {
	value: Value | null;
	/** What is stored by now: the same as long as nothing is written. */
	stamp: string;
	/** The same, and the span of the clock. */
	of: string;
	/** For what is made of all that is stored by now: never of anything older. */
	keep: (value: Value) => void;
	/**
	 * What is being made for others who found the same stored, or `make`, which keeps what it makes;
	 * `null` where it is for nobody else, or fails for them.
	 */
	together: (make: () => Promise<Value | null>) => Promise<Value | null>;
}

/**
 * Keeps answers of lakes for as long as nothing is written that may matter to the lake, and for the
 * rest of the minute, or another span. What was asked for longest ago goes first.
 */
export class WhileUnchanged<Value extends object> {
	#kept = new WeakMap<Context['db'], Map<string, Kept<Value>>>();
	#underWay = new WeakMap<Context['db'], Map<string, Promise<Value | null>>>();
	#newest = new WeakMap<Context['db'], Map<string, Making<Value>>>();
	#size: number;
	#span_ms: number;

	/** Of how many answers, and into what spans of the clock: an answer ends with its span. */
	constructor(size: number, span_ms = MINUTE_MS) {
		this.#size = size;
		this.#span_ms = span_ms;
	}

	async look({ db, now }: Context, lakeId: string, key: string): Promise<Look<Value>> {
		const stamp = await readLakeStamp(db, lakeId);
		const span = Math.floor(now().getTime() / this.#span_ms);
		const kept = this.#kept.get(db) ?? new Map<string, Kept<Value>>();
		this.#kept.set(db, kept);
		const keep = (value: Value) => this.#keep(kept, key, { stamp, span, value });
		const of = JSON.stringify([stamp, span]);
		const together: Look<Value>['together'] = (make) => this.#together(db, of + key, make);
		const known = kept.get(key);
		const stands = known?.stamp === stamp && known.span === span;
		if (!stands) return { value: null, stamp, of, keep, together };
		this.#keep(kept, key, known);
		return { value: known.value, stamp, of, keep, together };
	}

	/**
	 * What is kept, else what is being made of the same, else `make`. While it is being made of something
	 * older that is waited for, so that all who ask meanwhile share one that is made of the newest.
	 */
	async oneAtATime(
		ctx: Context,
		lakeId: string,
		key: string,
		make: (look: Look<Value>) => Promise<Value>
	): Promise<Value> {
		const newest = this.#newest.get(ctx.db) ?? new Map<string, Making<Value>>();
		this.#newest.set(ctx.db, newest);
		for (;;) {
			const look = await this.look(ctx, lakeId, key);
			if (look.value !== null) return look.value;
			const other = newest.get(key);
			if (other?.of === look.of) return other.made;
			if (other === undefined) {
				const made = make(look).finally(() => newest.delete(key));
				newest.set(key, { of: look.of, made });
				return made;
			}
			await other.made.catch(() => undefined);
		}
	}

	#together(
		db: Context['db'],
		run: string,
		make: () => Promise<Value | null>
	): Promise<Value | null> {
		const underWay = this.#underWay.get(db) ?? new Map<string, Promise<Value | null>>();
		this.#underWay.set(db, underWay);
		const others = underWay.get(run);
		if (others) return others.catch(() => null);
		const made = make().finally(() => underWay.delete(run));
		underWay.set(run, made);
		return made;
	}

	#keep(kept: Map<string, Kept<Value>>, key: string, value: Kept<Value>): void {
		kept.delete(key);
		kept.set(key, value);
		const [oldest] = kept.keys();
		if (kept.size > this.#size && oldest !== undefined) kept.delete(oldest);
	}
}
