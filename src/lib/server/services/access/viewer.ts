import type { Context } from '../../context.ts';
import { readPassphraseHash } from '../../storage/passphrase.ts';
import { findSession } from '../../storage/sessions.ts';
import { hashOf } from '../telling/secret.ts';
import { findTokenHolder } from './tokens.ts';

export type { Role } from '../../storage/access-schema.ts';

/** Who looks at a page or calls the API, and what that rests on. */
export type Viewer =
	/** `way`: `machine` where nobody has to sign in. */
	| { role: 'owner'; way: 'machine' | 'session' | 'token' }
	| { role: 'helper'; way: 'session' | 'token'; id: string; name: string }
	/** Sees one lake, and its exact places only where that is allowed. */
	| { role: 'guest'; way: 'session'; lake: string; seesPlaces: boolean }
	| { role: 'stranger'; way: 'none' };

export const STRANGER: Viewer = { role: 'stranger', way: 'none' };
export const ON_THIS_MACHINE: Viewer = { role: 'owner', way: 'machine' };

interface Shown {
	/** Of the session cookie. */
	session: string | null;
	/** Of the header `Authorization: Bearer`; then nothing else counts. */
	token: string | null;
}

/**
 * Whom the app has before it. Without a passphrase everybody is the owner, on this machine; where
 * others can reach it as well, as when the passphrase is taken away meanwhile, nobody is.
 */
export async function viewerOf(ctx: Context, { session, token }: Shown): Promise<Viewer> {
	const isOpen = (await readPassphraseHash(ctx.db)) === null;
	if (isOpen) return ctx.reachableBy === null ? ON_THIS_MACHINE : STRANGER;
	if (token !== null) return findTokenHolder(ctx, token);
	if (session === null) return STRANGER;
	const found = await findSession(ctx.db, hashOf(session), ctx.now().toISOString());
	if (found?.role === 'owner') return { role: 'owner', way: 'session' };
	if (found?.person) return { role: 'helper', way: 'session', ...found.person };
	if (found?.guest) {
		const { lake_id, sees_places } = found.guest;
		return { role: 'guest', way: 'session', lake: lake_id, seesPlaces: sees_places === 1 };
	}
	return STRANGER;
}

/** Under whose name changes are put on record. */
export function nameOf(viewer: Viewer): string {
	switch (viewer.role) {
		case 'owner':
			return viewer.way === 'machine' ? 'on this machine' : 'the owner';
		case 'helper':
			return viewer.name;
		default:
			return 'a guest';
	}
}

/** The same person under the same id, on every device and in every session; `null` for a stranger. No secret. */
export function personOf(viewer: Viewer): { id: string; name: string } | null {
	const name = nameOf(viewer);
	switch (viewer.role) {
		case 'owner':
			return { id: viewer.way === 'machine' ? 'machine' : 'owner', name };
		case 'helper':
			return { id: viewer.id, name };
		case 'guest':
			return { id: 'guest', name };
		default:
			return null;
	}
}

/** Exact positions of places, and of the lake. */
export function seesPlaces(viewer: Viewer): boolean {
	return viewer.role === 'guest' ? viewer.seesPlaces : viewer.role !== 'stranger';
}

/** What two viewers who are shown the same have in common. */
export function viewOf(viewer: Viewer): string {
	return viewer.role === 'guest' && viewer.seesPlaces ? 'guest, with places' : viewer.role;
}
