import { join } from 'node:path';
import { openContext } from '../../src/lib/server/context.ts';
import { backUpTo, makeBackup } from '../../src/lib/server/services/backups.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';

/**
 * `open`: opens the database, which brings an old schema up to date. `backup`: writes readings without
 * end and makes one backup after the other meanwhile, both among the others and of a name given.
 */
async function work(what: string, folder: string, aside: string): Promise<void> {
	process.stdout.write('begin\n');
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	process.stdout.write('open\n');
	if (what === 'open') return;
	const [lake] = await listLakes(ctx);
	if (!lake || !ctx.kept) throw new Error(`no lake in ${folder}`);
	let count = 0;
	void (async () => {
		for (;;) {
			await addReadings(ctx, lake.id, 'main', [readingOf('one'), readingOf('two')]);
			process.stdout.write(`stored ${++count}\n`);
			await new Promise((resolve) => setImmediate(resolve));
		}
	})();
	for (let round = 0; ; round++) {
		await makeBackup(ctx);
		process.stdout.write('backup\n');
		await backUpTo(ctx.kept, join(aside, `${process.pid}-${round}.db`));
	}
}

function readingOf(remark: string) {
	return readingInput.parse({
		on: '2026-01-10',
		kind: 'measured',
		holes: [{ total_m: 0.3 }],
		remark
	});
}

const [what = '', folder = '', aside = ''] = process.argv.slice(2);
await work(what, folder, aside);
