import { z } from 'zod';
import type { Context } from '../../context.ts';
import * as storage from '../../storage/guest-links.ts';
import { name } from '../fields.ts';
import { newId } from '../ids.ts';
import { getLake } from '../lakes.ts';
import { hashOf, newSecret } from '../telling/secret.ts';
import { LinkNotFound } from './people.ts';
import { openSession, type NewSession } from './sessions.ts';

export const guestLinkInput = z.strictObject({
	/** Whom it is for, to know it by when it is revoked. */
	name,
	lake: z.string(),
	seesPlaces: z.boolean()
});

export interface GuestLink {
	id: string;
	name: string;
	lake: string;
	seesPlaces: boolean;
	openedAt: Date | null;
}

export async function listGuestLinks({ db }: Context): Promise<GuestLink[]> {
	const rows = await storage.listGuestLinks(db);
	return rows.map(({ id, name, lake_id, sees_places, opened_at }) => ({
		id,
		name,
		lake: lake_id,
		seesPlaces: sees_places === 1,
		openedAt: opened_at === null ? null : new Date(opened_at)
	}));
}

/** Makes a link to look at one lake by; tells its path this once. @throws LakeNotFound */
export async function addGuestLink(
	ctx: Context,
	{ name, lake, seesPlaces }: z.output<typeof guestLinkInput>
): Promise<string> {
	await getLake(ctx, lake);
	const secret = newSecret();
	await storage.insertGuestLink(ctx.db, {
		id: newId('g'),
		lake_id: lake,
		name,
		secret_hash: hashOf(secret),
		sees_places: seesPlaces ? 1 : 0,
		made_at: ctx.now().toISOString(),
		opened_at: null
	});
	return `/look/${secret}`;
}

/** Whoever came in by it sees nothing from now on. */
export async function revokeGuestLink({ db }: Context, id: string): Promise<void> {
	await storage.deleteGuestLink(db, id);
}

/** Which lake a link shows. @throws LinkNotFound */
export async function lakeOfGuestLink({ db }: Context, secret: string): Promise<string> {
	const link = await storage.findGuestLink(db, hashOf(secret));
	if (!link) throw new LinkNotFound();
	return link.lake_id;
}

/** Lets a guest in. @throws LinkNotFound */
export async function look(ctx: Context, secret: string): Promise<NewSession> {
	const link = await storage.findGuestLink(ctx.db, hashOf(secret));
	if (!link) throw new LinkNotFound();
	await storage.noteOpened(ctx.db, link.id, ctx.now().toISOString());
	return openSession(ctx, { role: 'guest', guestLinkId: link.id });
}
