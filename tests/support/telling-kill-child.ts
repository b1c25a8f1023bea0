import { openContext } from '../../src/lib/server/context.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';
import { lookAt } from '../../src/lib/server/services/telling/look.ts';
import { deliverDue } from '../../src/lib/server/services/telling/webhook/deliver.ts';

/** Logs, looks and sends without end; each reading is acknowledged once it is stored. */
async function work(folder: string, first: number): Promise<never> {
	const ctx = await openContext({
		FROSTLEDGER_DATA: folder,
		FROSTLEDGER_WEBHOOK_HOSTS: '127.0.0.1'
	});
	const [lake] = await listLakes(ctx);
	if (!lake?.today) throw new Error(`no invented lake in ${folder}`);
	for (let job = first; ; job++) {
		const reading = { on: lake.today, kind: 'wentThrough', holes: [], place: `job ${job}` };
		await addReadings(ctx, lake.id, 'main', [readingInput.parse(reading)]);
		process.stdout.write(`logged ${job}\n`);
		await lookAt(ctx, lake.id);
		await deliverDue(ctx);
	}
}

await work(process.argv[2] ?? '', Number(process.argv[3]));
