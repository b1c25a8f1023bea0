import type { IsoDate } from '#lib/model/calendar.ts';
import type { Forecast, ForecastLoad } from '#lib/model/forecast.ts';
import { isVehicle, type LoadCase } from '#lib/model/load-case.ts';
import type { Outlook } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import { MEMBERS } from '#lib/model/site-estimate.ts';
import { iceOutByNow } from '#lib/server/services/ice-out-by-now.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import { localMinute } from '#lib/server/services/local-day.ts';
import { bandDays, type Band } from '#lib/ui/charts/band.ts';
import { readingPoints, type ReadingPoint } from '#lib/ui/charts/reading-points.ts';
import { borders } from '#lib/ui/charts/regions.ts';
import { knownDays, type SeriesDay } from '#lib/ui/charts/series.ts';
import { lastEstimated, shownDays } from '#lib/ui/charts/shown-days.ts';
import { stripData, type StripData, type StripFacts } from '#lib/ui/charts/strip-data.ts';
import { climateMark } from '#lib/ui/climate-words.ts';
import { markOf } from '#lib/ui/mark-names.ts';
import { answerOf } from '#lib/ui/what-if/answer.ts';
import { upkeepOf } from './upkeep.ts';

/** What the lake's page shows, without the long lists that only the API gives. */
export function lakePage(view: LakeView) {
	const { lake, site, winter, winters, today, asOf, status, weather, record, upkeep } = view;
	const weatherAt = upkeep.lastObservedAt;
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented, chartSet: lake.chartSet },
		site,
		winter,
		winters: winters.includes(winter) ? winters : [winter, ...winters],
		today,
		asOf,
		status,
		weather,
		/** What the status is made from was observed up to then, by the lake's clock. */
		weatherTo: weatherAt && localMinute(weatherAt, lake.timeZone),
		/** How old what sources told is and whose, `null` where none has told anything. */
		upkeep: broughtBySources(upkeep) ? upkeepOf(view) : null,
		freezeUpOn: record.freezeUpOn,
		iceOutOn: iceOutByNow(view),
		lastReading: lastReading(view.readings, view.isPresent && today > asOf ? today : asOf),
		ice: view.outlook ? iceOf(view.outlook, view, readingPoints(view.readings, asOf)) : null
	};
}

export type LakePage = ReturnType<typeof lakePage>;

/** The estimate and all that is drawn of it. */
export type Ice = NonNullable<LakePage['ice']>;

function iceOf(outlook: Outlook, view: LakeView, readings: ReadingPoint[]) {
	const { asOf, today } = view;
	const { forecast: whole, today: _, ...facts } = outlook;
	const isShown = ({ id }: { id: string }) => view.shown.includes(id);
	const loads = view.loads.filter(isShown);
	const forecast = { ...whole, loads: whole.loads.filter(isShown) };
	const shown = shownDays(forecast);
	const series: SeriesDay[] = knownDays(shown.days);
	const days = series.filter(({ on }) => on <= asOf);
	const coming = series.filter(({ on }) => on > asOf);
	const { snowKnown } = facts;
	const climate = climateMark(facts.climate);
	const goneOn = iceOutByNow(view);
	const isGoneSince = (goneOn ?? asOf) > asOf;
	const answersTo = (asked: readonly LoadCase[]) =>
		asked.flatMap((load) => {
			const answer = whole.loads.find(({ id }) => id === load.id);
			return answer ? [pageLoad(load, answer)] : [];
		});
	const answers = answersTo(loads);
	const all = answersTo(view.loads);
	return {
		...facts,
		/** `null` where the weather doesn't reach to `asOf`, and of ice that has gone since. */
		day: (isGoneSince ? null : days.find((day) => day.on === asOf)) ?? null,
		days,
		/** What may come after `asOf`, with the band of all days, and the strip; empty or `null` where not estimated. */
		coming,
		band: bandOf(shown, { today, climate }),
		strip: stripOf(shown, { today, snowKnown, isOpen: goneOn !== null, climate }),
		/** When the ice goes, in the days up to `to`; `null` where none to come are estimated. */
		iceOut: coming.length === 0 ? null : { dates: forecast.iceOut, to: lastEstimated(forecast) },
		memoryText: forecast.memoryText,
		whatIf: coming.length === 0 ? null : { asIs: answerOf(forecast), loads, members: MEMBERS },
		readings,
		loads: answers,
		bounds: { onFoot_m: boundOf(all, false), vehicles_m: boundOf(all, true) },
		/** What is wrong with the weather weighs on all that follows from it. */
		cautions: [...view.upkeep.sentences, ...forecast.cautions]
	};
}

function broughtBySources({
	attributions,
	forecastIssuedAt,
	sentences
}: LakeView['upkeep']): boolean {
	return attributions.length > 0 || forecastIssuedAt !== null || sentences.length > 0;
}

function bandOf(
	{ days, asOf }: Forecast,
	facts: { today: IsoDate; climate: string }
): Omit<Band, 'units'> | null {
	const banded = bandDays(days);
	return banded.length === 0 ? null : { days: banded, borders: borders(days, { asOf, ...facts }) };
}

function stripOf(forecast: Forecast, facts: StripFacts): StripData | null {
	const strip = stripData(forecast, facts);
	const isEstimated = strip?.loads.some(({ met_percent }) =>
		met_percent.some((met) => met !== null)
	);
	return isEstimated ? strip : null;
}

/** A load as a page shows it, without its long list of days. */
export function pageLoad(load: LoadCase, forecast: ForecastLoad) {
	const { days: _, ...answer } = forecast;
	return {
		...answer,
		isVehicle: isVehicle(load),
		/** What the pictures call it. */
		mark: markOf(load)
	};
}

export type PageLoad = ReturnType<typeof pageLoad>;

/** All loads on foot are held against one bound, all vehicles against another. */
function boundOf(loads: readonly PageLoad[], ofVehicles: boolean): number | null {
	return loads.find((load) => load.isVehicle === ofVehicles)?.bound_m ?? null;
}

/** The last one taken by a day. */
export function lastReading(readings: readonly Reading[], asOf: IsoDate): Reading | null {
	return readings
		.filter(({ on, kind, holes }) => on <= asOf && (kind !== 'measured' || holes.length > 0))
		.reduce<Reading | null>(
			(last, reading) => (last === null || reading.on >= last.on ? reading : last),
			null
		);
}
