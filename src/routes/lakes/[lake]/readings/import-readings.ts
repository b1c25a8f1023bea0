import { fail, redirect, type RequestEvent } from '@sveltejs/kit';
import { readingsFromCsv } from '#lib/server/services/readings-csv.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';

const LARGEST_BYTES = 5_000_000;

/** Form action: a table of readings, stored whole or refused whole with its lines. */
export async function importReadings({
	params,
	request,
	locals,
	url
}: RequestEvent<{ lake: string }>) {
	const file = (await request.formData()).get('file');
	if (!(file instanceof File) || file.size === 0) {
		return refused('The form came without a file, or with an empty one. Choose a CSV file.');
	}
	if (file.size > LARGEST_BYTES) {
		return refused(
			`${file.name} has more than 5 MB. A winter of readings has a few kB: is it the right file?`
		);
	}
	const text = decode(await file.arrayBuffer());
	const read = await found(readingsFromCsv(locals.context, params.lake, siteOf(url), text));
	if (read.status === 'stored' && read.leftOut.length === 0) {
		redirect(303, withSite(`?uploaded=${read.readings.length}`, siteOf(url)));
	}
	const { problems, leftOut } = read;
	const report = { name: file.name, count: read.ids.length, problems, leftOut };
	return read.status === 'refused' ? fail(400, { report }) : { report };
}

function refused(reason: string) {
	const report = { name: '', count: 0, problems: [{ line: 0, reason }], leftOut: [] };
	return fail(400, { report });
}

/** UTF-8, or else what spreadsheets of the west write. */
function decode(bytes: ArrayBuffer): string {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return new TextDecoder('windows-1252').decode(bytes);
	}
}
