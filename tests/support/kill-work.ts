import { addDays, type IsoDate } from '../../src/lib/model/calendar.ts';

export const READINGS_OF_ONE = 40;
export const HOLES_OF_ONE = 5;
export const DAYS_OF_ONE = 700;
export const HOURLY_DAYS_OF_ONE = 40;

/** Under which a job is on record. */
export function nameOf(job: number): string {
	return `job ${job}`;
}

/** Each job has days of its own, so that what is stored tells which jobs are there. */
export function firstDayOf(job: number): IsoDate {
	return addDays('1705-01-01', job * DAYS_OF_ONE);
}

export function killCsv(job: number): string {
	const rows = Array.from(
		{ length: DAYS_OF_ONE },
		(_, index) => `${addDays(firstDayOf(job), index)},${-(index % 30)},1`
	);
	return `date,tmean_c,precip_mm\n${rows.join('\n')}\n`;
}

/** In the time zone of the lake, which is UTC. */
export function killHourlyCsv(job: number): string {
	const rows = Array.from({ length: HOURLY_DAYS_OF_ONE * 24 }, (_, hour) => {
		const on = addDays(firstDayOf(job), Math.floor(hour / 24));
		return `${on}T${String(hour % 24).padStart(2, '0')}:00:00Z,${-(hour % 7)}`;
	});
	return `time,temperature_c\n${rows.join('\n')}\n`;
}
