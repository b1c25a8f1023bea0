/** What no line ends between: a number and its unit or month, and the number that a comparison ends with. */
const TIES = [
	/(?<=\d) (?=(?:cm|mm|km|m|in|ft|kg|lb|°C|°F|days?|hours?|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b)/g,
	/(?<=\b(?:than|in)) (?=\d)/g,
	/(?<=\d) (?=in \d)/g
];

/**
 * A heading that breaks only where a reader would pause.
 * @example tied('by 7 Mar, in 23 days') // => 'by 7\u00a0Mar, in\u00a023\u00a0days'
 */
export function tied(text: string): string {
	return TIES.reduce((all, tie) => all.replace(tie, '\u00a0'), text);
}
