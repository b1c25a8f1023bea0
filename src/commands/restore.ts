import { restoreFrom } from '#lib/server/services/backups.ts';
import { pathFrom, readWords, Refusal, requireKept, run } from './stored/run.ts';

const USAGE = 'npm run restore -- FILE [--replace]';

/**
 * Puts a backup into the data folder, where what is there makes way only with --replace, or into an
 * empty database on a server.
 */
await run('restore', async () => {
	const { words, has } = readWords(USAGE, { replace: { type: 'boolean' } });
	const [word, ...more] = words;
	if (word === undefined || more.length > 0) throw new Refusal(`name one file: ${USAGE}`);
	const kept = requireKept();
	const { replaced } = await restoreFrom(pathFrom(word), kept, { replace: has('replace') });
	const before = replaced === null ? '' : `\nWhat was there before: ${replaced}`;
	const { database } = kept;
	const where = typeof database === 'string' ? database : `the database on ${database.host}`;
	return `Restored into ${where}.${before}`;
});
