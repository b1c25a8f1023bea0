import type { Context } from '../../context.ts';
import { forgetBrought } from '../../storage/forget-brought.ts';
import { markForSource } from '../../storage/joined-days.ts';
import { listAllUsesOfSource } from '../../storage/lake-sources.ts';
import { forgetValidatorsOf } from '../../storage/fetch-states.ts';
import { listKeyedSources, readSourceKey, writeSourceKey } from '../../storage/source-keys.ts';
import { forgetFailures, listSourceStates, type SourceState } from '../../storage/source-states.ts';
import * as storage from '../../storage/sources.ts';
import type { WeatherSource } from '../../weather/source/contract.ts';
import { newId } from '../ids.ts';
import { NotFound } from '../not-found.ts';
import { nudgeSchedule } from '../refresh/nudge.ts';
import { readConfig } from './config.ts';
import { hostsOfCalls } from './hosts.ts';
import type { NewSource, SourceChange } from './input.ts';
import { readsAlike } from './read-alike.ts';

export interface SourceRecord {
	id: string;
	name: string;
	/** `null` where what is stored is no longer understood; `problem` says why. */
	source: WeatherSource | null;
	problem: string | null;
	isOn: boolean;
	/** Whether a key is stored. The key itself never leaves the server. */
	hasKey: boolean;
	createdAt: Date;
	/** Calls made on this UTC day. */
	callsToday: number;
	lastSuccessAt: Date | null;
	/** Failures in a row. */
	failures: number;
	/** It is left alone until then: it asked for that, or it failed. */
	waitsUntilAt: Date | null;
}

export class SourceNotFound extends NotFound {
	constructor(id: string) {
		super('source', id);
	}
}

export async function listSources(ctx: Context): Promise<SourceRecord[]> {
	const rows = await storage.listSourceRows(ctx.db);
	return describe(ctx, rows);
}

/** @throws SourceNotFound when there is no such source, or it is deleted. */
export async function getSource(ctx: Context, id: string): Promise<SourceRecord> {
	const [record] = await describe(ctx, [await requireRow(ctx, id)]);
	if (!record) throw new SourceNotFound(id);
	return record;
}

/** Addresses of the API stand at these. */
const RESERVED_IDS = new Set(['try', 'log', 'ready-made', 'csv', 'new']);

/** A source whose id is taken gets one of its own. */
export async function createSource(
	ctx: Context,
	{ source, key }: NewSource
): Promise<SourceRecord> {
	const isTaken =
		RESERVED_IDS.has(source.id) || (await storage.findSourceRow(ctx.db, source.id)) !== undefined;
	const id = isTaken ? newId(source.id.slice(0, 30), 6) : source.id;
	await storage.insertSource(ctx.db, {
		id,
		name: source.name,
		config: JSON.stringify({ ...source, id }),
		is_on: 1,
		created_at: ctx.now().toISOString(),
		deleted_at: null
	});
	if (key !== null) await writeSourceKey(ctx.db, id, key);
	return getSource(ctx, id);
}

/**
 * What is absent stays, the key too unless the new configuration sends it to another host. A changed
 * source is due at once; only a wait that the service asked for stands. Where it is asked or read in
 * another way, what it brought so far is forgotten, of every lake: it may have been read wrongly.
 */
export async function updateSource(
	ctx: Context,
	id: string,
	change: SourceChange
): Promise<SourceRecord> {
	const row = await requireRow(ctx, id);
	const { source, isOn, key } = change;
	await ctx.db.transaction().execute(async (tx) => {
		if (source && key === undefined && !keepsHosts(row, source)) await writeSourceKey(tx, id, null);
		if (key !== undefined) await writeSourceKey(tx, id, key);
		await storage.updateSourceRow(tx, id, {
			...(source ? { name: source.name, config: JSON.stringify({ ...source, id }) } : {}),
			...(isOn === undefined ? {} : { is_on: isOn ? 1 : 0 })
		});
		await forgetFailures(tx, id);
		if (source) await forgetValidatorsOf(tx, id);
		if (source && !keepsReading(row, source)) {
			await forgetBrought(tx, await listAllUsesOfSource(tx, id));
		}
	});
	nudgeSchedule(ctx);
	return getSource(ctx, id);
}

/** Takes the source and what it brought out of use until {@link restoreSource}. */
export async function deleteSource(ctx: Context, id: string): Promise<void> {
	await requireRow(ctx, id);
	await ctx.db.transaction().execute(async (tx) => {
		await storage.updateSourceRow(tx, id, { deleted_at: ctx.now().toISOString() });
		await markForSource(tx, id);
	});
}

/** Takes a deletion back, with what the source had brought. */
export async function restoreSource(ctx: Context, id: string): Promise<SourceRecord> {
	if (!(await storage.findSourceRow(ctx.db, id))) throw new SourceNotFound(id);
	await ctx.db.transaction().execute(async (tx) => {
		await storage.updateSourceRow(tx, id, { deleted_at: null });
		await markForSource(tx, id);
	});
	nudgeSchedule(ctx);
	return getSource(ctx, id);
}

/** What is needed to ask a source, key included: for the fetching of weather alone. */
export async function openSource(
	ctx: Context,
	id: string
): Promise<{ row: storage.SourceRow; source: WeatherSource; key: string | null } | null> {
	const row = await storage.findSourceRow(ctx.db, id);
	if (!row || row.deleted_at !== null) return null;
	const { source } = readConfig(row);
	return source && { row, source, key: await readSourceKey(ctx.db, id) };
}

function keepsHosts(row: storage.SourceRow, after: WeatherSource): boolean {
	const { source: before } = readConfig(row);
	const known = new Set(before ? hostsOfCalls(before.calls) : []);
	return hostsOfCalls(after.calls).every((host) => known.has(host));
}

function keepsReading(row: storage.SourceRow, after: WeatherSource): boolean {
	const { source: before } = readConfig(row);
	return before !== null && readsAlike(before, after);
}

async function requireRow({ db }: Context, id: string): Promise<storage.SourceRow> {
	const row = await storage.findSourceRow(db, id);
	if (!row || row.deleted_at !== null) throw new SourceNotFound(id);
	return row;
}

async function describe(ctx: Context, rows: readonly storage.SourceRow[]): Promise<SourceRecord[]> {
	const keyed = await listKeyedSources(ctx.db);
	const states = new Map((await listSourceStates(ctx.db)).map((state) => [state.source_id, state]));
	return rows.map((row) => ({
		id: row.id,
		name: row.name,
		...readConfig(row),
		isOn: row.is_on === 1,
		hasKey: keyed.has(row.id),
		createdAt: new Date(row.created_at),
		...stateWords(states.get(row.id), ctx.now())
	}));
}

function stateWords(state: SourceState | undefined, now: Date) {
	const waits = [state?.retry_after_at, state?.back_off_until_at]
		.filter((at) => at != null)
		.map((at) => new Date(at))
		.filter((at) => at > now);
	const isToday = state?.calls_on === now.toISOString().slice(0, 10);
	return {
		callsToday: isToday ? state.calls : 0,
		lastSuccessAt: state?.last_success_at ? new Date(state.last_success_at) : null,
		failures: state?.failures ?? 0,
		waitsUntilAt: waits.toSorted((a, b) => b.getTime() - a.getTime())[0] ?? null
	};
}
