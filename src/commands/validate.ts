import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { asShipped } from './validate/modes.ts';
import { refitted } from './validate/refit.ts';
import { report } from './validate/report.ts';
import { selectScored } from './validate/selection.ts';
import { textTable } from './validate/text-table.ts';
import { readTidyFolder } from './validate/tidy-folder.ts';
import { UnreadableFolder } from './validate/tidy-table.ts';

const USAGE = 'npm run --silent validate -- FOLDER [--json] [--refit]';

// A reader that has seen enough, `| head`, closes the pipe: no reason for a stack trace.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
	if (error.code !== 'EPIPE') throw error;
});

try {
	process.stdout.write(`${main()}\n`);
} catch (error) {
	if (!(error instanceof UnreadableFolder)) throw error;
	process.stderr.write(`validate: ${error.message}\n`);
	process.exitCode = 2;
}

function main(): string {
	const { folder, json, refit } = readArguments();
	const selection = selectScored(readTidyFolder(folder));
	if (selection.winters.length === 0)
		throw new UnreadableFolder(`no reading in ${folder} can be scored by the rules of the folder`);
	const scores = refit
		? report(selection, 'refitted', refitted(selection.winters))
		: report(selection, 'shipped', asShipped);
	return json ? JSON.stringify(scores, null, 1) : textTable(scores);
}

function readArguments() {
	try {
		const { positionals, values } = parseArgs({
			allowPositionals: true,
			options: { json: { type: 'boolean' }, refit: { type: 'boolean' } }
		});
		const [folder, ...more] = positionals;
		if (!folder || more.length > 0) throw new UnreadableFolder(`name one folder: ${USAGE}`);
		// npm changes into the project first; the folder is meant from where it was called.
		const from = process.env.INIT_CWD ?? process.cwd();
		return {
			folder: resolve(from, folder),
			json: values.json === true,
			refit: values.refit === true
		};
	} catch (error) {
		if (!(error instanceof TypeError)) throw error;
		throw new UnreadableFolder(`${error.message}; ${USAGE}`, { cause: error });
	}
}
