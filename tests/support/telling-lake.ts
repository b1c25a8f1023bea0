import type { Context } from '../../src/lib/server/context.ts';
import { importWeather } from '../../src/lib/server/services/import-weather.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';
import { saveSiteWinter, winterInput } from '../../src/lib/server/services/winters.ts';
import { freshContext, inventedLake } from './fresh-context.ts';
import { inPieces, winterCsv } from './winter-csv.ts';

export interface TellingLake {
	ctx: Context;
	id: string;
	/** Sets the clock. */
	setNow: (at: string) => void;
}

/** An invented lake on 28 January, frozen over since November, with weather up to the day before. */
export async function tellingLake(name = 'Test Lake'): Promise<TellingLake> {
	const fresh = await freshContext();
	let now = new Date('2027-01-29T01:00:00Z');
	const ctx: Context = { ...fresh, now: () => now };
	const { id } = await inventedLake(ctx, { name });
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 120)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	const setNow = (at: string) => {
		now = new Date(at);
	};
	return { ctx, id, setNow };
}

export async function logReading(
	{ ctx, id }: TellingLake,
	change: Record<string, unknown> = {}
): Promise<string> {
	const reading = { on: '2027-01-28', kind: 'measured', holes: [{ total_m: 0.3 }], ...change };
	const [stored] = await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	return stored ?? '';
}
