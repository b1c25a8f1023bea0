import type { Piece } from './pieces.ts';

const HOUR_s = 3600;

/** The start of the hour of the lake's clock that holds an instant. */
export type HourOf = (at_s: number) => number;

/** Values by the start of their hour. */
export type HourValues = Map<number, number>;

/** Temperatures, depths and speeds: averaged within an hour, kept or interpolated over several. */
export function spreadStates(
	pieces: readonly Piece[],
	hourOf: HourOf,
	isMoment: boolean
): HourValues {
	const sums = new Map<number, { sum: number; count: number }>();
	const add = (hour_s: number, value: number) => {
		const before = sums.get(hour_s);
		sums.set(hour_s, { sum: (before?.sum ?? 0) + value, count: (before?.count ?? 0) + 1 });
	};
	for (const { start_s, length_s, value, next } of pieces) {
		const hours = Math.max(1, Math.round(length_s / HOUR_s));
		// Nothing is known between two moments unless both are.
		const reach = isMoment && next === null ? 1 : hours;
		for (let at = 0; at < reach; at += 1) {
			const share = isMoment && next !== null ? ((next - value) * at) / hours : 0;
			add(hourOf(start_s + at * HOUR_s), value + share);
		}
	}
	return new Map([...sums].map(([hour_s, { sum, count }]) => [hour_s, sum / count]));
}

/**
 * Amounts: added up within an hour, spread evenly over several. Where spans overlap, an hour takes
 * from the shortest, which knows it best; of equal ones from the later.
 */
export function spreadAmounts(pieces: readonly Piece[], hourOf: HourOf): HourValues {
	const spans = new Map<number, { amount: number; length_s: number }>();
	const parts = new Map<number, { amount: number; length_s: number }>();
	for (const { start_s, length_s, value } of pieces) {
		if (length_s < HOUR_s) {
			const hour_s = hourOf(start_s);
			const before = parts.get(hour_s);
			const amount = (before?.amount ?? 0) + value;
			parts.set(hour_s, { amount, length_s: (before?.length_s ?? 0) + length_s });
			continue;
		}
		const hours = Math.round(length_s / HOUR_s);
		for (let at = 0; at < hours; at += 1) {
			const hour_s = hourOf(start_s + at * HOUR_s);
			const before = spans.get(hour_s);
			if (before && before.length_s < length_s) continue;
			spans.set(hour_s, { amount: value / hours, length_s });
		}
	}
	return joined(spans, parts);
}

/** A sum that misses a part of its hour is unknown. */
function joined(
	spans: ReadonlyMap<number, { amount: number }>,
	parts: ReadonlyMap<number, { amount: number; length_s: number }>
): HourValues {
	const hours: HourValues = new Map();
	for (const [hour_s, { amount, length_s }] of parts) {
		if (length_s >= HOUR_s - 1) hours.set(hour_s, amount);
	}
	for (const [hour_s, { amount }] of spans) hours.set(hour_s, amount);
	return hours;
}
