import type { RequestEvent } from '@sveltejs/kit';
import {
	getTelling,
	tellingChange,
	updateTellingOf,
	type TellingRecord
} from '#lib/server/services/telling/settings.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { changed, told, type Kept } from '../../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, tellingChange);
	const { lake = '' } = event.params;
	return changed(event, kept(event), () => updateTellingOf(event.locals.context, lake, change));
});

export const fallback = onlyMethods('GET', 'PATCH');

/** What was fetched and delivered meanwhile is no change of what is told. */
function kept({ locals, params }: RequestEvent): Kept<TellingRecord> {
	const { lake = '' } = params;
	return {
		line: lake,
		stands: () => getTelling(locals.context, lake),
		version: ({ sites, loads, readingAfter_d, units }) => [sites, loads, readingAfter_d, units]
	};
}
