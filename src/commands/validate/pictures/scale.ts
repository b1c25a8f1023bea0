/** Numbers put on a line of a drawing. */
export interface Scale {
	readonly from: number;
	readonly to: number;
	readonly ticks: readonly number[];
	readonly label: string;
	/** What stands at a tick; the number without it. */
	readonly textOf?: (tick: number) => string;
}

/** A scale over these values that ends at round numbers. */
export function scaleOver(values: readonly number[], label: string, wanted = 5): Scale {
	const low = values.reduce((least, value) => Math.min(least, value), 0);
	const top = values.reduce((most, value) => Math.max(most, value), 0);
	const high = top > low ? top : low + 1;
	const step = roundStep((high - low) / wanted);
	const first = Math.floor(low / step);
	const last = Math.max(first + 1, Math.ceil(high / step));
	const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
	return { from: first * step, to: last * step, ticks, label };
}

/** The next of 1, 2, 5, 10, 20, ... that is no less. */
function roundStep(least: number): number {
	const power = 10 ** Math.floor(Math.log10(least));
	const step = [1, 2, 5].find((each) => each * power >= least * (1 - 1e-9)) ?? 10;
	return step * power;
}

/** Shares from none to all, in percent. */
export const shares = (label: string): Scale => ({
	from: 0,
	to: 1,
	ticks: [0, 0.2, 0.4, 0.6, 0.8, 1],
	label,
	textOf: (tick) => `${Math.round(tick * 100)} %`
});
