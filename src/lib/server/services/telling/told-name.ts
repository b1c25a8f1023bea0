import type { Context } from '../../context.ts';
import type { LakeRecord } from '../lakes.ts';
import { listSites, MAIN_SITE } from '../sites.ts';

/** What a lake is called where nobody sees the app around it. */
export function toldName({ name, isInvented }: Pick<LakeRecord, 'name' | 'isInvented'>): string {
	return isInvented ? `${name} (invented)` : name;
}

/** The name of the site whose ice is told of; `null` where the lake has one only. */
export async function toldSite(ctx: Context, lakeId: string): Promise<string | null> {
	const sites = await listSites(ctx, lakeId);
	return sites.length > 1 ? (sites.find(({ id }) => id === MAIN_SITE)?.name ?? null) : null;
}
