import type { Context } from '../../context.ts';
import type { LakeRecord } from '../lakes.ts';
import type { TellingRow } from '../../storage/telling.ts';
import { listSites } from '../sites.ts';
import { chosenSites } from './told-sites.ts';

/** What a lake is called where nobody sees the app around it. */
export function toldName({ name, isInvented }: Pick<LakeRecord, 'name' | 'isInvented'>): string {
	return isInvented ? `${name} (invented)` : name;
}

export interface ToldSite {
	id: string;
	/** `null` where the lake has one site only. */
	name: string | null;
}

/** The sites whose ice is told of, one at least. */
export async function toldSites(
	ctx: Context,
	lakeId: string,
	row: Pick<TellingRow, 'sites'>
): Promise<ToldSite[]> {
	const sites = await listSites(ctx, lakeId);
	const nameOf = (id: string) => sites.find((site) => site.id === id)?.name ?? null;
	return chosenSites(row, sites).map((id) => ({ id, name: sites.length > 1 ? nameOf(id) : null }));
}
