/** Texts of a tidy winters folder by their path in it, as `pond/weather.csv`. */
export type TidyFiles = ReadonlyMap<string, string>;

/** Something about a line of a file of the folder; line 0 is the file as a whole. */
export interface FileProblem {
	file: string;
	line: number;
	reason: string;
}

export const LAKES_FILE = 'lakes.csv';
export const ABOUT_FILE = 'about.txt';

/** Where the files of a dataset are. */
export function filesOf(dataset: string) {
	return {
		weather: `${dataset}/weather.csv`,
		ice: `${dataset}/ice.csv`,
		freezeUp: `${dataset}/freezeup.csv`,
		events: `${dataset}/events.csv`,
		readings: (site: string) => `${dataset}/readings/${site}.csv`
	};
}
