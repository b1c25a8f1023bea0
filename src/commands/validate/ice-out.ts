import type { IsoDate } from '#lib/model/calendar.ts';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import { runSeason } from '#lib/model/season.ts';
import type { LakeWinter } from './lake-winter.ts';
import { asReading, largestReading } from './lake-winter.ts';
import type { ParametersOf } from './modes.ts';
import { mean } from './scores.ts';

/** No more ice than this is open water. */
const OPEN_WATER_m = 0.001;

/** Days after the winter's largest reading on which ice-out is foretold. */
const LEADS_d = [0, 14, 30] as const;

export interface IceOutScore {
	n: number;
	mae_d: number | null;
	/** Foretold minus observed: positive is too late. */
	bias_d: number | null;
	coverage80: number | null;
	/** Winters whose ice outlasted the weather; they count with the last day of it. */
	neverReached: number;
}

export interface IceOutScores extends IceOutScore {
	after14: IceOutScore;
	after30: IceOutScore;
}

export interface IceOutForecast {
	winter: LakeWinter;
	lead_d: number;
	error_d: number;
	isReached: boolean;
}

/**
 * Ice-out foretold from the weather as measured, for winters whose ice-out is on record and later
 * than the day of issue. With `useReadings` those taken by that day are known.
 */
export function iceOutForecasts(
	winters: readonly LakeWinter[],
	useReadings: boolean,
	parametersOf: ParametersOf
): IceOutForecast[] {
	return winters.flatMap((winter) =>
		LEADS_d.flatMap((lead_d) => {
			const largest = largestReading(winter);
			if (!largest || !winter.iceOutOn) return [];
			const issuedOn = addDays(largest.on, lead_d);
			if (winter.iceOutOn <= issuedOn) return [];
			const foretold = foretell(winter, issuedOn, useReadings, parametersOf);
			return foretold
				? [
						{
							winter,
							lead_d,
							error_d: daysBetween(winter.iceOutOn, foretold.on),
							isReached: foretold.isReached
						}
					]
				: [];
		})
	);
}

function foretell(
	winter: LakeWinter,
	issuedOn: IsoDate,
	useReadings: boolean,
	parametersOf: ParametersOf
): { on: IsoDate; isReached: boolean } | null {
	const last = winter.weather.at(-1);
	if (!last) return null;
	const known = useReadings ? winter.readings.filter((reading) => reading.on <= issuedOn) : [];
	const parameters = parametersOf(winter);
	const days = runSeason({
		lake: winter.lake,
		freezeUpOn: winter.freezeUpOn,
		until: addDays(last.on, 1),
		weather: winter.weather,
		readings: known.map(asReading),
		...(parameters ? { parameters } : {})
	});
	const open = days.find((day) => day.on > issuedOn && total_m(day.column) <= OPEN_WATER_m);
	return open ? { on: open.on, isReached: true } : { on: last.on, isReached: false };
}

export function iceOutScores(forecasts: readonly IceOutForecast[]): IceOutScores {
	const after = (lead_d: number) =>
		iceOutScore(forecasts.filter((forecast) => forecast.lead_d === lead_d));
	return { ...after(0), after14: after(14), after30: after(30) };
}

function iceOutScore(forecasts: readonly IceOutForecast[]): IceOutScore {
	return {
		n: forecasts.length,
		mae_d: mean(forecasts.map(({ error_d }) => Math.abs(error_d))),
		bias_d: mean(forecasts.map(({ error_d }) => error_d)),
		coverage80: null,
		neverReached: forecasts.filter(({ isReached }) => !isReached).length
	};
}
