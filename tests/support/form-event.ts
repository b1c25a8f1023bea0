import { isActionFailure, isRedirect } from '@sveltejs/kit';
import type { Context } from '../../src/lib/server/context.ts';
import { ON_THIS_MACHINE, type Viewer } from '../../src/lib/server/services/access/viewer.ts';

type Fields = Record<string, string | File>;

interface Sent {
	context: Context;
	params?: Record<string, string>;
	fields?: Fields;
	/** Query of the address, without the question mark. */
	query?: string;
	/** Who asks; the owner, without. */
	viewer?: Viewer;
	units?: { measure: 'metric' | 'imperial'; mass: 'kg' | 'lb' };
}

/** What a form action or a load function is called with. */
export function formEvent({ context, viewer, params = {}, fields = {}, query = '', units }: Sent) {
	const url = new URL(`http://localhost/page?${query}`);
	const body = new FormData();
	for (const [name, value] of Object.entries(fields)) body.set(name, value);
	return {
		params,
		url,
		request: new Request(url, { method: 'POST', body }),
		locals: { context, viewer: viewer ?? ON_THIS_MACHINE },
		cookies: { get: () => units && JSON.stringify(units) }
	} as never;
}

interface Outcome {
	status: number;
	/** Where a redirect leads. */
	location: string;
	/** What the page is given. */
	data: Record<string, unknown> & {
		values?: Record<string, string>;
		issues?: { field: string; message: string; keep?: string }[];
	};
}

/** Runs a form action and tells what it would answer. */
export async function outcomeOf(
	action: ((event: never) => unknown) | undefined,
	event: never
): Promise<Outcome> {
	if (!action) throw new Error('no such form action');
	try {
		const result = await action(event);
		if (isActionFailure(result)) {
			return { status: result.status, location: '', data: Object.assign({}, result.data) };
		}
		return { status: 200, location: '', data: Object.assign({}, result) };
	} catch (thrown) {
		if (!isRedirect(thrown)) throw thrown;
		return { status: thrown.status, location: thrown.location, data: {} };
	}
}

/** The fields that something is to be mended in. */
export function fieldsOf({ data }: Outcome): string[] {
	return (data.issues ?? []).map(({ field }) => field);
}
