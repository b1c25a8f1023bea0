import { error, redirect } from '@sveltejs/kit';
import { listHistory } from '#lib/server/services/history/history.ts';
import { HELPERS_UNDO, undoDeletion } from '#lib/server/services/history/undo.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { formValues } from '#lib/ui/forms/form-input.ts';
import { found } from '../found.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const { context, viewer } = locals;
	const { id, name, isInvented, timeZone } = await found(getLake(context, params.lake));
	const before = Number(url.searchParams.get('before') ?? '');
	const page = await listHistory(
		context,
		id,
		Number.isInteger(before) && before > 0 ? before : null
	);
	const isOffered = (what: string) => viewer.role === 'owner' || HELPERS_UNDO.has(what);
	return {
		lake: { id, name, isInvented, timeZone },
		entries: page.entries.map(({ undo, ...entry }) => ({
			...entry,
			undo: undo && isOffered(undo.what) ? undo : null
		})),
		older: page.older,
		isLater: before > 0,
		now: context.now(),
		isUndone: url.searchParams.has('undone')
	};
};

export const actions: Actions = {
	/** What a helper may delete, and so take back. */
	undo: async ({ params, request, locals }) => {
		const { what = '', id = '', site } = formValues(await request.formData());
		if (locals.viewer.role !== 'owner' && !HELPERS_UNDO.has(what))
			error(403, 'Only the owner can take that back.');
		await found(undoDeletion(locals.context, params.lake, { what, id, site: site || null }));
		redirect(303, '?undone=1');
	}
};
