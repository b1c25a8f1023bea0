import { addDays, type IsoDate } from '#lib/model/calendar.ts';

/** Cold days of our own making, each lake's its own. */
export function dailyCsv(from: IsoDate, to: IsoDate, lake: number): string {
	const rows: string[] = [];
	for (let on = from, day = 0; on < to; on = addDays(on, 1), day++) {
		rows.push(`${on},${(-7 + 5 * Math.sin(day / 3 + lake)).toFixed(1)},${day % 7 === 0 ? 3 : 0}`);
	}
	return `date,tmean_c,precip_mm\n${rows.join('\n')}\n`;
}

/** A year of hours in UTC. */
export function yearOfHoursCsv(year: number, seed: number): string {
	const from_ms = Date.UTC(year, 0, 1);
	const rows = Array.from({ length: 8760 }, (_, hour) => {
		const at = new Date(from_ms + hour * 3_600_000).toISOString().slice(0, 16);
		return `${at}Z,${(-4 + 9 * Math.sin(hour / 1400 + seed)).toFixed(1)},${hour % 30 < 3 ? 0.2 : 0}`;
	});
	return `time,temperature_c,precip_mm\n${rows.join('\n')}\n`;
}
