import { openContext, type Context } from '../../src/lib/server/context.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { whenIdle } from '../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../src/lib/server/services/refresh/refresh-lake.ts';
import { measuredAsColdAs } from './invented-source.ts';
import { refreshedAt } from './refresh-kill-work.ts';

/** Refreshes without end, three hours on each time; each is announced, and acknowledged once it is done. */
async function work(folder: string, first: number): Promise<never> {
	const opened = await openContext({ FROSTLEDGER_DATA: folder });
	const [lake] = await listLakes(opened);
	if (!lake) throw new Error(`no lake in ${folder}`);
	for (let job = first; ; job++) {
		const ctx: Context = {
			...opened,
			now: () => refreshedAt(job),
			weather: {
				...opened.weather,
				fetchWeather: async (source, ask) => measuredAsColdAs(-6 - (job % 7))(source, ask),
				wait: async () => undefined
			}
		};
		process.stdout.write(`start ${job}\n`);
		await startRefresh(ctx, lake.id);
		await whenIdle(ctx);
		process.stdout.write(`done ${job}\n`);
	}
}

await work(process.argv[2] ?? '', Number(process.argv[3]));
