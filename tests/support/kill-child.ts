import { openContext, type Context } from '../../src/lib/server/context.ts';
import { writingAs } from '../../src/lib/server/services/history/history.ts';
import { importWeather } from '../../src/lib/server/services/import-weather.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';
import { HOLES_OF_ONE, killCsv, killHourlyCsv, nameOf, READINGS_OF_ONE } from './kill-work.ts';

/**
 * Writes without end, in the turn of a real day: a file of days, a file of hours, a batch of
 * readings, each under a name of its own. Each job is announced before it starts and acknowledged once it is answered.
 */
async function work(folder: string, first: number): Promise<never> {
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	const [lake] = await listLakes(ctx);
	if (!lake) throw new Error(`no lake in ${folder}`);
	for (let job = first; ; job++) {
		say(`start ${job}`);
		await writingAs({ name: nameOf(job), at: ctx.now() }, () => once(ctx, lake.id, job));
		say(`done ${job}`);
	}
}

async function once(ctx: Context, lakeId: string, job: number): Promise<unknown> {
	if (job % 3 === 0) return take(ctx, lakeId, killCsv(job));
	if (job % 3 === 1) return take(ctx, lakeId, killHourlyCsv(job));
	return addReadings(ctx, lakeId, 'main', readingsOf(job));
}

async function take(ctx: Context, lakeId: string, csv: string): Promise<void> {
	const { status, rejected } = await importWeather(ctx, lakeId, bytes(csv));
	if (status !== 'stored') throw new Error(`import ${status}: ${rejected[0]?.reason}`);
}

function readingsOf(job: number) {
	return Array.from({ length: READINGS_OF_ONE }, () =>
		readingInput.parse({
			on: '2026-01-10',
			kind: 'measured',
			holes: Array.from({ length: HOLES_OF_ONE }, () => ({ total_m: 0.3 })),
			remark: String(job)
		})
	);
}

async function* bytes(text: string): AsyncGenerator<Uint8Array> {
	yield new TextEncoder().encode(text);
}

function say(line: string): void {
	process.stdout.write(`${line}\n`);
}

await work(process.argv[2] ?? '', Number(process.argv[3]));
