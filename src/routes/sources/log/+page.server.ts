import { listLog } from '#lib/server/services/sources/log.ts';
import { listLakes } from '#lib/server/services/lakes.ts';
import { listSources } from '#lib/server/services/sources/sources.ts';
import { logRow } from './log-row.ts';
import type { PageServerLoad } from './$types';

const SHOWN = 100;

/** What is looked at stands in the address, so that a link is a view. */
export const load: PageServerLoad = async ({ locals: { context }, url }) => {
	const asked = {
		source: url.searchParams.get('source') ?? '',
		lake: url.searchParams.get('lake') ?? '',
		onlyFaults: url.searchParams.get('faults') === 'only'
	};
	const entries = await listLog(context, {
		...(asked.source === '' ? {} : { source: asked.source }),
		...(asked.lake === '' ? {} : { lake: asked.lake }),
		onlyFaults: asked.onlyFaults,
		limit: SHOWN
	});
	return {
		asked,
		rows: entries.map((entry) => logRow(entry, context.now())),
		shown: SHOWN,
		sources: (await listSources(context)).map(({ id, name }) => ({ id, name })),
		lakes: (await listLakes(context)).map(({ id, name }) => ({ id, name }))
	};
};
