import { randomUUID } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { TellingDate } from '#lib/model/telling/dates.ts';
import type { Database } from '../../storage/schema.ts';
import {
	insertDateRow,
	listDateRows,
	updateDateRow,
	type DateRow
} from '../../storage/telling-dates.ts';

/**
 * Brings the stored days in line with those known now; true when any has changed. A day keeps its UID
 * for the winter, and its sequence counts up when it moves or comes back.
 */
export async function storeDates(
	tx: Kysely<Database>,
	lakeId: string,
	dates: readonly TellingDate[],
	now: string
): Promise<boolean> {
	const before = new Map((await listDateRows(tx, lakeId)).map((row) => [row.key, row]));
	let isChanged = false;
	for (const date of dates) {
		const row = before.get(date.key);
		before.delete(date.key);
		if (!row) {
			const uid = `${randomUUID()}@frostledger`;
			await insertDateRow(tx, { lake_id: lakeId, ...columns(date), uid, ...shown(0, now) });
		} else if (isMoved(row, date)) {
			await updateDateRow(tx, row, { ...columns(date), ...shown(row.sequence + 1, now) });
		} else if (row.title !== date.title || row.text !== date.text) {
			await updateDateRow(tx, row, { ...columns(date), changed_at: now });
		} else continue;
		isChanged = true;
	}
	for (const row of before.values()) {
		if (row.is_shown === 0) continue;
		await updateDateRow(tx, row, { is_shown: 0, changed_at: now });
		isChanged = true;
	}
	return isChanged;
}

function isMoved(row: DateRow, { from, to }: TellingDate): boolean {
	return row.is_shown === 0 || row.from_day !== from || row.to_day !== to;
}

function columns({ key, from, to, title, text }: TellingDate) {
	return { key, from_day: from, to_day: to, title, text };
}

function shown(sequence: number, changed_at: string) {
	return { sequence, changed_at, is_shown: 1 as const };
}
