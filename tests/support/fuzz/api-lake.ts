import { closeContext, type Context } from '../../../src/lib/server/context.ts';
import { apiOf, type Call } from '../api.ts';
import { freshContext, inventedLake } from '../fresh-context.ts';
import { winterCsv } from '../winter-csv.ts';
import { API_CALLS } from './api-calls.ts';
import type { Outcome } from './kind.ts';

export interface ApiLake {
	context: Context;
	/** An address with the ids of what is there. */
	fill(path: string): string;
	call(method: string, path: string, sent: Call): Promise<Outcome>;
	close(): Promise<void>;
}

/** A lake with one of everything. */
export async function openApiLake(): Promise<ApiLake> {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const api = apiOf(context);
	const ids: Record<string, string> = { lake: id };
	const fill = (text: string) => text.replace(/\{(\w+)\}/g, (_, name: string) => ids[name] ?? name);
	const make = async (path: string, name: string) => {
		const found = API_CALLS.find((each) => each.path === path && each.method === 'POST');
		const answer = await api('POST', fill(`/api/v1${path}`), { body: found?.body });
		const made = (await answer.json()) as { id?: string; ids?: string[] };
		ids[name] = made.id ?? made.ids?.[0] ?? `no ${name}`;
		if (answer.status !== 201) throw new Error(`${path}: ${answer.status} ${JSON.stringify(made)}`);
	};
	await make('/lakes/{lake}/readings', 'reading');
	await make('/lakes/{lake}/loads', 'load');
	await make('/lakes/{lake}/weak-spots', 'spot');
	await make('/lakes/{lake}/routes', 'route');
	await make('/sources', 'source');
	await api('POST', fill('/api/v1/lakes/{lake}/weather'), { text: winterCsv('2026-11-20', 80) });
	return {
		context,
		fill,
		async call(method, path, sent) {
			const answer = await api(method, path, sent);
			return { status: answer.status, text: await answer.text() };
		},
		close: () => closeContext(context)
	};
}
