import type { SiteKind } from '#lib/model/site-kind.ts';
import type { Context } from '../context.ts';
import * as storage from '../storage/sites.ts';
import { newId, slug } from './ids.ts';
import { getLake } from './lakes.ts';
import { NotFound } from './not-found.ts';
import type { NewSite, SiteChange } from './site-input.ts';
import { whyNotDeleted, whyNotStored, type SiteIssue } from './site-rules.ts';

/** The site that every lake has, and the one that is meant where none is named. */
export const MAIN_SITE = 'main';

/** A part of a lake with its own ice column. */
export interface SiteRecord {
	id: string;
	name: string;
	kind: SiteKind;
	/** Of a track: the site whose ice it was before its first work. */
	parent: string | null;
}

export class SiteNotFound extends NotFound {
	constructor(lakeId: string, site: string) {
		super('site', site, ` of lake "${lakeId}"`);
	}
}

/** What became of a change: the site as it stands, or what has to be mended first. */
export type SiteOutcome =
	{ status: 'stored'; site: SiteRecord } | { status: 'refused'; issues: SiteIssue[] };

/** `main` first, then by name; none of a lake that there is not. */
export async function listSites({ db }: Context, lakeId: string): Promise<SiteRecord[]> {
	return (await storage.listSiteRows(db, lakeId)).map(toRecord);
}

/** Those that can be brought back by {@link restoreSite}, the last deleted first. */
export async function listDeletedSites({ db }: Context, lakeId: string): Promise<SiteRecord[]> {
	return (await storage.listDeletedSiteRows(db, lakeId)).map(toRecord);
}

/** @throws LakeNotFound, SiteNotFound */
export async function getSite(ctx: Context, lakeId: string, site: string): Promise<SiteRecord> {
	await getLake(ctx, lakeId);
	const row = await storage.findSiteRow(ctx.db, lakeId, site);
	if (!row || row.deleted_at !== null) throw new SiteNotFound(lakeId, site);
	return toRecord(row);
}

/** @throws LakeNotFound */
export async function createSite(
	ctx: Context,
	lakeId: string,
	site: NewSite
): Promise<SiteOutcome> {
	await getLake(ctx, lakeId);
	const issues = whyNotStored(await listSites(ctx, lakeId), site);
	if (issues.length > 0) return { status: 'refused', issues };
	const id = await freeId(ctx, lakeId, site.name);
	const { name, kind, parent } = site;
	const row = { lake_id: lakeId, id, name, kind, parent_id: parent, deleted_at: null };
	await storage.insertSite(ctx.db, row);
	return { status: 'stored', site: { id, ...site } };
}

/** What is absent from `change` stays. @throws LakeNotFound, SiteNotFound */
export async function updateSite(
	ctx: Context,
	lakeId: string,
	id: string,
	change: SiteChange
): Promise<SiteOutcome> {
	const before = await getSite(ctx, lakeId, id);
	const site = { ...before, ...change };
	const issues = whyNotStored(await listSites(ctx, lakeId), site);
	if (issues.length > 0) return { status: 'refused', issues };
	const { name, kind, parent } = site;
	await storage.updateSiteRow(ctx.db, lakeId, id, { name, kind, parent_id: parent });
	return { status: 'stored', site };
}

/** Hides the site and all that belongs to it until {@link restoreSite}. @throws LakeNotFound, SiteNotFound */
export async function deleteSite(ctx: Context, lakeId: string, id: string): Promise<SiteOutcome> {
	const site = await getSite(ctx, lakeId, id);
	const issues = whyNotDeleted(await listSites(ctx, lakeId), id, MAIN_SITE);
	if (issues.length > 0) return { status: 'refused', issues };
	await storage.updateSiteRow(ctx.db, lakeId, id, { deleted_at: ctx.now().toISOString() });
	return { status: 'stored', site };
}

/** Takes a deletion back. @throws LakeNotFound; SiteNotFound when there never was such a site. */
export async function restoreSite(ctx: Context, lakeId: string, id: string): Promise<SiteOutcome> {
	await getLake(ctx, lakeId);
	const row = await storage.findSiteRow(ctx.db, lakeId, id);
	if (!row) throw new SiteNotFound(lakeId, id);
	const issues = whyNotStored(await listSites(ctx, lakeId), toRecord(row));
	if (issues.length > 0) return { status: 'refused', issues };
	await storage.updateSiteRow(ctx.db, lakeId, id, { deleted_at: null });
	return { status: 'stored', site: toRecord(row) };
}

async function freeId({ db }: Context, lakeId: string, siteName: string): Promise<string> {
	const plain = slug(siteName, 'site');
	return (await storage.findSiteRow(db, lakeId, plain)) === undefined ? plain : newId(plain, 6);
}

function toRecord({ id, name, kind, parent_id }: storage.SiteRow): SiteRecord {
	return { id, name, kind, parent: parent_id };
}
