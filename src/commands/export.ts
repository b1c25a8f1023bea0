import { closeContext, openContext } from '#lib/server/context.ts';
import { listLakes } from '#lib/server/services/lakes.ts';
import { exportWinters } from '#lib/server/services/tidy/export-winters.ts';
import { pathFrom, readWords, Refusal, run } from './stored/run.ts';
import { writeWinters } from './stored/winters-folder.ts';

const USAGE = 'npm run export -- LAKE FOLDER (or FILE.zip)';

/** A lake as a tidy winters folder, which `validate` can score. */
await run('export', async () => {
	const { words } = readWords(USAGE, {});
	const [id, where, ...more] = words;
	if (id === undefined || where === undefined || more.length > 0) {
		throw new Refusal(`name a lake and a folder: ${USAGE}`);
	}
	const ctx = await openContext(process.env);
	try {
		const lakes = await listLakes(ctx);
		if (!lakes.some((lake) => lake.id === id)) {
			throw new Refusal(
				`there is no lake "${id}"; there are ${lakes.map((lake) => lake.id).join(', ') || 'none'}`
			);
		}
		writeWinters(pathFrom(where), await exportWinters(ctx, id), ctx.now());
		return `Exported ${id} to ${pathFrom(where)}`;
	} finally {
		await closeContext(ctx);
	}
});
