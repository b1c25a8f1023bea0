import type { RequestEvent } from '@sveltejs/kit';
import type { LoadCase } from '#lib/model/load-case.ts';
import { LoadNotFound } from '#lib/server/services/own-loads.ts';
import { listedLoads, setShownLoads, shownInput } from '#lib/server/services/shown-loads.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, told, type Kept } from '../../../../../if-match.ts';
import { Problem } from '../../../../../problem.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const input = await readJson(event.request, shownInput);
	const { lake = '' } = event.params;
	return changed(event, kept(event), async () => {
		try {
			return shownOf(await setShownLoads(event.locals.context, lake, input));
		} catch (cause) {
			if (!(cause instanceof LoadNotFound)) throw cause;
			const issues = [{ field: 'shown', message: cause.message }];
			const detail = `The body cannot be used: ${cause.message}`;
			throw new Problem(400, 'Bad Request', detail, { issues });
		}
	});
});

export const fallback = onlyMethods('GET', 'PUT');

function kept({ locals, params }: RequestEvent): Kept<{ shown: string[] }> {
	const { lake = '' } = params;
	const stands = async () => {
		const loads = await listedLoads(locals.context, lake);
		return shownOf(loads.filter(({ isShown }) => isShown));
	};
	return { line: lake, stands };
}

function shownOf(loads: readonly LoadCase[]): { shown: string[] } {
	return { shown: loads.map(({ id }) => id) };
}
