import type { Fault } from '../contract.ts';

const HOUR_ms = 3_600_000;

/** How late an observation may be beyond what its source is known for. Common practice, no source. */
const GRACE_h = 6;

/** Services make their forecasts every 1 to 12 hours. Common practice, no source. */
const OLDEST_FORECAST_h = 24;

/** A record whose newest observation is older than it should be at the end of what was asked. */
export function staleRecord(newestEndAt: Date, expectedAt: Date, lag_h: number): Fault | null {
	const late_h = (expectedAt.getTime() - newestEndAt.getTime()) / HOUR_ms;
	if (late_h <= lag_h + GRACE_h) return null;
	const normal = lag_h > 0 ? `, where ${Math.round(lag_h)} hours are usual for this source` : '';
	const text = `The newest observation is ${Math.round(late_h)} hours old${normal}. The days since then are unknown; look whether the station still reports, or set another source before this one.`;
	return { code: 'stale', text, at: newestEndAt.toISOString() };
}

/** Clocks of services and servers are some minutes apart. Common practice, no source. */
const AHEAD_min = 15;

/** An answer that says that it was made in the future. */
export function madeAhead(issuedAt: Date, now: Date): Fault | null {
	const ahead_min = (issuedAt.getTime() - now.getTime()) / 60_000;
	if (ahead_min <= AHEAD_min) return null;
	const long =
		ahead_min < 90 ? `${Math.round(ahead_min)} minutes` : `${Math.round(ahead_min / 60)} hours`;
	const text = `It says that it was made ${long} from now, so that its age is not known; it counts as made now at the latest. Check the time zone of the times, and the clock of this machine.`;
	return { code: 'clockDoubt', text, at: issuedAt.toISOString() };
}

/** A forecast that was made too long ago to be shown as one. */
export function staleForecast(issuedAt: Date, now: Date): Fault | null {
	const age_h = (now.getTime() - issuedAt.getTime()) / HOUR_ms;
	if (age_h <= OLDEST_FORECAST_h) return null;
	const text = `The forecast was made ${Math.round(age_h)} hours ago; the source seems to have stopped making new ones. It is not drawn as a fresh one; set another source before this one if that goes on.`;
	return { code: 'stale', text, at: issuedAt.toISOString() };
}
