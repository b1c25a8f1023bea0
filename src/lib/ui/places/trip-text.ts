import type { TripNote } from './TripPaper.svelte';

interface Listed<Item> {
	shown: readonly Item[];
	rest: number;
}

/** A trip sheet in words, without what somebody types on it. */
export interface TripSheetWords {
	lake: { name: string; isInvented: boolean };
	/** The part of the lake that it is of; `null` where there is one. */
	site: string | null;
	/** What stands on the other parts. */
	beside: string | null;
	made: string;
	estimate: string;
	bounds: string | null;
	ages: readonly string[];
	loads: Listed<{ id: string; name: string; status: string }>;
	cautions: Listed<string>;
	always: string;
	spots: Listed<{ id: string; text: string }>;
	route: { name: string; carries: string; holes: string; whom: string } | null;
	/** Where to drill without a route. */
	anyWay: string;
	checklist: readonly string[];
	after: readonly string[];
	sources: string;
}

/** What somebody on land has to know, to be sent as a message: people, estimate, route and weak spots. */
export function tripText(sheet: TripSheetWords, note: TripNote): string {
	const { lake, site, beside, made, estimate, ages, loads, spots, route } = sheet;
	const line = (label: string, text: string | null) => (text === null ? [] : [`${label}: ${text}`]);
	return [
		`${lake.name}${lake.isInvented ? ' (invented)' : ''}: trip sheet, made ${made}`,
		...line('Who goes', note.party),
		...line('Back by', note.back),
		...line('Who is told, and calls for help', note.told),
		...line('Emergency number', note.emergency),
		'',
		...line('Site', site),
		estimate,
		...(beside === null ? [] : [beside]),
		`${ages.join('; ')}. A forecast, not a permission.`,
		'',
		...loads.shown.map(({ name, status }) => `${name}: ${status}`),
		...more(loads),
		...(route
			? ['', `Route ${route.whom}: ${route.name}`, route.carries, `Test holes: ${route.holes}`]
			: []),
		...(spots.shown.length > 0 ? ['', 'Weak spots:'] : []),
		...spots.shown.map(({ text }) => `- ${text}`),
		...more(spots)
	].join('\n');
}

function more({ rest }: { rest: number }): string[] {
	return rest > 0 ? [`and ${rest} more`] : [];
}
