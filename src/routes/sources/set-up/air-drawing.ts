import type { Understood } from './understood.ts';

/** A line of temperatures in percent of the box, with the marks of its scales. */
export interface AirDrawing {
	/** Past and to come apart, each as `x,y x,y`. */
	past: string;
	coming: string;
	/** Round temperatures, as typed on the scale. */
	levels: { y: number; value: number }[];
	/** Now, where it lies inside. */
	now: number | null;
}

/** A longer gap between two points is left open. */
const LONGEST_STEPS = 4;

/** `toUnit` turns °C into what the reader counts in. */
export function airDrawing(
	{ points, now_s }: Understood,
	toUnit: (degC: number) => number
): AirDrawing {
	const values = points.map(({ air_degC }) => toUnit(air_degC));
	const step = roundStep(Math.max(...values) - Math.min(...values));
	const low = Math.floor(Math.min(...values) / step) * step;
	const high = Math.max(Math.ceil(Math.max(...values) / step) * step, low + step);
	const first_s = points[0]?.at_s ?? 0;
	const span_s = Math.max(1, (points.at(-1)?.at_s ?? 1) - first_s);
	const x = (at_s: number) => (100 * (at_s - first_s)) / span_s;
	const y = (value: number) => (100 * (high - value)) / (high - low);
	const usual_s = span_s / Math.max(1, points.length - 1);
	const path = (isOf: (at_s: number) => boolean) =>
		points
			.map(({ at_s, air_degC }, at) => {
				const before = points[at - 1];
				if (!isOf(at_s)) return '';
				const isOpen =
					!before || !isOf(before.at_s) || at_s - before.at_s > LONGEST_STEPS * usual_s;
				return `${isOpen ? 'M' : 'L'}${x(at_s).toFixed(2)} ${y(toUnit(air_degC)).toFixed(2)}`;
			})
			.join('');
	const levels = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, at) => {
		const value = low + at * step;
		return { y: y(value), value };
	});
	const isInside = now_s > first_s && now_s < first_s + span_s;
	return {
		past: path((at_s) => at_s <= now_s),
		coming: path((at_s) => at_s > now_s),
		levels,
		now: isInside ? x(now_s) : null
	};
}

function roundStep(range: number): number {
	return [1, 2, 5, 10, 20, 50].find((step) => range / step <= 5) ?? 100;
}
