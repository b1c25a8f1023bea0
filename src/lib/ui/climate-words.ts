import type { Climate } from '#lib/model/climate.ts';

/** What days past the forecast go by, in a word or two. */
export function climateName(climate: Climate | null): string {
	if (climate === null || !climate.hasUsual) return 'past winters';
	return climate.pastWinters === 0 ? 'usual climate' : 'past winters and usual climate';
}

/** The same for a mark in a picture: where both stand in, the weaker of the two. */
export function climateMark(climate: Climate | null): string {
	return climate?.hasUsual ? 'usual climate' : 'past winters';
}

/** How much stands behind it; `null` where nothing past the forecast is told. */
export function climateSentence(climate: Climate | null): string | null {
	if (climate === null) return null;
	const { pastWinters, hasUsual, endsEarly } = climate;
	if (!hasUsual) {
		const ends = endsEarly
			? ', and by the usual climate of such a place where their records end'
			: '';
		return `Days to come go by the weather of the ${pastWinters} earlier winters stored here${ends}.`;
	}
	const stored =
		pastWinters === 0
			? 'No earlier winter’s weather is stored here'
			: `Only ${pastWinters === 1 ? 'one earlier winter’s' : `${pastWinters} earlier winters’`} weather is stored here`;
	return `${stored}, so the usual climate of such a place stands in for days to come: an assumption, with a wide band.`;
}
