import type { Context } from '../context.ts';
import { databaseSize_B, freeRoom_B, tableSizes } from '../storage/stored-sizes.ts';
import { listBackups } from './backups.ts';

/**
 * `entered`: what people typed in; `imported`: weather files; `brought`: what weather sources told;
 * `joined`: days made from both; `told`: what is told of lakes, where to, and what was; `sources`: how sources are set up and how asking them went;
 * `own`: the database's own tables.
 */
export type StoredKind = 'entered' | 'imported' | 'brought' | 'joined' | 'told' | 'sources' | 'own';

export interface StoredAmount {
	kind: StoredKind;
	rows: number;
	size_B: number;
}

export interface StoredAmounts {
	/** The data folder as it was named. */
	folder: string;
	database_B: number;
	backups_B: number;
	free_B: number;
	amounts: StoredAmount[];
}

const KINDS: readonly StoredKind[] = [
	'entered',
	'imported',
	'brought',
	'joined',
	'told',
	'sources',
	'own'
];

const TABLES: Readonly<Record<string, StoredKind>> = {
	weather_day: 'imported',
	weather_hour: 'imported',
	source_day: 'brought',
	source_hour: 'brought',
	forecast_issue: 'brought',
	forecast_day: 'brought',
	forecast_hour: 'brought',
	joined_day: 'joined',
	rejoin: 'joined',
	telling: 'told',
	telling_feed: 'told',
	telling_message: 'told',
	telling_date: 'told',
	webhook: 'told',
	webhook_outbox: 'told',
	source: 'sources',
	source_key: 'sources',
	source_state: 'sources',
	lake_source: 'sources',
	csv_trust: 'sources',
	fetch_state: 'sources',
	fetch_log: 'sources'
};

/** What is stored, where and how much of it; `null` while everything is in memory only. */
export async function storedAmounts(ctx: Context): Promise<StoredAmounts | null> {
	if (!ctx.place) return null;
	const { folder, file } = ctx.place;
	const sizes = await tableSizes(file);
	const amounts = KINDS.map((kind) => {
		const ofKind = sizes.filter(({ table }) => kindOf(table) === kind);
		return { kind, rows: sum(ofKind, 'rows'), size_B: sum(ofKind, 'size_B') };
	});
	return {
		folder,
		database_B: databaseSize_B(file),
		backups_B: sum(listBackups(ctx), 'size_B'),
		free_B: await freeRoom_B(folder),
		amounts
	};
}

/** A table that nobody has listed holds what people entered: that is what most are made for. */
function kindOf(table: string): StoredKind {
	return TABLES[table] ?? (/^(sqlite|kysely)_/.test(table) ? 'own' : 'entered');
}

function sum<Name extends string>(items: readonly Record<Name, number>[], name: Name): number {
	return items.reduce((total, item) => total + item[name], 0);
}
