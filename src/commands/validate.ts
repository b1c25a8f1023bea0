import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { findingsOf } from './validate/findings.ts';
import { asShipped } from './validate/modes.ts';
import { reportPage } from './validate/pictures/page.ts';
import { requireWritable, UnwritableReport, writeReport } from './validate/pictures/report-file.ts';
import { refitted } from './validate/refit.ts';
import { report } from './validate/report.ts';
import { selectScored } from './validate/selection.ts';
import { textTable } from './validate/text-table.ts';
import { readTidyFolder } from './validate/tidy-folder.ts';
import { UnreadableFolder } from './validate/tidy-table.ts';

const USAGE = 'npm run --silent validate -- FOLDER [--json] [--refit] [--report FILE.html]';

// A reader that has seen enough, `| head`, closes the pipe: no reason for a stack trace.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
	if (error.code !== 'EPIPE') throw error;
});

try {
	main();
} catch (error) {
	if (!(error instanceof UnreadableFolder || error instanceof UnwritableReport)) throw error;
	process.stderr.write(`validate: ${error.message}\n`);
	process.exitCode = 2;
}

function main(): void {
	const { folder, json, refit, reportTo } = readArguments();
	if (reportTo !== null) requireWritable(reportTo);
	const selection = selectScored(readTidyFolder(folder));
	if (selection.winters.length === 0)
		throw new UnreadableFolder(`no reading in ${folder} can be scored by the rules of the folder`);
	const findings = findingsOf(selection.winters, refit ? refitted(selection.winters) : asShipped);
	const scores = report(selection, refit ? 'refitted' : 'shipped', findings);
	process.stdout.write(`${json ? JSON.stringify(scores, null, 1) : textTable(scores)}\n`);
	if (reportTo !== null) writeReport(reportTo, reportPage(basename(folder), scores, findings));
}

function readArguments() {
	try {
		const { positionals, values } = parseArgs({
			allowPositionals: true,
			options: {
				json: { type: 'boolean' },
				refit: { type: 'boolean' },
				report: { type: 'string' }
			}
		});
		const [folder, ...more] = positionals;
		if (!folder || more.length > 0) throw new UnreadableFolder(`name one folder: ${USAGE}`);
		// npm changes into the project first; paths are meant from where it was called.
		const from = process.env.INIT_CWD ?? process.cwd();
		return {
			folder: resolve(from, folder),
			json: values.json === true,
			refit: values.refit === true,
			reportTo: values.report === undefined ? null : resolve(from, values.report)
		};
	} catch (error) {
		if (!(error instanceof TypeError)) throw error;
		throw new UnreadableFolder(`${error.message}; ${USAGE}`, { cause: error });
	}
}
