import { dateShape } from '../cells/dates.ts';
import { headingOf, type Heading } from '../cells/header-roles.ts';
import type { Layout } from './layout.ts';

/** What the headings of a table say, each by itself and beside the others. */
export function headingsOf({ header, headerLine, unitLine, rows }: Layout): Heading[] {
	const headings = header.map((name, index) => headingOf(name, unitLine[index] ?? ''));
	if (headerLine > 0) return settleSnow(headings);
	// Beside a date, the only column of a table without headings can be nothing but the temperature.
	const isDated = rows[0]?.cells.some((cell) => dateShape(cell) !== null) ?? false;
	if (headings.length !== 2 || !isDated) return headings;
	const why = 'the only column beside the date';
	return headings.map((heading) => ({ ...heading, role: 'air', rank: 3, why }));
}

/** Beside a depth of the snow on land, a column that is called "snow" is what fell. */
function settleSnow(headings: readonly Heading[]): Heading[] {
	const hasDepth = headings.some(({ role }) => role === 'landSnow');
	return headings.map((heading) =>
		heading.isSnow && hasDepth
			? { ...heading, role: 'snowfall', rank: 2, doubt: null, why: 'beside a snow depth' }
			: heading
	);
}

/** What had to be assumed because there are no headings. */
export function headlessWarnings({ headerLine, header }: Layout): string[] {
	if (headerLine > 0 || header.length !== 2) return [];
	return ['there are no headings; the column beside the date is taken as the air temperature'];
}
