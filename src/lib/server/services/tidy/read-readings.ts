import { parseReadings } from '../parse-readings.ts';
import { readingInput, type NewReading } from '../reading-input.ts';
import { filesOf } from './folder.ts';
import { readingDraft } from './ice-rows.ts';
import type { Ledger } from './ledger.ts';
import { ownIceRow } from './own-rows.ts';

/** Marks of a measurement that its own keepers do not trust. */
const DISTRUSTED = /spike|suspect_value/;

/** From the app's own table, which has all of a reading, or else from `ice.csv`. */
export function readSiteReadings(
	ledger: Ledger,
	dataset: string,
	code: string,
	site: string
): NewReading[] {
	const files = filesOf(dataset);
	const own = files.readings(site);
	return ledger.has(own) ? fromOwn(ledger, own) : fromIce(ledger, files.ice, code);
}

function fromOwn(ledger: Ledger, file: string): NewReading[] {
	const text = ledger.text(file);
	// A table that parsing would call empty is that of a site where nobody has drilled yet.
	if (text.trim().split(/\r?\n/).length === 1) return [];
	const { readings, problems, leftOut } = parseReadings(text, null);
	for (const { line, reason } of problems) ledger.refuse(file, line, reason);
	for (const { line, reason } of leftOut) ledger.leave(file, line, reason);
	return readings;
}

function fromIce(ledger: Ledger, file: string, code: string): NewReading[] {
	const rows = ledger.table(file, ownIceRow, ['lake', 'date', 'total_cm']);
	return rows.flatMap(({ line, row }) => {
		if (row.lake !== code) return [];
		if (DISTRUSTED.test(row.qc)) {
			ledger.leave(file, line, `the table itself doubts it: ${row.qc}`);
			return [];
		}
		const draft = readingDraft(row);
		if (!draft) return [];
		const reading = readingInput.safeParse(draft);
		if (reading.success) return [reading.data];
		const [issue] = reading.error.issues;
		ledger.refuse(file, line, `${issue?.path.join('.')} ${issue?.message}`);
		return [];
	});
}
