import { addDays, winterOf } from '#lib/model/calendar.ts';
import { inventedService, inventedSource, type InventedService } from './invented-service.ts';
import { pageTimes, type PageTimes } from './page-times.ts';
import { runningApp, type RunningApp } from './running-app.ts';

export interface KeepingUpReport {
	lakes: number;
	/** What the source allows, and what was asked of it. */
	limits: { perDay: number; perMinute: number };
	calls: number;
	mostCallsInAMinute: number;
	/** From the first call to the last. */
	duration_s: number;
	/** Of pages of the same lakes, before and meanwhile. */
	idle: PageTimes;
	meanwhile: PageTimes;
}

/** Lakes whose pages are asked for. */
const SHOWN = 10;
const IDLE_REQUESTS = 200;
/** Of fewer lakes fewer, for a try. */
const IDLE_REQUESTS_A_LAKE = 20;
const SETTLING_MS = 5000;

/** Times pages while one source is asked for the winter of many lakes, as the schedule does it. */
export async function keepingUpReport(lakes: number): Promise<KeepingUpReport> {
	// Each lake wants two calls, so that the limit has to hold some of them back.
	const limits = { perDay: Math.ceil(1.5 * lakes), perMinute: 6 * lakes };
	const idleRequests = Math.min(IDLE_REQUESTS, IDLE_REQUESTS_A_LAKE * lakes);
	const service = await inventedService();
	const app = await runningApp();
	try {
		const ids = await prepare(app, service, lakes, limits);
		const pages = ids
			.slice(0, SHOWN)
			.flatMap((id) =>
				['', '/weather', '/readings'].map((page) => `${app.url}/lakes/${id}${page}`)
			);
		await pageTimes(pages, (asked) => asked < pages.length);
		const idle = await pageTimes(pages, (asked) => asked < idleRequests);
		await app.api('PATCH', '/sources/invented-service', { isOn: true });
		const meanwhile = await pageTimes(pages, untilSettled(app, ids));
		const { calls_ms } = service;
		return {
			lakes,
			limits,
			calls: calls_ms.length,
			mostCallsInAMinute: mostWithin(calls_ms, 60_000),
			duration_s: ((calls_ms.at(-1) ?? 0) - (calls_ms[0] ?? 0)) / 1000,
			idle,
			meanwhile
		};
	} finally {
		await app.stop();
		await service.close();
	}
}

/** Lakes that froze over two months ago, with imported weather that the source is trusted before. */
async function prepare(
	app: RunningApp,
	service: InventedService,
	lakes: number,
	limits: { perDay: number; perMinute: number }
): Promise<string[]> {
	const today = new Date().toISOString().slice(0, 10);
	const freezeUpOn = addDays(today, -60);
	const ids: string[] = [];
	const source = inventedSource(service.address, limits);
	await app.api('POST', '/sources', { source });
	await app.api('PATCH', '/sources/invented-service', { isOn: false });
	for (let lake = 0; lake < lakes; lake++) {
		const place = { latitude: 47 + lake / 1000, longitude: -38.2, timeZone: 'Etc/GMT+3' };
		const facts = { name: `Invented ${lake}`, water: 'lake', ...place };
		const { id } = await app.api<{ id: string }>('POST', '/lakes', facts);
		await app.api('PUT', `/lakes/${id}/winters/${winterOf(freezeUpOn)}`, { freezeUpOn });
		await app.api('POST', `/lakes/${id}/weather`, csv(addDays(freezeUpOn, -10), today, lake));
		const order = [{ source: 'invented-service' }, { source: 'csv' }];
		await app.api('PUT', `/lakes/${id}/sources`, { order });
		ids.push(id);
	}
	return ids;
}

function csv(from: string, to: string, lake: number): string {
	const rows: string[] = [];
	for (let on = from, day = 0; on < to; on = addDays(on, 1), day++) {
		rows.push(`${on},${(-7 + 5 * Math.sin(day / 3 + lake)).toFixed(1)},${day % 7 === 0 ? 3 : 0}`);
	}
	return `date,tmean_c,precip_mm\n${rows.join('\n')}\n`;
}

/** To some seconds after the last lake, in which the estimates are made of what came. */
function untilSettled(app: RunningApp, ids: readonly string[]): () => Promise<boolean> {
	let doneAt_ms = Infinity;
	return async () => {
		if (doneAt_ms === Infinity && !(await isBusy(app, ids))) doneAt_ms = performance.now();
		return performance.now() < doneAt_ms + SETTLING_MS;
	};
}

/** The last one in the line tells when all is done. */
async function isBusy(app: RunningApp, ids: readonly string[]): Promise<boolean> {
	const last = ids.at(-1) ?? '';
	const { sources } = await app.api<{ sources: { finishedAt: string | null }[] }>(
		'GET',
		`/lakes/${last}/refresh`
	);
	return sources[0]?.finishedAt === null;
}

function mostWithin(times_ms: readonly number[], span_ms: number): number {
	return Math.max(
		0,
		...times_ms.map((start) => times_ms.filter((at) => at >= start && at < start + span_ms).length)
	);
}
