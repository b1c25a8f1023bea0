import type { Context } from '../../context.ts';
import { isKnownDevice, writeKnownDevice } from '../../storage/passphrase.ts';
import { hashOf, newSecret } from '../telling/secret.ts';
import { fitsPassphrase } from './passphrase.ts';
import { openSession, type NewSession } from './sessions.ts';
import { Tries } from './tries.ts';

export type SignIn =
	| { status: 'in'; session: NewSession; device: string }
	| { status: 'wrong' }
	| { status: 'wait'; wait_s: number };

interface Attempt {
	passphrase: string;
	/** Where the request came from, as far as that is known. */
	address: string;
	/** The secret of a browser that has signed in before. */
	device: string | null;
}

/** Of each database, who has tried. */
const tried = new WeakMap<Context['db'], Tries>();

/** Signs the owner in. */
export async function signIn(
	ctx: Context,
	{ passphrase, address, device }: Attempt
): Promise<SignIn> {
	const tries = tried.get(ctx.db) ?? new Tries();
	tried.set(ctx.db, tries);
	const isKnown = device !== null && (await isKnownDevice(ctx.db, hashOf(device)));
	const key = isKnown ? `device ${hashOf(device)}` : `address ${address}`;
	const wait_ms = tries.begin(key, isKnown, ctx.now().getTime());
	if (wait_ms > 0) return { status: 'wait', wait_s: Math.ceil(wait_ms / 1000) };
	if (!(await fitsPassphrase(ctx, passphrase))) return { status: 'wrong' };
	tries.succeeded(key);
	const session = await openSession(ctx, { role: 'owner' });
	return { status: 'in', session, device: isKnown ? device : await remember(ctx) };
}

async function remember({ db, now }: Context): Promise<string> {
	const device = newSecret();
	await writeKnownDevice(db, hashOf(device), now().toISOString());
	return device;
}
