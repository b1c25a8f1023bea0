/** A number that was measured, with what each member says it should have been. */
export interface Measured {
	readonly predicted: Float64Array;
	readonly value: number;
	/** Standard deviation of the measurement about what the site's mean would be. */
	readonly sd: number;
}

/** A quantity of the members that a measurement may move, and by how much of what it calls for. */
export interface Movable {
	readonly values: Float64Array;
	readonly gain: number;
}

/** Beyond so many standard deviations above what is expected a measurement begins to count less. */
export const ROBUST_FROM = 3;

/**
 * Moves members towards a measurement by the ensemble Kalman filter, each against its own perturbed
 * copy of it, and returns how many standard deviations the measurement was off.
 *
 *   x += g cov(x, y)/(var y + σ²) (z + σ ε - y)
 *
 * Less than expected and more move members alike, up to three standard deviations. What is further
 * above counts as {@link believedSd} says, so that a mistyped 2 m cannot wreck the winter. What is
 * further below is believed: to doubt a hole that is far too thin is the dangerous mistake.
 * Source: [Evensen2009] [M-hi].
 */
export function assimilate(
	{ predicted, value, sd }: Measured,
	movables: readonly Movable[],
	perturbation: Float64Array
): number {
	const count = predicted.length;
	const mean = meanOf(predicted);
	const variance = varianceOf(predicted);
	const off = (value - mean) / Math.sqrt(variance + sd * sd);
	const sigma = off > 0 ? believedSd(value - mean, variance, sd) : sd;
	for (const { values, gain } of movables) {
		const pull = (gain * covariance(values, predicted, mean)) / (variance + sigma * sigma);
		if (pull === 0) continue;
		for (let i = 0; i < count; i++) {
			const gap = value + sigma * (perturbation[i] ?? 0) - (predicted[i] ?? 0);
			values[i] = (values[i] ?? 0) + pull * gap;
		}
	}
	return off;
}

/**
 * Standard deviation with which a measurement is taken in that lies this far from what is expected.
 *
 *   √(var + σ'²) = √(var + σ²) max(1, (off/3)²)
 *
 * Its pull grows to three standard deviations, and falls from there on: a heavy tail of our own.
 */
export function believedSd(gap: number, variance: number, sd: number): number {
	const whole = variance + sd * sd;
	const excess = (gap * gap) / whole / ROBUST_FROM ** 2;
	return excess <= 1 ? sd : Math.sqrt(whole * excess * excess - variance);
}

function covariance(values: Float64Array, predicted: Float64Array, mean: number): number {
	const own = meanOf(values);
	let sum = 0;
	for (let i = 0; i < values.length; i++)
		sum += ((values[i] ?? 0) - own) * ((predicted[i] ?? 0) - mean);
	return sum / Math.max(1, values.length - 1);
}

export function meanOf(values: Float64Array): number {
	let sum = 0;
	for (let i = 0; i < values.length; i++) sum += values[i] ?? 0;
	return values.length > 0 ? sum / values.length : 0;
}

export function varianceOf(values: Float64Array): number {
	const mean = meanOf(values);
	let sum = 0;
	for (let i = 0; i < values.length; i++) sum += ((values[i] ?? 0) - mean) ** 2;
	return sum / Math.max(1, values.length - 1);
}
