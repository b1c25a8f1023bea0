import { lakeView } from '#lib/server/services/lake-view.ts';
import { listLakes } from '#lib/server/services/lakes.ts';
import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { lakeCard } from './lake-card.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, cookies }) => {
	const lakes = await listLakes(locals.context);
	const words = wordsIn(parseUnits(cookies.get(UNITS_COOKIE)));
	const views = await Promise.all(lakes.map(({ id }) => lakeView(locals.context, id, { words })));
	return { cards: views.map(lakeCard) };
};
