const STEPS = ['kB', 'MB', 'GB', 'TB'] as const;

/** An amount of data with two figures, rounded up. @example bytes(1234567) // => '1.3 MB' */
export function bytes(size_B: number): string {
	let amount = size_B / 1000;
	let step = 0;
	while (amount >= 1000 && step < STEPS.length - 1) {
		amount /= 1000;
		step++;
	}
	const shown = amount < 10 ? Math.ceil(amount * 10 - 1e-9) / 10 : Math.ceil(amount - 1e-9);
	return `${shown} ${STEPS[step]}`;
}
