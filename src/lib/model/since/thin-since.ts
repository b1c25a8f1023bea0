import type { IceColumn } from '../column.ts';
import type { Bounds } from '../ensemble/bounds.ts';
import type { EstimatedDay } from '../ensemble/estimate.ts';
import { holeEffective_m, holeTotal_m, thicknessHoles } from '../hole.ts';
import type { SiteDay } from '../site-day.ts';
import type { SiteEstimate } from '../site-estimate.ts';
import type { IsoDate } from '../calendar.ts';
import type { Since } from './since.ts';

/**
 * The estimate with its lower bounds capped at the thinnest hole drilled since the day of asking; zero
 * where the site has opened since. What a bound loses on that day it lacks on the days after it too.
 *
 * As for holes of the day itself, those that somebody else told count as well, one that did not go
 * through says nothing of how thin it is, and broken ice is a fact about its place.
 */
export function thinSince(estimate: SiteEstimate, asOf: IsoDate, since: Since): SiteEstimate {
	const today = estimate.days.get(asOf);
	if (!today) return estimate;
	const cut = cutOf(today.bound, thinnestOf(since, today.column));
	if (cut.spot_m <= 0 && cut.fiveSpots_m <= 0 && cut.total_m <= 0) return estimate;
	const lowered = <Day extends EstimatedDay | SiteDay>(on: IsoDate, day: Day): Day =>
		on < asOf ? day : { ...day, bound: less(day.bound, cut) };
	return {
		...estimate,
		days: new Map([...estimate.days].map(([on, day]) => [on, lowered(on, day)])),
		known: estimate.known.map((each) => lowered(each.day.on, each))
	};
}

interface Thinnest {
	effective_m: number;
	total_m: number;
}

function thinnestOf({ readings, events }: Since, column: IceColumn): Thinnest {
	if (events.some(({ kind }) => kind === 'reopened')) return { effective_m: 0, total_m: 0 };
	const holes = readings.filter(({ kind }) => kind === 'measured').flatMap(thicknessHoles);
	return {
		effective_m: Math.min(...holes.map((hole) => holeEffective_m(hole, column) ?? Infinity)),
		total_m: Math.min(...holes.map((hole) => holeTotal_m(hole) ?? Infinity))
	};
}

function cutOf(bound: Bounds, { effective_m, total_m }: Thinnest): Bounds {
	return {
		spot_m: Math.max(0, bound.spot_m - effective_m),
		fiveSpots_m: Math.max(0, bound.fiveSpots_m - effective_m),
		total_m: Math.max(0, bound.total_m - total_m)
	};
}

function less(bound: Bounds, cut: Bounds): Bounds {
	return {
		spot_m: Math.max(0, bound.spot_m - cut.spot_m),
		fiveSpots_m: Math.max(0, bound.fiveSpots_m - cut.fiveSpots_m),
		total_m: Math.max(0, bound.total_m - cut.total_m)
	};
}
