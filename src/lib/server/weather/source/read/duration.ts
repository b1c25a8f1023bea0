const DURATION =
	/^P(?:(\d{1,4})W)?(?:(\d{1,4})D)?(?:T(?:(\d{1,5})H)?(?:(\d{1,6})M)?(?:(\d{1,8})S)?)?$/i;

/** Seconds of an ISO 8601 duration; months and years have no length. @example durationOf_s('PT3H') // => 10800 */
export function durationOf_s(text: string): number | null {
	const match = DURATION.exec(text);
	if (!match) return null;
	const [, weeks = 0, days = 0, hours = 0, minutes = 0, seconds = 0] = match.map((part) =>
		part === undefined ? 0 : Number(part)
	);
	const total_s = ((weeks * 7 + days) * 24 + hours) * 3600 + minutes * 60 + seconds;
	return total_s > 0 ? total_s : null;
}
