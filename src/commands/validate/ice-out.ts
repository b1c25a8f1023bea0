import type { IsoDate } from '#lib/model/calendar.ts';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { trackIceOut, type IceOutWindow } from '#lib/model/ensemble/ice-out.ts';
import { dayAfterWeather, followWinter, MEMBERS, type Known } from './ensemble-winter.ts';
import type { LakeWinter } from './lake-winter.ts';
import { largestReading } from './lake-winter.ts';
import type { Knowledge } from './modes.ts';
import { mean } from './scores.ts';

/** Days after the winter's largest reading on which ice-out is foretold. */
export const LEADS_d = [0, 14, 30] as const;

export interface IceOutScore {
	n: number;
	mae_d: number | null;
	/** Foretold minus observed: positive is too late. */
	bias_d: number | null;
	/** Share inside the window from the day that one member in ten is open to that of nine in ten. */
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
	isInside80: boolean;
}

/**
 * Ice-out foretold from the weather as measured, for winters whose ice-out is on record and later
 * than the day of issue. Where readings are used those taken by that day are known.
 */
export function iceOutForecasts(
	winters: readonly LakeWinter[],
	knowledge: Knowledge
): IceOutForecast[] {
	return winters.flatMap((winter) => ofWinter(winter, knowledge));
}

function ofWinter(winter: LakeWinter, knowledge: Knowledge): IceOutForecast[] {
	const largest = largestReading(winter);
	const seenOn = winter.iceOutOn;
	const last = winter.weather.at(-1)?.on;
	if (!largest || !seenOn || !last) return [];
	const issues = LEADS_d.map((lead_d) => ({ lead_d, on: addDays(largest.on, lead_d) }));
	const windows = windowsOf(
		winter,
		knowledge,
		issues.map(({ on }) => on).filter((on) => on < seenOn)
	);
	return issues.flatMap(({ lead_d, on }): IceOutForecast[] => {
		const window = windows.get(on);
		if (!window) return [];
		const foretoldOn = window.p50 ?? last;
		return [
			{
				winter,
				lead_d,
				error_d: daysBetween(seenOn, foretoldOn),
				isReached: window.p50 !== null,
				isInside80: seenOn >= (window.p10 ?? last) && seenOn <= (window.p90 ?? seenOn)
			}
		];
	});
}

/** The window by day of issue. Days on which the same readings are known share a run. */
function windowsOf(
	winter: LakeWinter,
	{ usesReadings, memoryOf, parametersOf }: Knowledge,
	issuedOn: readonly IsoDate[]
): Map<IsoDate, IceOutWindow> {
	const knownBy = (on: IsoDate) =>
		usesReadings ? winter.readings.filter((reading) => reading.on <= on) : [];
	const counts = new Set(issuedOn.map((on) => knownBy(on).length));
	const found = [...counts].flatMap((count) => {
		const readings = usesReadings ? winter.readings.slice(0, count) : [];
		const known = { readings, memory: memoryOf(winter), parameters: parametersOf(winter) };
		const days = issuedOn.filter((on) => knownBy(on).length === count);
		return followToOpenWater(winter, known, days);
	});
	return new Map(found);
}

/**
 * Members without ice on the day of issue and after it are left out: that there is still ice is known
 * then. Where all are, the model is ahead of the lake, and says the next day.
 */
function followToOpenWater(
	winter: LakeWinter,
	known: Known,
	issuedOn: readonly IsoDate[]
): [IsoDate, IceOutWindow][] {
	const until = dayAfterWeather(winter);
	if (until === null) return [];
	const trackers = issuedOn.map((on) => ({ on, tracker: trackIceOut(MEMBERS) }));
	followWinter(winter, known, until, ({ on, members }) => {
		for (const each of trackers) if (on >= each.on) each.tracker.see(on, members);
	});
	return trackers.map(({ on, tracker }) => [on, tracker.window() ?? openFrom(addDays(on, 1))]);
}

function openFrom(on: IsoDate): IceOutWindow {
	return { p10: on, p50: on, p90: on, neverFraction: 0 };
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
		coverage80: mean(forecasts.map(({ isInside80 }) => (isInside80 ? 1 : 0))),
		neverReached: forecasts.filter(({ isReached }) => !isReached).length
	};
}
