import { nameOf, ON_THIS_MACHINE } from '#lib/server/services/access/viewer.ts';
import { writingAs } from '#lib/server/services/history/history.ts';
import { closeContext, openContext } from '#lib/server/context.ts';
import type { FileProblem } from '#lib/server/services/tidy/folder.ts';
import { importWinters, type BroughtLake } from '#lib/server/services/tidy/import-winters.ts';
import { pathFrom, readWords, Refusal, run } from './stored/run.ts';
import { readWintersAt } from './stored/winters-folder.ts';

const USAGE = 'npm run import -- FOLDER (or FILE.zip) [--dry-run]';

/** The lakes of a tidy winters folder, all or nothing; with --dry-run only what would become of it. */
await run('import', async () => {
	const { words, has } = readWords(USAGE, { 'dry-run': { type: 'boolean' } });
	const [where, ...more] = words;
	if (where === undefined || more.length > 0) throw new Refusal(`name one folder: ${USAGE}`);
	const files = readWintersAt(pathFrom(where));
	const ctx = await openContext(process.env);
	try {
		const who = { name: nameOf(ON_THIS_MACHINE), at: ctx.now() };
		const { status, lakes, problems, leftOut } = await writingAs(who, () =>
			importWinters(ctx, files, { dryRun: has('dry-run') })
		);
		if (status === 'refused') {
			throw new Refusal(`nothing is stored; to be mended:\n${listed(problems)}`);
		}
		const done = status === 'stored' ? 'Stored' : 'Would be stored';
		return [
			...lakes.map((lake) => `${done}: ${told(lake)}`),
			...(leftOut.length > 0 ? [`Left out:\n${listed(leftOut)}`] : [])
		].join('\n');
	} finally {
		await closeContext(ctx);
	}
});

function told({ id, name, sites, winters, readings, days, isNameTaken }: BroughtLake): string {
	const what = `${sites} sites, ${winters} winters, ${readings} readings, ${days} days of weather`;
	const beside = isNameTaken ? ' (beside one of the same name)' : '';
	return `${name}${id === null ? '' : ` as ${id}`}, ${what}${beside}`;
}

function listed(problems: readonly FileProblem[]): string {
	return problems
		.map(({ file, line, reason }) => `  ${file}${line > 0 ? ` line ${line}` : ''}: ${reason}`)
		.join('\n');
}
