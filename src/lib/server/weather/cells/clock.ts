import { inQuotes } from './quote.ts';

export interface Clock {
	/** Since midnight; 86,400 is the midnight that ends the day. */
	second: number;
	/** Local time less UTC where the text says so. */
	offset_s: number | null;
}

const CLOCK =
	/^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d{1,9})?)?\s?([ap])?\.?(?:m\.?)?\s?(.*)$/i;
const OFFSET = /^(?:UTC|GMT)?\s?([+\u2212-])(\d{2}):?(\d{2})?$/i;

/** A time of day such as `13:00`, `1:00 PM`, `13.00`, `1300`, `13` or `13:00+01:00`; else the reason. */
export function readClock(text: string): Clock | string {
	const bare = /^(\d{1,2})(\d{2})?$/.exec(text);
	if (bare) return toClock(text, Number(bare[1]), Number(bare[2] ?? 0), 0, null);
	const match = CLOCK.exec(text);
	if (!match) return `${inQuotes(text)} is not a time of day; write it as 13:00`;
	const [, hours = '', minutes = '', seconds = '0', half, zone = ''] = match;
	const offset_s = readOffset(zone);
	if (typeof offset_s === 'string') return offset_s;
	const hour = half ? to24(Number(hours), half) : Number(hours);
	return toClock(text, hour, Number(minutes), Number(seconds), offset_s);
}

function toClock(
	text: string,
	hour: number,
	minute: number,
	second: number,
	offset_s: number | null
): Clock | string {
	const total = hour * 3600 + minute * 60 + second;
	if (hour > 24 || minute > 59 || second > 59 || total > 86_400) {
		return `${inQuotes(text)} is not a time of day; hours go from 00:00 to 24:00`;
	}
	return { second: total, offset_s };
}

/** An hour over 12 with a.m. or p.m. becomes one that no clock shows. */
function to24(hour: number, half: string): number {
	if (hour < 1 || hour > 12) return 99;
	return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

function readOffset(zone: string): number | null | string {
	if (zone === '') return null;
	if (/^(Z|UTC|GMT)$/i.test(zone)) return 0;
	const match = OFFSET.exec(zone);
	if (!match) {
		return `${inQuotes(zone)} is not an offset from UTC; write it as +02:00, or Z for UTC`;
	}
	const [, sign, hours, minutes = '0'] = match;
	const offset_s = Number(hours) * 3600 + Number(minutes) * 60;
	if (offset_s > 14 * 3600)
		return `the offset ${inQuotes(zone)} is larger than 14 hours; correct it`;
	return sign === '+' ? offset_s : -offset_s;
}
