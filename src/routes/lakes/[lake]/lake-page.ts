import type { IsoDate } from '#lib/model/calendar.ts';
import type { Outlook } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import { readingPoints, type ReadingPoint } from '#lib/ui/charts/reading-points.ts';
import { knownDays, type SeriesDay } from '#lib/ui/charts/series.ts';

/** What the lake's page shows, without the long lists that only the API gives. */
export function lakePage(view: LakeView) {
	const { lake, winter, winters, today, asOf, status, weather, record } = view;
	return {
		lake: { id: lake.id, name: lake.name, isInvented: lake.isInvented, chartSet: lake.chartSet },
		winter,
		winters: winters.includes(winter) ? winters : [winter, ...winters],
		today,
		asOf,
		status,
		weather,
		freezeUpOn: record.freezeUpOn,
		lastReading: lastReading(view.readings, asOf),
		ice: view.outlook ? iceOf(view.outlook, readingPoints(view.readings, asOf), asOf) : null
	};
}

export type LakePage = ReturnType<typeof lakePage>;

/** The estimate and all that is drawn of it. */
export type Ice = NonNullable<LakePage['ice']>;

function iceOf(outlook: Outlook, readings: ReadingPoint[], asOf: IsoDate) {
	const { forecast, today: _, ...facts } = outlook;
	const days: SeriesDay[] = knownDays(forecast.days);
	return {
		...facts,
		/** `null` where the weather doesn't reach to `asOf`. */
		day: days.find((day) => day.on === asOf) ?? null,
		days,
		readings,
		loads: forecast.loads.map(({ days: _days, ...load }) => load),
		cautions: forecast.cautions
	};
}

export type PageLoad = Ice['loads'][number];

function lastReading(readings: readonly Reading[], asOf: IsoDate): Reading | null {
	return readings
		.filter((reading) => reading.on <= asOf)
		.reduce<Reading | null>(
			(last, reading) => (last === null || reading.on >= last.on ? reading : last),
			null
		);
}
