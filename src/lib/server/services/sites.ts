import type { Context } from '../context.ts';
import { hasSite } from '../storage/lakes.ts';
import { getLake } from './lakes.ts';
import { NotFound } from './not-found.ts';

/** The site that every lake has, and the one that is meant where none is named. */
export const MAIN_SITE = 'main';

export class SiteNotFound extends NotFound {
	constructor(lakeId: string, site: string) {
		super('site', site, ` of lake "${lakeId}"`);
	}
}

/** @throws LakeNotFound, SiteNotFound */
export async function requireSite(ctx: Context, lakeId: string, site: string): Promise<void> {
	await getLake(ctx, lakeId);
	if (!(await hasSite(ctx.db, lakeId, site))) throw new SiteNotFound(lakeId, site);
}
