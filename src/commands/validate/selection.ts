import type { IsoDate } from '#lib/model/calendar.ts';
import { winterOf, winterSpan } from '#lib/model/calendar.ts';
import { dayDegrees } from '#lib/model/degree-days.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { LakeWinter, ScoredReading } from './lake-winter.ts';
import { plainDegreeDays } from './plain-degree-days.ts';
import type { Dataset } from './tidy-folder.ts';
import type { FreezeUpRow, IceRow } from '#lib/server/services/tidy/rows.ts';

const LEAST_KNOWN_FRACTION = 0.9;
const LEAST_FROST_degCd = 5;

export type LeftOutReason =
	| 'noThickness'
	| 'doubtful'
	| 'unknownLake'
	| 'noFreezeUp'
	| 'opened'
	| 'notAfterFreezeUp'
	| 'weatherGaps'
	| 'littleFrost';

export interface Selection {
	winters: LakeWinter[];
	/** Rows of `ice.csv` that are not scored, by reason. */
	leftOut: Record<LeftOutReason, number>;
}

type UnphasedReading = Omit<ScoredReading, 'phase'>;

/** The winters and readings that count, by the rules of the tidy winters folder. */
export function selectScored(datasets: readonly Dataset[]): Selection {
	const leftOut: Selection['leftOut'] = {
		noThickness: 0,
		doubtful: 0,
		unknownLake: 0,
		noFreezeUp: 0,
		opened: 0,
		notAfterFreezeUp: 0,
		weatherGaps: 0,
		littleFrost: 0
	};
	const winters = datasets.flatMap((dataset) => selectDataset(dataset, leftOut));
	return { winters, leftOut };
}

function selectDataset(dataset: Dataset, leftOut: Selection['leftOut']): LakeWinter[] {
	return byLakeAndWinter(dataset.ice).flatMap((rows) => {
		const winter = selectWinter(dataset, rows, leftOut);
		return winter ? [winter] : [];
	});
}

function byLakeAndWinter(ice: readonly IceRow[]): IceRow[][] {
	const groups = new Map<string, IceRow[]>();
	for (const row of ice) {
		const key = `${row.lake} ${winterOf(row.date)}`;
		groups.set(key, [...(groups.get(key) ?? []), row]);
	}
	return [...groups.values()];
}

function selectWinter(
	dataset: Dataset,
	rows: IceRow[],
	leftOut: Selection['leftOut']
): LakeWinter | null {
	const [first] = rows;
	if (!first) return null;
	const winter = winterOf(first.date);
	const lake = dataset.lakes.get(first.lake);
	const record = dataset.winters.find((row) => row.lake === first.lake && row.winter === winter);
	const reason = winterLeftOut(lake, record);
	if (reason !== null || !lake || !record?.freeze_up_date) {
		leftOut[reason ?? 'noFreezeUp'] += rows.length;
		return null;
	}
	const freezeUpOn = record.freeze_up_date;
	const [from, to] = winterSpan(winter);
	const weather = dataset.weather.filter((day) => day.on >= from && day.on <= to);
	const readings = rows.flatMap((row) => {
		const kept = selectReading(row, freezeUpOn, weather, lake);
		if (typeof kept !== 'string') return [kept];
		leftOut[kept] += 1;
		return [];
	});
	if (readings.length === 0) return null;
	return {
		dataset: dataset.name,
		lakeKey: `${dataset.name}/${first.lake}`,
		lake,
		winter,
		freezeUpOn,
		iceOutOn: record.ice_out_date,
		weather,
		readings: withPhases(readings)
	};
}

function winterLeftOut(lake?: LakeFacts, record?: FreezeUpRow): LeftOutReason | null {
	if (!lake) return 'unknownLake';
	if (!record?.freeze_up_date) return 'noFreezeUp';
	return /\bopen(ed)?\b/i.test(record.notes) ? 'opened' : null;
}

function selectReading(
	row: IceRow,
	freezeUpOn: IsoDate,
	weather: readonly WeatherDay[],
	lake: LakeFacts
): UnphasedReading | LeftOutReason {
	if (row.total_cm === null) return 'noThickness';
	if (/spike|suspect_value/.test(row.qc)) return 'doubtful';
	if (row.date <= freezeUpOn) return 'notAfterFreezeUp';
	const plain = plainDegreeDays(weather, freezeUpOn, row.date);
	if (plain.knownFraction < LEAST_KNOWN_FRACTION) return 'weatherGaps';
	const soFar = weather.filter((day) => day.on >= freezeUpOn && day.on < row.date);
	if (frost_degCd(soFar, lake.latitude) < LEAST_FROST_degCd) return 'littleFrost';
	return {
		on: row.date,
		total_m: row.total_cm / 100,
		clear_m: metres(row.clear_cm),
		white_m: metres(row.white_cm),
		snow_m: metres(row.snow_cm),
		layersDisagree: row.qc.includes('layers_do_not_sum'),
		plainFdd_degCd: plain.fdd_degCd,
		plainTdd_degCd: plain.tdd_degCd
	};
}

/** By the model's own convention, which splits a day by its range. */
function frost_degCd(weather: readonly WeatherDay[], latitude: number): number {
	return weather.reduce((sum, day) => sum + (dayDegrees(day, latitude)?.freezing_degCd ?? 0), 0);
}

function withPhases(unphased: readonly UnphasedReading[]): ScoredReading[] {
	const readings = unphased.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
	const largest_m = Math.max(...readings.map((reading) => reading.total_m));
	const turn = readings.findIndex((reading) => reading.total_m === largest_m);
	return readings.map((reading, index) => ({
		...reading,
		phase: index <= turn ? 'growth' : 'decay'
	}));
}

function metres(value_cm: number | null): number | null {
	return value_cm === null ? null : value_cm / 100;
}
