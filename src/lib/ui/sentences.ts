import { day } from './format/day.ts';
import { degreeDays } from './format/degrees.ts';
import { depth, rate, thickness, thicknessNumber } from './format/length.ts';
import { counted } from './format/number.ts';
import type { SeriesDay } from './charts/series.ts';
import type { Units } from './units-setting.ts';

/** The answer of a lake's page: first what is there, then what it counts for. */
export interface Verdict {
	main: string;
	rest: string | null;
}

/** Growth of less than this a day reads as none. */
const STILL_m = 0.0005;

/** A layer of less than this reads as none. */
const HARDLY_ANY_m = 0.005;

export interface Standing {
	/** The answer is not today's, so it names its day. */
	isPast?: boolean;
	/** Every load is withheld: that is said before any thickness. */
	isWithheld?: boolean;
}

/** The ice of one day with its doubt. */
export function verdict(
	ice: SeriesDay,
	units: Units,
	{ isPast = false, isWithheld = false }: Standing = {}
): Verdict {
	const when = isPast ? ` on ${day(ice.on)}` : '';
	if (ice.total_m < HARDLY_ANY_m) {
		return { main: `Open water by this estimate${when}.`, rest: null };
	}
	const measures = isPast ? 'measured' : 'measures';
	const about = isWithheld ? `Stay off, whatever it ${measures}: about` : 'About';
	const main =
		ice.totalLower_m === null
			? `${about} ${thickness(ice.total_m, units)} of ice${when}.`
			: `${about} ${thickness(ice.total_m, units)} of ice${when}, but one hole in ten may ${isPast ? 'have shown' : 'show'} ${less(ice.totalLower_m, units)}.`;
	return { main, rest: counts(ice, units) };
}

/** @example growth(0.008, metric) // => 'Growing 8 mm a day.' */
export function growth(perDay_m: number | null, units: Units): string | null {
	if (perDay_m === null) return null;
	if (Math.abs(perDay_m) < STILL_m) return 'Neither growing nor thinning.';
	return perDay_m > 0 ? `Growing ${rate(perDay_m, units)}.` : `Losing ${rate(perDay_m, units)}.`;
}

/** The column from the top down. */
export function columnSentence(ice: SeriesDay, units: Units): string {
	const layers = [
		...(ice.snow_m >= HARDLY_ANY_m ? [`${depth(ice.snow_m, units)} of snow`] : []),
		...(ice.slush_m >= HARDLY_ANY_m ? [`${depth(ice.slush_m, units)} of slush`] : []),
		...(ice.white_m >= HARDLY_ANY_m ? [`${thickness(ice.white_m, units)} of white ice`] : []),
		...(ice.clear_m >= HARDLY_ANY_m ? [`${thickness(ice.clear_m, units)} of clear ice`] : [])
	];
	return layers.length === 0 ? 'Open water.' : `From the top: ${layers.join(', ')}.`;
}

function less(lower_m: number, units: Units): string {
	const least = thicknessNumber(lower_m, units);
	return least === '0' ? 'hardly any' : `less than ${least}`;
}

function counts({ white_m, effective_m }: SeriesDay, units: Units): string {
	return white_m < HARDLY_ANY_m
		? 'All of it is clear.'
		: `It counts as ${thickness(effective_m, units)} of clear ice, since the ${thickness(white_m, units)} of white in it count half.`;
}

/** What loads are held against, for the bounds that are known. */
export function boundsSentence(
	{ onFoot_m, vehicles_m }: { onFoot_m: number | null; vehicles_m: number | null },
	units: Units
): string | null {
	const bounds = [
		...(onFoot_m === null ? [] : [`${thickness(onFoot_m, units)} on foot`]),
		...(vehicles_m === null ? [] : [`${thickness(vehicles_m, units)} for vehicles`])
	];
	return bounds.length === 0
		? null
		: `Loads are held against its lower bound: ${bounds.join(', ')}.`;
}

/** What the thickness chart shows, for who can't see it. */
export function thicknessSentence(
	{ days, readings }: { days: readonly SeriesDay[]; readings: readonly unknown[] },
	units: Units
): string {
	const [first, last] = [days[0], days.at(-1)];
	if (!first || !last) return 'Nothing is known of this winter yet.';
	const peak = days.reduce((most, each) => (each.total_m > most.total_m ? each : most), first);
	const holes = readings.length === 0 ? 'no reading' : counted(readings.length, 'reading');
	if (peak.total_m <= 0) return `Open water to ${day(last.on)}; ${holes}.`;
	const tops =
		peak.on === last.on
			? ''
			: `, after a peak of ${thickness(peak.total_m, units)} on ${day(peak.on)}`;
	const start = days[days.findIndex(({ total_m }) => total_m > 0) - 1];
	const from = start ? `open water on ${day(start.on)}` : `ice on ${day(first.on)}`;
	return `From ${from} to ${thickness(last.total_m, units)} on ${day(last.on)}${tops}; ${holes}.`;
}

export function degreeDaysSentence(days: readonly SeriesDay[], units: Units): string {
	const last = days.at(-1);
	return last
		? `${degreeDays(last.fdd_degCd, units)} of frost and ${degreeDays(last.tdd_degCd, units)} of thaw since freeze-up.`
		: 'No degree-days yet.';
}

export function snowSentence(days: readonly SeriesDay[], isKnown: boolean, units: Units): string {
	const [first, last] = [days[0], days.at(-1)];
	if (!first || !last) return 'No snow is known yet.';
	const peak = days.reduce((most, each) => (each.snow_m > most.snow_m ? each : most), first);
	const how = isKnown ? '' : ' The snow is the usual of the place and date, not a record.';
	if (peak.snow_m < HARDLY_ANY_m) return `No snow on it so far.${how}`;
	const now = last.snow_m < HARDLY_ANY_m ? 'No' : `${depth(last.snow_m, units)} of`;
	return `${now} dry snow now, ${depth(peak.snow_m, units)} at most on ${day(peak.on)}.${how}`;
}
