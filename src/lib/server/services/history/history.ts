import type { Context } from '../../context.ts';
import { listHistoryRows, type HistoryRow } from '../../storage/history.ts';
import { getLake } from '../lakes.ts';
import { DELETED_KEPT_D } from './clear-away.ts';
import { isStillDeleted, UNDOABLE } from './undo.ts';

export { writingAs } from '../../storage/writer.ts';

/** A row by its columns, in SI as stored. */
export type Cells = Readonly<Record<string, string | number | null>>;

export interface Change {
	/** A table, or `weather` for a file that was taken in, or `winters` for a whole lake. */
	what: string;
	key: Cells;
	before: Cells | null;
	after: Cells | null;
}

export interface HistoryEntry {
	/** Grows with time. */
	unit: number;
	at: Date;
	who: string;
	changes: Change[];
	/** The deletion in it that can be taken back now. */
	undo: { what: string; id: string; site: string | null } | null;
}

export interface HistoryPage {
	entries: HistoryEntry[];
	/** Older ones are before this unit; `null`: there are none. */
	older: number | null;
}

/** So many changes on a page. */
const ON_A_PAGE = 30;
const DAY_MS = 86_400_000;

/** Who changed what of a lake and of the sources it uses, and when; the newest first. @throws LakeNotFound */
export async function listHistory(
	ctx: Context,
	lakeId: string,
	before: number | null = null
): Promise<HistoryPage> {
	await getLake(ctx, lakeId);
	const rows = await listHistoryRows(ctx.db, lakeId, { before, units: ON_A_PAGE + 1 });
	const units = [...new Set(rows.map(({ unit }) => unit))];
	const entries = [];
	for (const unit of units.slice(0, ON_A_PAGE)) {
		const ofUnit = rows.filter((row) => row.unit === unit);
		// Two processes may have come upon the same number.
		for (const who of new Set(ofUnit.map((row) => row.who))) {
			const byOne = ofUnit.filter((row) => row.who === who);
			entries.push(await entryOf(ctx, lakeId, byOne));
		}
	}
	return { entries, older: units.length > ON_A_PAGE ? (units[ON_A_PAGE - 1] ?? null) : null };
}

async function entryOf(
	ctx: Context,
	lakeId: string,
	rows: readonly HistoryRow[]
): Promise<HistoryEntry> {
	const [first] = rows;
	if (!first) throw new Error('A change without rows');
	const changes = rows.map(({ what, key, before, after }) => ({
		what,
		key: cells(key) ?? {},
		before: cells(before),
		after: cells(after)
	}));
	const at = new Date(first.at);
	const { unit, who } = first;
	return { unit, at, who, changes, undo: await undoOf(ctx, lakeId, changes, at) };
}

function cells(json: string | null): Cells | null {
	return json === null ? null : (JSON.parse(json) as Cells);
}

async function undoOf(
	ctx: Context,
	lakeId: string,
	changes: readonly Change[],
	at: Date
): Promise<HistoryEntry['undo']> {
	if (ctx.now().getTime() - at.getTime() > DELETED_KEPT_D * DAY_MS) return null;
	for (const { what, key, after } of changes) {
		const deletedAt = after?.['deleted_at'] ?? null;
		const id = String(key['winter'] ?? key['id'] ?? '');
		const site = what === 'winter' ? String(key['site_id']) : null;
		if (!UNDOABLE.has(what) || typeof deletedAt !== 'string') continue;
		if (await isStillDeleted(ctx, lakeId, { what, id, site }, deletedAt)) return { what, id, site };
	}
	return null;
}
