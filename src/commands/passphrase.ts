import { closeContext, openContext } from '#lib/server/context.ts';
import {
	hasPassphrase,
	removePassphrase,
	setPassphrase,
	whyPassphraseRefused
} from '#lib/server/services/access/passphrase.ts';
import { askUnseen } from './stored/ask-unseen.ts';
import { readWords, Refusal, requireKept, run } from './stored/run.ts';

const USAGE = 'npm run passphrase -- [--remove]';

/** Sets the passphrase that the owner signs in with, or takes it away. The app may be running. */
await run('passphrase', async () => {
	const { words, has } = readWords(USAGE, { remove: { type: 'boolean' } });
	if (words.length > 0) throw new Refusal(`the passphrase is typed, not written here: ${USAGE}`);
	requireKept();
	const passphrase = has('remove') ? null : await readPassphrase();
	const ctx = await openContext(process.env);
	try {
		if (passphrase === null) {
			if (!(await hasPassphrase(ctx))) return 'No passphrase is set.';
			await removePassphrase(ctx);
			return 'The passphrase is taken away. Nobody has to sign in, and Frostledger starts for this machine alone.';
		}
		await setPassphrase(ctx, passphrase);
		return 'The passphrase is set. Everybody has to sign in, and the owner is signed out everywhere.';
	} finally {
		await closeContext(ctx);
	}
});

async function readPassphrase(): Promise<string> {
	const passphrase = await askUnseen('Passphrase (not shown): ');
	const refusal = whyPassphraseRefused(passphrase);
	if (refusal !== null) throw new Refusal(refusal);
	if (process.stdin.isTTY && (await askUnseen('The same again: ')) !== passphrase)
		throw new Refusal('the two are not the same; nothing was changed');
	return passphrase;
}
