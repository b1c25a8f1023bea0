import { redirect } from '@sveltejs/kit';
import { listDeletedLakes } from '#lib/server/services/deleted-lakes.ts';
import { lakeDigests } from '#lib/server/services/digests/digests.ts';
import { listLakes, restoreLake } from '#lib/server/services/lakes.ts';
import { listSites } from '#lib/server/services/sites.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { homeCards, homeSites } from './lake-card.ts';
import { found } from './lakes/[lake]/found.ts';
import type { Actions, PageServerLoad } from './$types';

/** Longer than one lake takes to be worked out; who has many sees the first of them by then. */
const WAIT_MS = 1000;

export const load: PageServerLoad = async ({ locals, cookies }) => {
	const { context, viewer } = locals;
	if (viewer.role === 'guest') redirect(303, `/lakes/${viewer.lake}`);
	const lakes = await Promise.all(
		(await listLakes(context)).map(async ({ id, name, isInvented }) => {
			const sites = await listSites(context, id);
			return {
				id,
				name,
				isInvented,
				sites: sites.map((site) => ({ id: site.id, name: site.name }))
			};
		})
	);
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const states = await lakeDigests(context, homeSites(lakes), { words, wait_ms: WAIT_MS });
	const deleted = viewer.role === 'owner' ? await listDeletedLakes(context) : [];
	return {
		...homeCards(lakes, states, context.now()),
		deleted: deleted.map(({ id, name }) => ({ id, name }))
	};
};

export const actions: Actions = {
	restore: async ({ request, locals }) => {
		const id = (await request.formData()).get('id');
		const { id: lake } = await found(restoreLake(locals.context, String(id)));
		redirect(303, `/lakes/${lake}`);
	}
};
