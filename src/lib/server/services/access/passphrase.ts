import type { Context } from '../../context.ts';
import { readPassphraseHash, writePassphraseHash } from '../../storage/passphrase.ts';
import { scryptFits, scryptHash } from './scrypt.ts';

/** Shorter ones can be guessed. Our choice. */
const PASSPHRASE_LETTERS = { least: 12, most: 500 };

/** What is wrong with a passphrase, in a sentence; `null` when it can be used. */
export function whyPassphraseRefused(passphrase: string): string | null {
	const { least, most } = PASSPHRASE_LETTERS;
	const { length } = [...passphrase];
	if (length < least)
		return `The passphrase has ${length} characters; take ${least} or more, as four words that do not belong together have`;
	if (length > most) return `The passphrase has more than ${most} characters`;
	return null;
}

/** Whether anybody has to sign in at all. */
export async function hasPassphrase({ db }: Context): Promise<boolean> {
	return (await readPassphraseHash(db)) !== null;
}

export async function fitsPassphrase({ db }: Context, passphrase: string): Promise<boolean> {
	const hash = await readPassphraseHash(db);
	return hash !== null && scryptFits(passphrase, hash);
}

/** Sets the passphrase. The owner is signed out everywhere. */
export async function setPassphrase({ db, now }: Context, passphrase: string): Promise<void> {
	await writePassphraseHash(db, await scryptHash(passphrase), now().toISOString());
}

/** Takes it away: nobody has to sign in, and only this machine can be served. */
export async function removePassphrase({ db, now }: Context): Promise<void> {
	await writePassphraseHash(db, null, now().toISOString());
}
