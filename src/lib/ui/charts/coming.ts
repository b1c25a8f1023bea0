import { shortDay } from '../format/day.ts';
import { thickness, thicknessNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { BandDay } from './band.ts';
import type { Region } from './regions.ts';
import type { SeriesDay } from './series.ts';
import type { SeriesTable } from './series-tables.ts';
import { weekly } from './series.ts';

const GOES_BY: Record<Region, string> = {
	observed: 'measured weather',
	forecast: 'forecast',
	climate: 'past winters',
	unknown: 'no weather'
};

/** What the part of the thickness chart past the day asked for shows. */
export function comingSentence(
	coming: readonly SeriesDay[],
	band: readonly BandDay[],
	units: Units
): string | null {
	const [first, last] = [coming[0], coming.at(-1)];
	if (!first || !last) return null;
	const peak = coming.reduce((most, day) => (day.total_m > most.total_m ? day : most), first);
	const regions = band.filter(({ on }) => on >= first.on).map(({ region }) => GOES_BY[region]);
	const by = [...new Set(regions)].join(', then ');
	return `From there to ${shortDay(last.on)} by ${by || 'what may come'}: at most ${thickness(peak.total_m, units)} on ${shortDay(peak.on)}${rangeOn(peak.on, band, units)}.`;
}

/** Week by week what may come, and what that goes by. */
export function comingTable(
	coming: readonly SeriesDay[],
	band: readonly BandDay[],
	units: Units
): SeriesTable {
	const bandOn = new Map(band.map((day) => [day.on, day]));
	return {
		columns: ['Day', 'Goes by', 'Estimate', 'Nine holes in ten'],
		rows: weekly(coming).map(({ on, total_m }) => {
			const day = bandOn.get(on);
			return {
				id: on,
				cells: [
					shortDay(on),
					GOES_BY[day?.region ?? 'unknown'],
					thickness(total_m, units),
					day ? range(day, units) : 'not known'
				]
			};
		})
	};
}

function rangeOn(on: string, band: readonly BandDay[], units: Units): string {
	const day = band.find((each) => each.on === on);
	return day ? `, nine holes in ten ${range(day, units)}` : '';
}

function range({ p05_m, p95_m }: BandDay, units: Units): string {
	return `${thicknessNumber(p05_m, units)} to ${thickness(p95_m, units)}`;
}
