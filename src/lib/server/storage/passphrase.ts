import type { Kysely } from 'kysely';
import type { Database } from './schema.ts';

export async function readPassphraseHash(db: Kysely<Database>): Promise<string | null> {
	const row = await db.selectFrom('passphrase').select('hash').executeTakeFirst();
	return row?.hash ?? null;
}

/** Sets it, or takes it away with `null`. All who came in by the one before are out. */
export async function writePassphraseHash(
	db: Kysely<Database>,
	hash: string | null,
	setAt: string
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.deleteFrom('passphrase').execute();
		await tx.deleteFrom('session').where('role', '=', 'owner').execute();
		await tx.deleteFrom('known_device').execute();
		if (hash !== null) {
			await tx.insertInto('passphrase').values({ one: 1, hash, set_at: setAt }).execute();
		}
	});
}

export async function isKnownDevice(db: Kysely<Database>, secretHash: string): Promise<boolean> {
	const row = await db
		.selectFrom('known_device')
		.select('made_at')
		.where('secret_hash', '=', secretHash)
		.executeTakeFirst();
	return row !== undefined;
}

export async function writeKnownDevice(
	db: Kysely<Database>,
	secretHash: string,
	madeAt: string
): Promise<void> {
	await db
		.insertInto('known_device')
		.values({ secret_hash: secretHash, made_at: madeAt })
		.execute();
}
