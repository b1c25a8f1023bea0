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
/** Ends the name of one that goes by a winter whose record ends early. */
export const THEN_USUAL = ', then usual climate';

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
 * that, the mean of the next winter has the spread that n past ones predict for it. One whose record
 * ends early goes on as the usual climate.
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
		const usualOffset_K = place.mean_K + usualSpread_K * warm;
		const invented = (from: number, offset_K: number): WeatherDay[] => {
			const draw = { offset_K, wetness: wetness[index] ?? 0 };
			return usualWinter(usual.slice(from), lake.latitude, draw, random);
		};
		if (winter === undefined)
			return { name: USUAL_CLIMATE, days: invented(0, usualOffset_K), offset_K: 0 };
		const offset_K = pastSpread_K * warm;
		return ofPast(winter, offset_K, invented(winter.days.length, usualOffset_K - offset_K));
	});
}

function ofPast(
	{ winter, days }: PastWinter,
	offset_K: number,
	after: readonly WeatherDay[]
): ClimateDraw {
	const name = `past winter ${winter}${after.length > 0 ? THEN_USUAL : ''}`;
	return { name, days: [...days, ...after], offset_K };
}
