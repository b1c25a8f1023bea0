import { error } from '@sveltejs/kit';
import { z } from 'zod';
import { logFailure } from '#lib/server/services/failure.ts';
import { importWeather, type ColumnGuess } from '#lib/server/services/import-weather.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { columnChoices } from '#lib/server/services/column-choices.ts';
import { found } from '../../found.ts';
import { countedRows } from './counted-rows.ts';
import type { RequestHandler } from './$types';

const roles = columnChoices().map(({ role }) => role);

const corrections = z.array(
	z.object({
		index: z.number().int().nonnegative(),
		header: z.string(),
		role: z.enum(roles),
		unit: z.string().nullable(),
		sample: z.array(z.string()),
		why: z.string()
	})
);

/**
 * The same import as the API's, for the page's own script: answers in lines of JSON, how many rows
 * have been read every so often and the report last.
 */
export const POST: RequestHandler = async ({ params, request, locals, url }) => {
	const { id } = await found(getLake(locals.context, params.lake));
	const columns = readCorrections(url.searchParams.get('columns'));
	const body = request.body;
	if (!body) error(400, 'The request came without a file. Send the CSV file as its body.');
	const lines = new TransformStream<unknown, Uint8Array>({
		transform: (line, out) => out.enqueue(new TextEncoder().encode(`${JSON.stringify(line)}\n`))
	});
	const writer = lines.writable.getWriter();
	const tell = (line: unknown) => void writer.write(line).catch(() => undefined);
	importWeather(
		locals.context,
		id,
		countedRows(body, (rows, bytes) => tell({ rows, bytes })),
		columns ? { columns } : {}
	)
		.then((report) => tell({ report }))
		.catch((cause: unknown) => {
			const number = logFailure(`Import of weather for ${id}`, cause);
			tell({
				failed: `The import failed on our side (number ${number}). Nothing of the file was stored; try again.`
			});
		})
		.finally(() => void writer.close().catch(() => undefined));
	return new Response(lines.readable, {
		headers: { 'content-type': 'application/x-ndjson', 'cache-control': 'no-store, no-transform' }
	});
};

function readCorrections(text: string | null): ColumnGuess[] | null {
	if (text === null) return null;
	const parsed = corrections.safeParse(json(text));
	if (!parsed.success)
		error(400, 'The corrections of the columns cannot be read. Load the page again.');
	return parsed.data;
}

function json(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return null;
	}
}
