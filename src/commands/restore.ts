import { restoreFrom } from '#lib/server/services/backups.ts';
import { pathFrom, readWords, Refusal, requirePlace, run } from './stored/run.ts';

const USAGE = 'npm run restore -- FILE [--replace]';

/** Puts a backup into the data folder; what is there makes way only with --replace. */
await run('restore', async () => {
	const { words, has } = readWords(USAGE, { replace: { type: 'boolean' } });
	const [word, ...more] = words;
	if (word === undefined || more.length > 0) throw new Refusal(`name one file: ${USAGE}`);
	const place = requirePlace();
	const { replaced } = await restoreFrom(pathFrom(word), place, { replace: has('replace') });
	const before = replaced === null ? '' : `\nWhat was there before: ${replaced}`;
	return `Restored into ${place.file}.${before}`;
});
