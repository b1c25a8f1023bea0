import { addDays } from '#lib/model/calendar.ts';
import { shortDay } from '../format/day.ts';
import { UNKNOWN } from '../format/number.ts';
import type { SeriesTable } from './series-tables.ts';
import { weekly } from './series.ts';
import type { StripData } from './strip-data.ts';

const THAW_percent = 50;

/** The strip week by week: a column a load, its chance in each cell. */
export function stripTable({ from, loads }: StripData): SeriesTable {
	const count = loads[0]?.met_percent.length ?? 0;
	const weeks = weekly(Array.from({ length: count }, (_, index) => index));
	return {
		columns: ['Day', ...loads.map(({ name }) => name)],
		rows: weeks.map((index) => ({
			id: addDays(from, index),
			cells: [
				shortDay(addDays(from, index)),
				...loads.map(({ met_percent, thaw_percent }) => {
					const met = met_percent[index] ?? null;
					const isWarm = (thaw_percent[index] ?? 0) >= THAW_percent;
					return `${met === null ? UNKNOWN : `${met} %`}${isWarm ? ', warm spell' : ''}`;
				})
			]
		}))
	};
}
