/** A day of the lake's own calendar, `YYYY-MM-DD`. Sorts as text. */
export type IsoDate = string;

/** A winter by the two years it spans, `2026-27`. It runs from 1 July to 30 June. */
export type WinterId = string;

const MS_PER_DAY = 86_400_000;

/** True for a real day of the Gregorian calendar written `YYYY-MM-DD`. */
export function isIsoDate(text: string): boolean {
	if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
	const ms = Date.parse(`${text}T00:00:00Z`);
	return Number.isFinite(ms) && new Date(ms).toISOString().slice(0, 10) === text;
}

/** Whole days since 1970-01-01. @throws RangeError when `on` is not a day. */
export function dayNumber(on: IsoDate): number {
	if (!isIsoDate(on)) throw new RangeError(`on must be a day YYYY-MM-DD, got "${on}"`);
	return Math.round(Date.parse(`${on}T00:00:00Z`) / MS_PER_DAY);
}

/** The day with this number. Inverse of {@link dayNumber}. */
export function isoDate(day: number): IsoDate {
	return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** @example addDays('2026-02-27', 2) // => '2026-03-01' */
export function addDays(on: IsoDate, days: number): IsoDate {
	return isoDate(dayNumber(on) + days);
}

/** Days from `earlier` to `later`; negative when the order is reversed. */
export function daysBetween(earlier: IsoDate, later: IsoDate): number {
	return dayNumber(later) - dayNumber(earlier);
}

/** Day of the year, 1 to 366. */
export function dayOfYear(on: IsoDate): number {
	return daysBetween(`${on.slice(0, 4)}-01-01`, on) + 1;
}

/** @example winterOf('2027-02-03') // => '2026-27' */
export function winterOf(on: IsoDate): WinterId {
	const year = Number(on.slice(0, 4)) - (on.slice(5) < '07-01' ? 1 : 0);
	return `${year}-${String((year + 1) % 100).padStart(2, '0')}`;
}

/** True for two years that follow each other, `1999-00` included. */
export function isWinterId(text: string): boolean {
	return (
		/^\d{4}-\d{2}$/.test(text) && (Number(text.slice(0, 4)) + 1) % 100 === Number(text.slice(5))
	);
}

/** First and last day of a winter. @example winterSpan('2026-27') // => ['2026-07-01', '2027-06-30'] */
export function winterSpan(winter: WinterId): [first: IsoDate, last: IsoDate] {
	const year = Number(winter.slice(0, 4));
	return [`${year}-07-01`, `${year + 1}-06-30`];
}
