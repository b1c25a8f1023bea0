import type { SiteWinter } from '#lib/model/site-winter.ts';
import { winterInputFor } from '../winters.ts';
import { filesOf } from './folder.ts';
import type { Ledger } from './ledger.ts';
import { eventRow, ownFreezeUpRow, type EventRow } from './own-rows.ts';
import { winterDraft } from './winter-rows.ts';

/** The winters of one lake or site from `freezeup.csv`, with their events where there is such a table. */
export function readSiteWinters(ledger: Ledger, dataset: string, code: string): SiteWinter[] {
	const files = filesOf(dataset);
	const rows = ledger
		.table(files.freezeUp, ownFreezeUpRow, ['lake', 'winter', 'freeze_up_date'])
		.filter(({ row }) => row.lake === code);
	const hasEvents = ledger.has(files.events);
	const events = hasEvents ? ledger.table(files.events, eventRow, ['lake', 'winter', 'on']) : [];
	const seen = new Set<string>();
	return rows.flatMap(({ line, row }) => {
		if (seen.has(row.winter)) {
			ledger.refuse(files.freezeUp, line, `winter ${row.winter} is there twice`);
			return [];
		}
		seen.add(row.winter);
		const own = events.filter((each) => each.row.lake === code && each.row.winter === row.winter);
		if (row.freeze_up_date === null && own.length === 0) {
			ledger.leave(files.freezeUp, line, `winter ${row.winter} has no freeze-up`);
			return [];
		}
		// Ice that grew anew would be taken to have grown all winter, and so to be thicker than it is.
		if (!hasEvents && /\bopen(ed)?\b/i.test(row.notes)) {
			ledger.leave(files.freezeUp, line, openedReason(row.winter, row.notes));
			return [];
		}
		const record = checked(
			ledger,
			files.freezeUp,
			line,
			row,
			own.map((each) => each.row)
		);
		return record ? [record] : [];
	});
}

function checked(
	ledger: Ledger,
	file: string,
	line: number,
	row: Parameters<typeof winterDraft>[0],
	events: EventRow[]
): SiteWinter | null {
	const record = winterInputFor(row.winter).safeParse(winterDraft(row, events));
	if (record.success) return { winter: row.winter, ...record.data };
	for (const { path, message } of record.error.issues) {
		ledger.refuse(file, line, `winter ${row.winter}, ${path.join('.')} ${message}`);
	}
	return null;
}

function openedReason(winter: string, notes: string): string {
	return (
		`winter ${winter} is noted “${notes.slice(0, 80)}”: its freeze-up is not taken, for ice that has ` +
		'opened and grown anew would be estimated too thick. Enter it with the day it opened'
	);
}
