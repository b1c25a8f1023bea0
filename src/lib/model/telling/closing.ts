/** How everything that is told ends, whichever way it is told. */
export const DRILL = 'A drilled hole decides.';

/** A title with the same end. */
export function headed(title: string): string {
	return `${title}: a drilled hole decides`;
}

/** The same where a lake has several sites, whose ice is told one by one. */
export function ofSite<Told extends { title: string; text: string }>(
	told: Told,
	site: string | null
): Told {
	if (site === null) return told;
	return { ...told, title: `${site}, ${told.title}`, text: `Of the site ${site}. ${told.text}` };
}

/** A chance in words, rounded up to a tenth: it warns. @example chanceText(0.42) // => '5 in 10' */
export function chanceText(chance: number): string {
	return `${Math.min(10, Math.ceil(chance * 10 - 1e-9))} in 10`;
}

/** Sentences, one after the other, and how they end. */
export function message(...sentences: (string | null)[]): string {
	return [...sentences.filter((each) => each !== null && each !== ''), DRILL].join(' ');
}
