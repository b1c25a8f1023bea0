import { shortDay } from '../format/day.ts';
import { degreeDays } from '../format/degrees.ts';
import { depth, thickness, thicknessNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { BandDay } from './band.ts';
import { goesBy } from './regions.ts';
import type { SeriesDay } from './series.ts';
import type { SeriesTable } from './series-tables.ts';
import { weekly } from './series.ts';

/** What the part of the thickness chart past the day asked for shows. */
export function comingSentence(
	coming: readonly SeriesDay[],
	band: readonly BandDay[],
	climate: string,
	units: Units
): string | null {
	const [first, last] = [coming[0], coming.at(-1)];
	if (!first || !last) return null;
	const peak = coming.reduce((most, day) => (day.total_m > most.total_m ? day : most), first);
	const regions = band
		.filter(({ on }) => on >= first.on)
		.map(({ region }) => goesBy(region, climate));
	const by = [...new Set(regions)].join(', then ');
	return `From there to ${shortDay(last.on)} by ${by || 'what may come'}: at most ${thickness(peak.total_m, units)} on ${shortDay(peak.on)}${rangeOn(peak.on, band, units)}.`;
}

/** What the pictures of the weather show past the day asked for; `null` where that is nothing. */
export function comingWeather(
	coming: readonly SeriesDay[],
	units: Units
): { frost: string; snow: string } | null {
	const last = coming.at(-1);
	if (!last) return null;
	const by = `By ${shortDay(last.on)}, as the mean of what may come`;
	const peak = coming.reduce((most, day) => (day.snow_m > most.snow_m ? day : most), last);
	return {
		frost: `${by}: ${degreeDays(last.fdd_degCd, units)} of frost and ${degreeDays(last.tdd_degCd, units)} of thaw.`,
		snow: `To come, as the median of what may: at most ${depth(peak.snow_m, units)} on ${shortDay(peak.on)}.`
	};
}

/** Week by week what may come, and what that goes by. */
export function comingTable(
	coming: readonly SeriesDay[],
	band: readonly BandDay[],
	climate: string,
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
					goesBy(day?.region ?? 'unknown', climate),
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
