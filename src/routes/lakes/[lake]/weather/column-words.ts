/** What a column can be, as a person would say it. */
export const ROLE_WORDS: Readonly<Record<string, string>> = {
	time: 'day and time',
	date: 'day',
	clock: 'time of day',
	air: 'air temperature, mean',
	min: 'lowest air temperature',
	max: 'highest air temperature',
	precipitation: 'precipitation',
	snowfall: 'snowfall',
	landSnow: 'snow depth on land',
	wind: 'wind speed',
	ignore: 'not used'
};

const DELIMITERS: Readonly<Record<string, string>> = {
	',': 'commas',
	';': 'semicolons',
	'\t': 'tabs',
	'|': 'bars',
	' ': 'spaces'
};

interface Form {
	encoding: string;
	delimiter: string;
	decimal: '.' | ',';
	step: 'daily' | 'hourly';
	dateForm: string;
	headerLine: number;
}

/** How a file is written, in a sentence. */
export function formWords({
	encoding,
	delimiter,
	decimal,
	step,
	dateForm,
	headerLine
}: Form): string {
	const columns = `columns parted by ${DELIMITERS[delimiter] ?? `“${delimiter}”`}`;
	const point = `decimal ${decimal === ',' ? 'comma' : 'point'}`;
	const days = dateForm ? `, dates as ${dateForm}` : '';
	const header = headerLine > 0 ? `headings in line ${headerLine}` : 'no headings';
	return `A ${step} record in ${encoding}: ${columns}, ${point}${days}, ${header}.`;
}
