import type { Context } from '../../src/lib/server/context.ts';
import { importWeather } from '../../src/lib/server/services/import-weather.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';
import { saveSiteWinter, winterInput } from '../../src/lib/server/services/winters.ts';
import { freshContext, inventedLake } from './fresh-context.ts';
import { inPieces, winterCsv } from './winter-csv.ts';

/** An invented lake with two winters of weather, freeze-up and readings, the later one in progress. */
export async function drilledLake(): Promise<{ ctx: Context; id: string }> {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	for (const year of [2025, 2026]) {
		await importWeather(ctx, id, inPieces(winterCsv(`${year}-10-01`, 120)));
		const winter = `${year}-${year - 1999}`;
		const record = winterInput.parse({ freezeUpOn: `${year}-11-20` });
		await saveSiteWinter(ctx, id, 'main', { winter, ...record });
		const readings = [
			{ on: `${year}-12-15`, holes: [{ total_m: 0.14 }, { total_m: 0.16 }] },
			{ on: `${year + 1}-01-10`, holes: [{ total_m: 0.27 }] }
		].map((reading) => readingInput.parse({ kind: 'measured', ...reading }));
		await addReadings(ctx, id, 'main', readings);
	}
	return { ctx, id };
}
