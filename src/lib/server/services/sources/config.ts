import { z } from 'zod';
import type { SourceRow } from '../../storage/sources.ts';
import { weatherSource, type WeatherSource } from '../../weather/source/contract.ts';

/** A stored configuration as it is read; `problem` says why it cannot be. */
export type ReadConfig =
	{ source: WeatherSource; problem: null } | { source: null; problem: string };

/** What is stored may come from an older release: it is checked at every read. */
export function readConfig({ name, config }: Pick<SourceRow, 'name' | 'config'>): ReadConfig {
	const parsed = weatherSource.safeParse(JSON.parse(config));
	if (parsed.success) return { source: parsed.data, problem: null };
	const issues = z.prettifyError(parsed.error).replaceAll('\n', ' ');
	const problem = `${name} is stored in a form that is no longer understood: ${issues}. Set it up anew or import it again.`;
	return { source: null, problem };
}
