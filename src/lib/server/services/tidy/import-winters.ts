import type { Context } from '../../context.ts';
import { findLakeRow } from '../../storage/lakes.ts';
import { insertWholeLakes, type WholeLake } from '../../storage/whole-lake.ts';
import { newId, slug } from '../ids.ts';
import { joinChanged } from '../joining.ts';
import { listLakes, newLakeRow, RESERVED_IDS } from '../lakes.ts';
import type { FileProblem, TidyFiles } from './folder.ts';
import type { TidyLake } from './read-lake.ts';
import { readWinters } from './read-winters.ts';

/** What a lake of the folder brings. */
export interface BroughtLake {
	/** `null` while nothing is stored. */
	id: string | null;
	name: string;
	sites: number;
	winters: number;
	readings: number;
	/** Days of weather. */
	days: number;
	/** There is a lake of this name already; this one is another beside it. */
	isNameTaken: boolean;
}

export interface WintersImport {
	status: 'stored' | 'dryRun' | 'refused';
	lakes: BroughtLake[];
	problems: FileProblem[];
	leftOut: FileProblem[];
}

/** Makes the lakes of a tidy winters folder, with all that it holds of them: all or nothing. */
export async function importWinters(
	ctx: Context,
	files: TidyFiles,
	{ dryRun = false }: { dryRun?: boolean } = {}
): Promise<WintersImport> {
	const { lakes, problems, leftOut } = readWinters(files);
	if (problems.length > 0) return { status: 'refused', lakes: [], problems, leftOut };
	const names = new Set((await listLakes(ctx)).map(({ name }) => name));
	const brought = lakes.map((lake) => summary(lake, names));
	if (dryRun) return { status: 'dryRun', lakes: brought, problems, leftOut };
	const whole: WholeLake[] = [];
	for (const lake of lakes) whole.push(await wholeLake(ctx, lake, whole));
	await insertWholeLakes(ctx.db, whole, ctx.now());
	for (const { lake } of whole) await joinChanged(ctx, lake.id);
	const stored = brought.map((lake, index) => ({ ...lake, id: whole[index]?.lake.id ?? null }));
	return { status: 'stored', lakes: stored, problems, leftOut };
}

function summary({ lake, sites, days }: TidyLake, names: ReadonlySet<string>): BroughtLake {
	const count = (of: 'winters' | 'readings') =>
		sites.reduce((sum, site) => sum + site[of].length, 0);
	return {
		id: null,
		name: lake.name,
		sites: sites.length,
		winters: count('winters'),
		readings: count('readings'),
		days: days.length,
		isNameTaken: names.has(lake.name)
	};
}

async function wholeLake(
	{ db, now }: Context,
	{ wantedId, lake, invented, sites, days }: TidyLake,
	before: readonly WholeLake[]
): Promise<WholeLake> {
	const plain = slug(wantedId);
	const isTaken =
		RESERVED_IDS.has(plain) ||
		before.some((other) => other.lake.id === plain) ||
		(await findLakeRow(db, plain)) !== undefined;
	return {
		lake: {
			...newLakeRow(isTaken ? newId(plain, 6) : plain, lake, invented, now()),
			// Counted from one: an invented lake without weather would pass for a broken start.
			weather_revision: 1
		},
		sites: sites.map(({ id, name, kind, parent, winters, readings }) => ({
			site: { id, name, kind, parent_id: parent, deleted_at: null },
			winters,
			readings: readings.map((reading) => ({ id: newId('r'), ...reading }))
		})),
		days
	};
}
