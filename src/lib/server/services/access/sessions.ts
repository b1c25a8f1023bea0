import type { Context } from '../../context.ts';
import * as storage from '../../storage/sessions.ts';
import { hashOf, newSecret } from '../telling/secret.ts';

const DAY_MS = 86_400_000;

/** A winter; a guest's link opens the door again at any time. Our choice. */
export const SESSION_D = { owner: 180, helper: 180, guest: 30 } as const;

export interface NewSession {
	/** Goes into the visitor's cookie, and is stored as a digest only. */
	secret: string;
	until: Date;
}

type Who =
	{ role: 'owner' } | { role: 'helper'; personId: string } | { role: 'guest'; guestLinkId: string };

/** Lets somebody in for some time. */
export async function openSession({ db, now }: Context, who: Who): Promise<NewSession> {
	const secret = newSecret();
	const madeAt = now();
	const until = new Date(madeAt.getTime() + SESSION_D[who.role] * DAY_MS);
	await storage.insertSession(db, {
		secret_hash: hashOf(secret),
		role: who.role,
		person_id: who.role === 'helper' ? who.personId : null,
		guest_link_id: who.role === 'guest' ? who.guestLinkId : null,
		made_at: madeAt.toISOString(),
		until_at: until.toISOString()
	});
	return { secret, until };
}

export async function closeSession({ db }: Context, secret: string): Promise<void> {
	await storage.deleteSession(db, hashOf(secret));
}

/** On every device of one person; of the owner with `null`. */
export async function closeSessionsOf({ db }: Context, personId: string | null): Promise<void> {
	await storage.deleteSessionsOf(db, personId);
}

/** Everybody's on every device, and all browsers are strangers again. */
export async function closeAllSessions({ db }: Context): Promise<void> {
	await storage.deleteAllSessions(db);
}
