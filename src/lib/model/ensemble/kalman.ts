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

/** Beyond so many standard deviations a measurement begins to count less. */
export const ROBUST_FROM = 3;

/**
 * Moves members towards a measurement by the ensemble Kalman filter, each against its own perturbed
 * copy of it, and returns how many standard deviations the measurement was off.
 *
 *   x += g cov(x, y)/(var y + σ²) (z + σ ε - y)
 *
 * Symmetric: what is thinner than expected and what is thicker move members alike. Beyond three
 * standard deviations σ grows with the square of the excess, as with a heavy-tailed error, so that a
 * wrong one cannot wreck the winter. Source: [Evensen2009] [M-hi]; the tail is ours.
 */
export function assimilate(
	{ predicted, value, sd }: Measured,
	movables: readonly Movable[],
	perturbation: Float64Array
): number {
	const count = predicted.length;
	const mean = meanOf(predicted);
	let variance = 0;
	for (let i = 0; i < count; i++) variance += ((predicted[i] ?? 0) - mean) ** 2;
	variance /= Math.max(1, count - 1);
	const off = (value - mean) / Math.sqrt(variance + sd * sd);
	const tail = Math.max(1, Math.abs(off) / ROBUST_FROM);
	const sigma = sd * tail * tail;
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
