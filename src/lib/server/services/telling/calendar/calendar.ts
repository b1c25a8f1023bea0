import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { DateRow } from '../../../storage/telling-dates.ts';
import { contentLine, escaped } from './content-lines.ts';

export interface CalendarFacts {
	lake: { id: string; name: string };
	dates: readonly DateRow[];
	/** Where the app is reached, without a slash at its end. */
	base: string;
}

/**
 * An iCalendar object (RFC 5545, with NAME and REFRESH-INTERVAL of RFC 7986) of all-day events. Their
 * days are those of the lake's own calendar and carry no time zone, so that nobody's moves them.
 */
export function calendarText({ lake, dates, base }: CalendarFacts): string {
	const name = escaped(`${lake.name}: ice`);
	const link = `${base}/lakes/${lake.id}`;
	return [
		contentLine('BEGIN', 'VCALENDAR'),
		contentLine('VERSION', '2.0'),
		contentLine('PRODID', '-//Frostledger//Days that matter//EN'),
		contentLine('CALSCALE', 'GREGORIAN'),
		contentLine('METHOD', 'PUBLISH'),
		contentLine('NAME', name),
		contentLine('X-WR-CALNAME', name),
		contentLine('REFRESH-INTERVAL;VALUE=DURATION', 'PT3H'),
		...dates.filter(({ is_shown }) => is_shown === 1).map((date) => eventOf(date, lake.name, link)),
		contentLine('END', 'VCALENDAR')
	].join('');
}

function eventOf(date: DateRow, lakeName: string, link: string): string {
	const changedAt = instant(date.changed_at);
	return [
		contentLine('BEGIN', 'VEVENT'),
		contentLine('UID', date.uid),
		contentLine('SEQUENCE', String(date.sequence)),
		contentLine('DTSTAMP', changedAt),
		contentLine('LAST-MODIFIED', changedAt),
		contentLine('DTSTART;VALUE=DATE', day(date.from_day)),
		// The end is not counted.
		contentLine('DTEND;VALUE=DATE', day(addDays(date.to_day, 1))),
		contentLine('SUMMARY', escaped(`${lakeName}: ${date.title}`)),
		contentLine('DESCRIPTION', escaped(date.text)),
		contentLine('URL', link),
		contentLine('CLASS', 'PRIVATE'),
		contentLine('TRANSP', 'TRANSPARENT'),
		contentLine('END', 'VEVENT')
	].join('');
}

function day(on: IsoDate): string {
	return on.replaceAll('-', '');
}

/** @example instant('2027-01-02T03:04:05.678Z') // => '20270102T030405Z' */
function instant(text: string): string {
	return text.replace(/\.\d+/, '').replace(/[-:]/g, '');
}
