import type { Context } from '#lib/server/context.ts';
import { listLakes } from '#lib/server/services/lakes.ts';

/** The lakes that a source can be tried for: real ones first, for an invented one has a today of its own. */
export async function lakesToAsk(context: Context) {
	const lakes = (await listLakes(context)).map(({ id, name, isInvented, today }) => ({
		id,
		name: isInvented ? `${name} (invented, to try with)` : name,
		hasOwnToday: today !== null
	}));
	return lakes.toSorted((a, b) => Number(a.hasOwnToday) - Number(b.hasOwnToday));
}
