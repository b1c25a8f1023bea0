import { z } from 'zod';
import type { Context } from '../../context.ts';
import * as storage from '../../storage/people.ts';
import { name } from '../fields.ts';
import { newId } from '../ids.ts';
import { NotFound } from '../not-found.ts';
import { hashOf, newSecret } from '../telling/secret.ts';
import { openSession, type NewSession } from './sessions.ts';

export const helperInput = z.strictObject({
	name,
	/** Whether the link lets in once only, or until it is revoked. */
	joinsOnce: z.boolean()
});

export interface Helper {
	id: string;
	name: string;
	/** Whether the link that was given out still lets in. */
	hasLink: boolean;
	joinsOnce: boolean;
	joinedAt: Date | null;
}

export class LinkNotFound extends NotFound {
	constructor() {
		super('link', 'that lets in', ' at this address, or not any more');
	}
}

export async function listHelpers({ db }: Context): Promise<Helper[]> {
	const rows = await storage.listPeople(db);
	return rows.map(({ id, name, secret_hash, joins_once, joined_at }) => ({
		id,
		name,
		hasLink: secret_hash !== null,
		joinsOnce: joins_once === 1,
		joinedAt: joined_at === null ? null : new Date(joined_at)
	}));
}

/** Whether there is a helper of this id, or any more. */
export async function isHelper({ db }: Context, id: string): Promise<boolean> {
	return (await storage.findPerson(db, id)) !== undefined;
}

/** Makes a helper; tells the path of the link to join by this once. */
export async function addHelper(
	{ db, now }: Context,
	{ name, joinsOnce }: z.output<typeof helperInput>
): Promise<string> {
	const secret = newSecret();
	await storage.insertPerson(db, {
		id: newId('p'),
		name,
		secret_hash: hashOf(secret),
		joins_once: joinsOnce ? 1 : 0,
		made_at: now().toISOString(),
		joined_at: null
	});
	return `/join/${secret}`;
}

/** Another link; the one before lets nobody in, and the helper is signed out. */
export async function renewJoinLink(
	{ db }: Context,
	id: string,
	joinsOnce: boolean
): Promise<string> {
	const secret = newSecret();
	const link = { secret_hash: hashOf(secret), joins_once: joinsOnce ? 1 : 0 } as const;
	if (!(await storage.renewPerson(db, id, link))) throw new LinkNotFound();
	return `/join/${secret}`;
}

/** Signed out at once, with tokens and link. What they entered stays, under their name. */
export async function removeHelper({ db }: Context, id: string): Promise<void> {
	await storage.deletePerson(db, id);
}

/** Whose link it is. @throws LinkNotFound */
export async function nameOfJoinLink({ db }: Context, secret: string): Promise<string> {
	const person = await storage.findPersonBySecret(db, hashOf(secret));
	if (!person) throw new LinkNotFound();
	return person.name;
}

/** Lets a helper in. @throws LinkNotFound, also when one that works once has been used */
export async function join(ctx: Context, secret: string): Promise<NewSession> {
	const person = await storage.findPersonBySecret(ctx.db, hashOf(secret));
	if (!person) throw new LinkNotFound();
	if (!(await storage.noteJoined(ctx.db, person, ctx.now().toISOString())))
		throw new LinkNotFound();
	return openSession(ctx, { role: 'helper', personId: person.id });
}
