import { fail } from '@sveltejs/kit';
import { ARCHIVE_LIMITS, unpackWinters } from '#lib/server/services/tidy/archive.ts';
import { importWinters, type WintersImport } from '#lib/server/services/tidy/import-winters.ts';
import type { Actions } from './$types';

export const actions: Actions = {
	/** A dry run first, so that nothing is stored that nobody has looked at. */
	look: ({ request, locals }) => bring(request, locals, true),
	store: ({ request, locals }) => bring(request, locals, false)
};

async function bring(request: Request, { context }: App.Locals, dryRun: boolean) {
	const file = (await request.formData()).get('file');
	if (!(file instanceof File) || file.size === 0) {
		return refused('', 'Choose a zip file: the form came without one, or with an empty one.');
	}
	if (file.size > ARCHIVE_LIMITS.zip_B) {
		return refused(file.name, `It has more than ${ARCHIVE_LIMITS.zip_B / 1e6} MB.`);
	}
	const { files, problem } = unpackWinters(new Uint8Array(await file.arrayBuffer()));
	if (problem !== null) return refused(file.name, `${problem}.`);
	const report = await importWinters(context, files, { dryRun });
	return report.status === 'refused'
		? fail(400, { name: file.name, report })
		: { name: file.name, report };
}

function refused(name: string, reason: string) {
	const report: WintersImport = {
		status: 'refused',
		lakes: [],
		problems: [{ file: '', line: 0, reason }],
		leftOut: []
	};
	return fail(400, { name, report });
}
