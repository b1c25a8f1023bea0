import type { ValueColumn } from './chosen-columns.ts';
import type { Heading } from '../cells/header-roles.ts';
import { inQuotes } from '../cells/quote.ts';

type Settled = ValueColumn & { unit: string };

/** Rain alone beside snowfall: together they are the precipitation. */
export function withRain(columns: readonly Settled[], headings: readonly Heading[]): Settled[] {
	const hasSnow = columns.some(({ role }) => role === 'snowfall');
	return columns.map((column) => {
		const isRain = isRainAlone(column, headings) && hasSnow && /^(mm|in)$/.test(column.unit);
		return isRain ? { ...column, unit: `${column.unit} rain` } : column;
	});
}

export function rainWarnings(columns: readonly Settled[], headings: readonly Heading[]): string[] {
	return columns
		.filter((column) => isRainAlone(column, headings))
		.map(({ header, unit }) =>
			unit.endsWith('rain')
				? `column ${inQuotes(header)} is taken as rain alone, and the snowfall is added to it`
				: `column ${inQuotes(header)} is taken as all precipitation, melted snow included; set it to be ignored if it is rain alone`
		);
}

function isRainAlone(
	{ role, index, isChosen }: ValueColumn,
	headings: readonly Heading[]
): boolean {
	return role === 'precipitation' && !isChosen && headings[index]?.rank === 3;
}
