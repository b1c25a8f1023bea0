import { noonSunHeight } from './sun.ts';

const OVERCAST_K = 6; // range of a day without sun, from fronts alone [M-lo]
const SUNLIT_K = 7; // what a sun overhead would add [M-lo]

/**
 * Usual difference between a day's highest and lowest temperature, for days that report only a mean.
 *
 *   range = 6 + 7 sin(height of the noon sun in the middle of the month)
 *
 * Gives 9 K in January and 12 K in April at 46 °N, 7 and 10 K at 63 °N: inland climate, common
 * practice, no source. Coasts have less.
 */
export function usualRange_K(latitude: number, month: number): number {
	const middleOfMonth = 30.4 * month - 15;
	return OVERCAST_K + SUNLIT_K * noonSunHeight(latitude, middleOfMonth);
}
