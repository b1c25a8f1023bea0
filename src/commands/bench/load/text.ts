import type { LoadReport } from './report.ts';
import type { Tally } from './tally.ts';

/** The load as lines of text. */
export function loadText(load: LoadReport): string[] {
	const { duration_s, lakes, phones, writers, importers, importedRows, lost } = load;
	return [
		`${phones} phones, ${writers} people who log readings and ${importers} who imports, on ${lakes} lakes for ${duration_s} s: ${lost} readings lost`,
		`  pages: ${tallyText(load.pages)}`,
		`  readings: ${tallyText(load.readings)}`,
		`  imports of a year of hours, ${importedRows} rows in all: ${tallyText(load.imports)}`
	];
}

function tallyText({ requests, errors, firstError, ...times }: Tally): string {
	const { median_ms, p95_ms, slowest_ms } = times;
	const failed = errors === 0 ? 'no error' : `${errors} ERRORS, the first: ${firstError}`;
	return `${requests}, ${failed}, median ${median_ms.toFixed(0)} ms, 95 % within ${p95_ms.toFixed(0)} ms, slowest ${slowest_ms.toFixed(0)} ms`;
}
