import type { IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';
import { pastWinters, type PastWinter } from './past-winters.ts';
import { placeOffset, WINTER_SPREAD_K } from './place-offset.ts';
import { normalDraws } from './random.ts';
import { usualDays, usualWinter } from './usual-winter.ts';

/** Past winters that do without the usual climate beside them. Common practice, no source. */
const ENOUGH_WINTERS = 3;

/** What a scenario is called that goes by no winter of the lake. */
export const USUAL_CLIMATE = 'usual climate';

/** Climate for one scenario, day by day, by dates of its own. */
export interface ClimateDraw {
	name: string;
	days: readonly WeatherDay[];
	/** Added to every day. */
	offset_K: number;
}

export interface ClimateInput {
	lake: LakeFacts;
	observed: readonly WeatherDay[];
	from: IsoDate;
	length: number;
	count: number;
	random: () => number;
}

/**
 * Climate for so many scenarios: past winters of the lake, each equally often to within one, and in
 * place of those that are fewer than three the usual climate.
 *
 * A few winters show too little of what can come, so a past one is drawn σw/√n warmer or colder: with
 * that, the mean of the next winter has the spread that n past ones predict for it.
 */
export function climateDraws(input: ClimateInput): ClimateDraw[] {
	const { lake, observed, from, length, count, random } = input;
	const winters = pastWinters(observed, from, length);
	const slots = Math.max(ENOUGH_WINTERS, winters.length);
	const first = Math.floor(random() * slots);
	const place = placeOffset(lake, observed);
	const usual = usualDays(lake, from, length);
	const usualSpread_K = Math.hypot(place.spread_K, WINTER_SPREAD_K);
	const pastSpread_K = WINTER_SPREAD_K / Math.sqrt(Math.max(1, winters.length));
	const warmth = normalDraws(count, random);
	const wetness = normalDraws(count, random);
	return Array.from({ length: count }, (_, index) => {
		const winter = winters[(first + index) % slots];
		const warm = warmth[index] ?? 0;
		if (winter !== undefined) return ofPast(winter, pastSpread_K * warm);
		const draw = {
			offset_K: place.mean_K + usualSpread_K * warm,
			wetness: wetness[index] ?? 0
		};
		const days = usualWinter(usual, lake.latitude, draw, random);
		return { name: USUAL_CLIMATE, days, offset_K: 0 };
	});
}

function ofPast({ winter, days }: PastWinter, offset_K: number): ClimateDraw {
	return { name: `past winter ${winter}`, days, offset_K };
}
