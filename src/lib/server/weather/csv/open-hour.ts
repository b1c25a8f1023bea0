import type { RowProblem } from './problem.ts';
import { duplicateOf, mergeRows, type Values } from './repeats.ts';
import type { RowValues } from './row-values.ts';

/** An hour whose rows are being read: temperatures are averaged, precipitation is summed. */
export class OpenHour {
	readonly start_s: number;
	/** Of the first row of the hour. */
	readonly line: number;
	readonly #rows = new Map<number, { line: number; values: Values }>();

	constructor(start_s: number, line: number) {
		this.start_s = start_s;
		this.line = line;
	}

	add(at_s: number, line: number, values: RowValues): RowProblem | null {
		const { air, precipitation, snowfall, landSnow, wind } = values;
		const row = [air, precipitation, snowfall, landSnow, wind];
		const earlier = this.#rows.get(at_s);
		const entry = earlier ? mergeRows(earlier.values, earlier.line, row) : null;
		if (entry?.status !== 'repeated') this.#rows.set(at_s, { line, values: entry?.values ?? row });
		return entry && duplicateOf(entry, line, 'time');
	}

	/** The values of the hour. A sum with fewer parts than `expected` is unknown. */
	values(expected: number): Values {
		const rows = [...this.#rows.values()];
		const column = (at: number) => rows.map(({ values }) => values[at] ?? null);
		const isWhole = this.#rows.size >= expected;
		return [
			mean(column(0)),
			isWhole ? sum(column(1)) : null,
			isWhole ? sum(column(2)) : null,
			column(3).findLast((depth) => depth !== null) ?? null,
			mean(column(4))
		];
	}
}

function mean(values: Values): number | null {
	const known = values.filter((value) => value !== null);
	return known.length === 0
		? null
		: known.reduce((total, value) => total + value, 0) / known.length;
}

function sum(values: Values): number | null {
	return values.reduce<number | null>(
		(total, value) => (total === null || value === null ? null : total + value),
		0
	);
}
