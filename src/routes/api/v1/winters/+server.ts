import { json } from '@sveltejs/kit';
import { ARCHIVE_LIMITS, unpackWinters } from '#lib/server/services/tidy/archive.ts';
import { importWinters } from '#lib/server/services/tidy/import-winters.ts';
import { readBytes } from '../../body.ts';
import { endpoint, onlyMethods } from '../../endpoint.ts';
import { Problem } from '../../problem.ts';
import { dryRunQuery, readQuery } from '../../query.ts';

const ZIP_TYPES = ['application/zip', 'application/x-zip-compressed', 'application/octet-stream'];

/** Lakes out of a zip file, all or nothing. */
export const POST = endpoint(async ({ locals, request, url }) => {
	const { dryRun } = readQuery(url, dryRunQuery);
	const isDry = dryRun === '1' || dryRun === 'true';
	const bytes = await readBytes(request, ZIP_TYPES, ARCHIVE_LIMITS.zip_B);
	const { files, problem } = unpackWinters(bytes);
	if (problem !== null) throw new Problem(400, 'Bad Request', problem);
	const report = await importWinters(locals.context, files, { dryRun: isDry });
	if (report.status !== 'refused') return json(report, { status: isDry ? 200 : 201 });
	const issues = report.problems.map(({ file, line, reason }) => ({
		field: line > 0 ? `${file} line ${line}` : file,
		message: reason
	}));
	const [first] = issues;
	const detail = `Nothing is stored; ${first?.field}: ${first?.message}`;
	throw new Problem(400, 'Bad Request', detail, { issues });
});

export const fallback = onlyMethods('POST');
