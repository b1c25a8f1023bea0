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

const DATE_FORMS: Readonly<Record<string, string>> = {
	'Y-m-d': 'year-month-day',
	'd/m/Y': 'day/month/year',
	'm/d/Y': 'month/day/year',
	Ymd: 'year, month and day run together',
	'd mon Y': 'day, month’s name, year',
	'mon d Y': 'month’s name, day, year',
	'epoch s': 'seconds since 1970',
	'epoch ms': 'milliseconds since 1970'
};

interface Form {
	encoding: string;
	delimiter: string;
	decimal: '.' | ',';
	step: 'daily' | 'hourly';
	dateForm: string;
	headerLine: number;
}

/** A form of dates spelt out: `d/m/Y` is day/month/year. */
export function dateFormWords(form: string): string {
	return DATE_FORMS[form] ?? form;
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
	const days = dateForm ? `, dates as ${dateFormWords(dateForm)}` : '';
	const header = headerLine > 0 ? `headings in line ${headerLine}` : 'no headings';
	return `A ${step} record in ${encoding}: ${columns}, ${point}${days}, ${header}.`;
}
