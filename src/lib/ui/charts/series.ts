import type { IsoDate } from '#lib/model/calendar.ts';
import type { ForecastDay } from '#lib/model/forecast.ts';

/** A day of the winter as the pictures and their tables need it. */
export interface SeriesDay {
	on: IsoDate;
	air_degC: number | null;
	fdd_degCd: number | null;
	tdd_degCd: number | null;
	clear_m: number;
	white_m: number;
	snow_m: number;
	slush_m: number;
	total_m: number;
	/** Lower bounds to go by, at most what one hole in ten falls short of. */
	totalLower_m: number | null;
	effective_m: number;
	effectiveLower_m: number | null;
}

/** The days that are known. Days past the last weather are left out, so nothing can draw them. */
export function knownDays(days: readonly ForecastDay[]): SeriesDay[] {
	return days.flatMap((day) => {
		const total_m = day.total_m.p50;
		if (total_m === null) return [];
		return [
			{
				on: day.on,
				air_degC: rounded(day.air_degC),
				fdd_degCd: rounded(day.fdd_degCd),
				tdd_degCd: rounded(day.tdd_degCd),
				clear_m: rounded(day.clear_m.p50 ?? 0),
				white_m: rounded(day.white_m.p50 ?? 0),
				snow_m: rounded(day.snow_m.p50 ?? 0),
				slush_m: rounded(day.slush_m.p50 ?? 0),
				total_m: rounded(total_m),
				totalLower_m: rounded(day.bound?.total_m ?? null),
				effective_m: rounded(day.effective_m.p50 ?? 0),
				effectiveLower_m: rounded(day.bound?.effective_m ?? null)
			}
		];
	});
}

/** Every seventh day counted back from the last, which is always in it. */
export function weekly<Day>(days: readonly Day[]): Day[] {
	return days.filter((_, index) => (days.length - 1 - index) % 7 === 0);
}

/** Down to a tenth of a millimetre: the page carries 200 of these, and none may read a centimetre up. */
function rounded<Value extends number | null>(value: Value): Value {
	return (value === null ? null : Math.floor(value * 1e4 + HAIR) / 1e4) as Value;
}

/** Keeps 0.2 at 0.2 although its double is a hair off. */
const HAIR = 1e-6;
