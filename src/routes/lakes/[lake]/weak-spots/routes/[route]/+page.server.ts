import { error, fail, redirect } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { placesView } from '#lib/server/services/places/places-view.ts';
import { routeInput } from '#lib/server/services/places/route-input.ts';
import { getRoute, updateRoute } from '#lib/server/services/places/routes.ts';
import { FormInput, formValues } from '#lib/ui/forms/form-input.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import {
	addPointRow,
	pointsTogether,
	readRoute,
	routeValues,
	withoutEmptyRows
} from '#lib/ui/forms/route-form.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { found } from '../../../found.ts';
import { refuseRoute } from '../../refusals.ts';
import { routePage } from './route-page.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url, cookies }) => {
	const units = parseUnits(cookies.get(UNITS_COOKIE));
	const places = await found(placesView(locals.context, params.lake, wordsIn(units)));
	const state = places.routes.find(({ route }) => route.id === params.route);
	if (!state) error(404, `No route "${params.route}" of lake "${params.lake}".`);
	return {
		page: routePage(places, state, url.searchParams.get('for') === 'vehicle'),
		spots: spotsFor(places, state),
		stored: url.searchParams.has('stored'),
		shown: routeValues(state.route, units)
	};
};

export const actions: Actions = {
	change: async ({ params, request, locals }) => {
		const input = new FormInput(withoutEmptyRows(formValues(await request.formData())));
		return oneAtATime(locals.context, params.lake, async () => {
			const before = await found(getRoute(locals.context, params.lake, params.route));
			const spots = before.points.flatMap(({ spot }) => spot ?? []);
			mergeShown(input, (units) => routeValues(before, units), {
				together: [pointsTogether(spots)]
			});
			const route = input.take(routeInput.safeParse(readRoute(input, before)));
			if (!route) return fail(400, input.refusal);
			const stored = await found(updateRoute(locals.context, params.lake, before.id, route));
			if (stored.status !== 'stored') return refuseRoute(input, stored);
			redirect(303, '?stored=1');
		});
	},
	point: async ({ request }) => addPointRow(formValues(await request.formData()))
};

/** Those of the list, and those that the route has though they are off it. */
function spotsFor(
	{ spots }: Awaited<ReturnType<typeof placesView>>,
	{ route }: Awaited<ReturnType<typeof placesView>>['routes'][number]
) {
	const gone = route.points.flatMap(({ spot, isSpotDeleted }) =>
		spot && isSpotDeleted ? spot : []
	);
	return [...spots.map(({ spot }) => spot), ...gone];
}
