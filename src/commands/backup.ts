import { backUpBeside, backUpTo } from '#lib/server/services/backups.ts';
import { pathFrom, readWords, Refusal, requireKept, run } from './stored/run.ts';

const USAGE = 'npm run backup -- [FILE]';

/** A backup of the database, which may be in use, to FILE, or into the data folder without one. */
await run('backup', async () => {
	const { words } = readWords(USAGE, {});
	const [word, ...more] = words;
	if (more.length > 0) throw new Refusal(`name one file: ${USAGE}`);
	const kept = requireKept();
	if (word === undefined) return `Backup, checked: ${await backUpBeside(kept, new Date())}`;
	const file = pathFrom(word);
	await backUpTo(kept, file);
	return `Backup, checked: ${file}\nIt holds the keys of weather services and webhooks, and who may come in: keep it as you keep them.`;
});
