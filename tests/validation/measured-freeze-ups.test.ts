import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import { freezeChances } from '#lib/model/early/freeze-chance.ts';
import { earlierFreezeUps, freezeThreshold } from '#lib/model/early/freeze-threshold.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from '../support/weather-day.ts';

const FOLDER = '../shared/winters';
type Row = Record<string, string>;

interface MeasuredLake {
	lake: LakeFacts;
	weather: WeatherDay[];
	records: SiteWinter[];
}

describe.runIf(existsSync(FOLDER))(
	'freeze-ups of the measured lakes, by the weather as it was',
	() => {
		test('a lake of which no freeze-up is known is off by under a week, and its band holds', () => {
			const all = measuredLakes().flatMap((one) =>
				one.records.map((record) => score(one, record, []))
			);
			expect(all).toHaveLength(106);
			expect(meanOf(all.map(({ off_d }) => Math.abs(off_d)))).toBeLessThan(7);
			expect(share(all, ({ pFrozen }) => pFrozen > 0.05 && pFrozen < 0.95)).toBeGreaterThan(0.8);
		});

		test('its other freeze-ups make it better: off by under five days, and its band still holds', () => {
			const all = measuredLakes().flatMap((one) =>
				one.records.map((record) =>
					score(
						one,
						record,
						one.records.filter((each) => each !== record)
					)
				)
			);
			expect(meanOf(all.map(({ off_d }) => Math.abs(off_d)))).toBeLessThan(5);
			expect(share(all, ({ pFrozen }) => pFrozen > 0.05 && pFrozen < 0.95)).toBeGreaterThan(0.8);
		});
	}
);

/** How far the even chance lies off the day, and what chance had been told by the day before it. */
function score({ lake, weather }: MeasuredLake, record: SiteWinter, others: SiteWinter[]) {
	const [first, last] = winterSpan(record.winter);
	const threshold = freezeThreshold(earlierFreezeUps(others, weather, lake));
	const days = weather.filter(({ on }) => on >= first && on <= last);
	const [start, coming] = [days.slice(0, 60), days.slice(60)];
	const chances = freezeChances({ lake, known: start, futures: [{ days: coming }], threshold });
	const on = record.freezeUpOn ?? first;
	const even = chances.find(({ pFrozen }) => pFrozen >= 0.5)?.on ?? last;
	const before = chances.find((each) => each.on === addDays(on, -1));
	// A threshold passed in the evening is ice on the next day.
	return { off_d: daysBetween(on, even) + 1, pFrozen: before?.pFrozen ?? 0 };
}

function measuredLakes(): MeasuredLake[] {
	return rows(`${FOLDER}/lakes.csv`).map((row) => {
		const freezeUps = rows(`${FOLDER}/${row['dataset']}/freezeup.csv`);
		const ofLake = freezeUps.filter((each) => each['lake'] === row['lake']);
		return {
			lake: {
				latitude: Number(row['lat']),
				longitude: Number(row['lon']),
				elevation_m: row['elevation_m'] ? Number(row['elevation_m']) : null,
				area_km2: Number(row['area_km2']),
				meanDepth_m: Number(row['mean_depth_m']),
				water: 'lake'
			},
			weather: rows(`${FOLDER}/${row['dataset']}/weather.csv`).map((day) =>
				weatherDay(day['date'] ?? '', {
					air_degC: day['tmean_c'] ? Number(day['tmean_c']) : null
				})
			),
			records: ofLake
				.filter((each) => each['freeze_up_date'])
				.map((each) => recordOf(each['winter'] ?? '', each['freeze_up_date'] ?? ''))
		};
	});
}

function recordOf(winter: string, freezeUpOn: IsoDate): SiteWinter {
	return { winter, freezeUpOn, freezeUpBy: null, iceOutOn: null, events: [] };
}

function rows(path: string): Row[] {
	const [header = '', ...lines] = readFileSync(path, 'utf8').trim().split('\n');
	const names = header.trim().split(',');
	return lines.map((line) =>
		Object.fromEntries(
			line
				.trim()
				.split(',')
				.map((cell, index) => [names[index] ?? '', cell])
		)
	);
}

function meanOf(values: readonly number[]): number {
	return values.reduce((sum, each) => sum + each, 0) / values.length;
}

function share<Item>(items: readonly Item[], holds: (item: Item) => boolean): number {
	return items.filter(holds).length / items.length;
}
