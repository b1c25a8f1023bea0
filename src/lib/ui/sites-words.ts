import type { SiteKind } from '#lib/model/site-kind.ts';
import { thickness } from './format/length.ts';
import { counted } from './format/number.ts';
import type { Units } from './units-setting.ts';

const KIND_NAMES: Record<SiteKind, string> = {
	basin: 'Basin',
	bay: 'Bay',
	track: 'Track'
};

/** @example kindWords('track', 'Main') // => 'Track on the ice of Main' */
export function kindWords(kind: SiteKind, parentName: string | null): string {
	return parentName === null ? KIND_NAMES[kind] : `${KIND_NAMES[kind]} on the ice of ${parentName}`;
}

interface Known {
	name: string;
	day: { total_m: number; totalLower_m: number | null } | null;
}

/** What a lake's sites come to: the thinnest is said first, for the lake is no thicker than that. */
export function sitesSentence(rows: readonly Known[], units: Units): string {
	const known = rows.flatMap(({ name, day }) =>
		day === null ? [] : [{ name, least_m: day.totalLower_m ?? day.total_m }]
	);
	const [first, ...others] = known;
	if (!first) return `${counted(rows.length, 'site')}, none with an estimate yet.`;
	if (rows.length === 1) return 'One site: all of the lake counts as one.';
	const least = others.reduce((thin, row) => (row.least_m < thin.least_m ? row : thin), first);
	const rest = rows.length - known.length;
	return `${counted(rows.length, 'site')}: ${least.name} may be the thinnest, ${thickness(least.least_m, units)} at its lower bound${rest > 0 ? `; ${rest} without an estimate` : ''}.`;
}
