import { readFileSync } from 'node:fs';
import type { Context, Environment } from '../../context.ts';
import {
	fitsPassphrase,
	hasPassphrase,
	setPassphrase,
	whyPassphraseRefused
} from './passphrase.ts';

/**
 * Takes over the passphrase of the environment, and refuses to go on where others can reach the app
 * and none is set.
 * @throws Error in a sentence with the remedy
 */
export async function requirePassphraseWhereReachable(
	ctx: Context,
	environment: Environment
): Promise<void> {
	const given = passphraseOf(environment);
	// Setting the same anew would sign the owner out at every start.
	if (given !== null && !(await fitsPassphrase(ctx, given))) await setPassphrase(ctx, given);
	if (ctx.reachableBy === null || (await hasPassphrase(ctx))) return;
	throw new Error(
		`${ctx.reachableBy}, so that others can reach Frostledger, and no passphrase is set; set one with "npm run passphrase", or with FROSTLEDGER_PASSPHRASE or FROSTLEDGER_PASSPHRASE_FILE`
	);
}

function passphraseOf(environment: Environment): string | null {
	const file = environment['FROSTLEDGER_PASSPHRASE_FILE']?.trim() ?? '';
	const given = environment['FROSTLEDGER_PASSPHRASE'] ?? '';
	if (file === '' && given === '') return null;
	// Editors end a file with a line feed.
	const passphrase = given === '' ? readPassphraseFile(file).replace(/\r?\n$/, '') : given;
	const refusal = whyPassphraseRefused(passphrase);
	const setting = given === '' ? 'FROSTLEDGER_PASSPHRASE_FILE' : 'FROSTLEDGER_PASSPHRASE';
	if (refusal !== null) throw new Error(`${setting} cannot be used: ${refusal}`);
	return passphrase;
}

function readPassphraseFile(path: string): string {
	try {
		return readFileSync(path, 'utf8');
	} catch (cause) {
		const why = (cause as NodeJS.ErrnoException).code ?? 'an error';
		throw new Error(
			`FROSTLEDGER_PASSPHRASE_FILE is "${path}", which cannot be read (${why}); name a file that holds nothing but the passphrase`,
			{ cause }
		);
	}
}
