import { z } from 'zod';
import type { Context } from '../../context.ts';
import * as storage from '../../storage/api-tokens.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { name } from '../fields.ts';
import { newId } from '../ids.ts';
import { hashOf, newSecret } from '../telling/secret.ts';
import type { Viewer } from './viewer.ts';

export const tokenInput = z.strictObject({ name });

export interface ApiToken {
	id: string;
	name: string;
	madeAt: Date;
	/** The UTC day that it was last used on. */
	usedOn: string | null;
}

/** Makes a token for a script that acts as a helper, or as the owner with `null`. Told this once. */
export async function makeToken(
	{ db, now }: Context,
	personId: string | null,
	name: string
): Promise<string> {
	const secret = newSecret();
	await storage.insertToken(db, {
		id: newId('t'),
		name,
		secret_hash: hashOf(secret),
		person_id: personId,
		made_at: now().toISOString(),
		used_on: null
	});
	return secret;
}

export async function listTokens({ db }: Context, personId: string | null): Promise<ApiToken[]> {
	const rows = await storage.listTokens(db, personId);
	return rows.map(({ id, name, made_at, used_on }) => ({
		id,
		name,
		madeAt: new Date(made_at),
		usedOn: used_on
	}));
}

/** It opens nothing from now on. */
export async function revokeToken(
	{ db }: Context,
	personId: string | null,
	id: string
): Promise<void> {
	await storage.deleteToken(db, id, personId);
}

/** Whom a token stands for. */
export async function findTokenHolder(ctx: Context, secret: string): Promise<Viewer> {
	const found = await storage.findToken(ctx.db, hashOf(secret));
	if (!found) return { role: 'stranger', way: 'none' };
	const today = ctx.now().toISOString().slice(0, 10);
	// Once a day: reading must not cost a write.
	if (found.used_on !== today)
		await refetchable(ctx.db, (db) => storage.noteTokenUsed(db, found.id, today));
	return found.person
		? { role: 'helper', way: 'token', ...found.person }
		: { role: 'owner', way: 'token' };
}
