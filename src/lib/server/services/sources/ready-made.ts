import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { weatherSource, type WeatherSource } from '../../weather/source/contract.ts';

/** Dev and built server both run in the project's folder. */
const READY_MADE_FOLDER = join('data', 'sources');

/**
 * Sources that come with the app, by name, to be taken into use as they are.
 * @throws Error naming the file that is no source.
 */
export async function readyMadeSources(folder = READY_MADE_FOLDER): Promise<WeatherSource[]> {
	if (!existsSync(folder)) return [];
	const files = (await readdir(folder)).filter((file) => file.endsWith('.json'));
	const sources = await Promise.all(files.map((file) => readSource(join(folder, file))));
	return sources.toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
}

async function readSource(path: string): Promise<WeatherSource> {
	const parsed = weatherSource.safeParse(JSON.parse(await readFile(path, 'utf8')));
	if (parsed.success) return parsed.data;
	throw new Error(`Ready-made source ${path} cannot be used: ${parsed.error.message}`);
}
