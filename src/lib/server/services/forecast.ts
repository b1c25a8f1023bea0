import { winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import type { Forecast, Quantiles } from '#lib/model/forecast.ts';
import type { Context } from '../context.ts';
import { comingOff, type ComingOff } from './coming-off.ts';
import { lakeView, type LakeView, type ViewOptions } from './lake-view.ts';

/** Asked for a day that its winter does not have. */
export class DayOutsideWinter extends RangeError {
	override name = 'DayOutsideWinter';
	readonly field: 'asOf' | 'until';

	constructor(field: DayOutsideWinter['field'], on: IsoDate, first: IsoDate, last: IsoDate) {
		super(`must lie between ${first} and ${last}, got ${on}`);
		this.field = field;
	}
}

const WHY_NOTHING: Record<Exclude<LakeView['status'], 'ok'>, string> = {
	noWeather: 'No temperature is stored for this winter, so nothing is estimated',
	noFreezeUp: 'No freeze-up is recorded for this winter, so nothing is estimated',
	beforeFreezeUp: 'The day asked for lies before freeze-up, so there is no ice to estimate'
};

/** The forecast, and up to when the weather that it is made from was observed, in UTC. */
export interface ForecastAnswer extends Omit<Forecast, 'leaving'> {
	weatherTo: string | null;
	leaving: ComingOff | null;
}

/**
 * The forecast of a site's winter; without days and loads, and saying why, where there is none.
 * @throws LakeNotFound, SiteNotFound, DayOutsideWinter
 */
export async function getForecast(
	ctx: Context,
	lakeId: string,
	options: ViewOptions
): Promise<ForecastAnswer> {
	const view = await lakeView(ctx, lakeId, options);
	const { site, winter, asOf, status, outlook, upkeep } = view;
	const [first, last] = winterSpan(winter);
	if (asOf < first || asOf > last) throw new DayOutsideWinter('asOf', asOf, first, last);
	if (options.until !== undefined && (options.until < asOf || options.until > last)) {
		throw new DayOutsideWinter('until', options.until, asOf, last);
	}
	const weatherTo = upkeep.lastObservedAt?.toISOString() ?? null;
	if (outlook) {
		const { forecast } = outlook;
		const leaving = await comingOff(ctx, view);
		return {
			...forecast,
			weatherTo,
			leaving,
			cautions: [...upkeep.sentences, ...forecast.cautions]
		};
	}
	const text = status === 'ok' ? WHY_NOTHING.beforeFreezeUp : WHY_NOTHING[status];
	const cautions = [{ code: status, text }];
	const nothing = { days: [], loads: [], iceOut: null, leaving: null, memoryText: null };
	return { lake: lakeId, site, winter, asOf, weatherTo, ...nothing, cautions };
}

const THICKNESSES = ['clear', 'white', 'snow', 'slush', 'total', 'effective'] as const;
const BOUNDS = ['bound_total_m', 'bound_effective_m'];
const QUANTILES = ['p05', 'p10', 'p50', 'p90', 'p95'] as const satisfies (keyof Quantiles)[];

/** The days as a table, a column for each quantile, and last the lower bounds that statuses go by. */
export function forecastToCsv({ days }: Pick<Forecast, 'days'>): string {
	const thicknesses = THICKNESSES.flatMap((name) => QUANTILES.map((q) => `${name}_${q}_m`));
	const header = ['on', 'source', 'air_degC', 'fdd_degCd', 'tdd_degCd', ...thicknesses, ...BOUNDS];
	const rows = days.map((day) => [
		day.on,
		day.source,
		...[day.air_degC, day.fdd_degCd, day.tdd_degCd].map((value) => cell(value, 2)),
		...THICKNESSES.flatMap((name) => QUANTILES.map((q) => cell(day[`${name}_m`][q], 4))),
		...[day.bound?.total_m, day.bound?.effective_m].map((bound_m) => cell(bound_m ?? null, 4))
	]);
	return [header, ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

function cell(value: number | null, digits: number): string {
	return value === null ? '' : String(Number(value.toFixed(digits)));
}
