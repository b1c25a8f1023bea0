import { fail, redirect } from '@sveltejs/kit';
import { readyMadeSources } from '#lib/server/services/sources/ready-made.ts';
import { sourceOverviews } from '#lib/server/services/sources/overview.ts';
import {
	createSource,
	deleteSource,
	getSource,
	restoreSource
} from '#lib/server/services/sources/sources.ts';
import { refreshSource } from '#lib/server/services/refresh/refresh-source.ts';
import { found } from '../lakes/[lake]/found.ts';
import { readImport } from './read-import.ts';
import { cardOf, readyMadeOf } from './source-card.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals: { context }, url }) => {
	const overviews = await sourceOverviews(context);
	const readyMade = await readyMadeSources();
	return {
		sources: overviews.map((overview) => cardOf(overview, context.now())),
		readyMade: readyMade.map((source) => readyMadeOf(source, context.weather.contact)),
		isAsking: overviews.some(({ isAsking }) => isAsking),
		stored: url.searchParams.get('stored'),
		deleted: url.searchParams.get('deleted')
	};
};

export const actions: Actions = {
	refresh: async ({ request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(refreshSource(locals.context, id));
		redirect(303, `/sources#${id}`);
	},
	import: async ({ request, locals }) => {
		const read = await readImport(await request.formData());
		if (read.refusal !== null) return fail(400, read.refusal);
		const { id } = await createSource(locals.context, read.source);
		const { source } = await getSource(locals.context, id);
		redirect(303, source?.needsKey ? `/sources/${id}?stored=import` : `/sources?stored=${id}`);
	},
	delete: async ({ request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(deleteSource(locals.context, id));
		redirect(303, `/sources?deleted=${id}`);
	},
	restore: async ({ request, locals }) => {
		const id = String((await request.formData()).get('id'));
		await found(restoreSource(locals.context, id));
		redirect(303, `/sources?stored=${id}`);
	}
};
