import { addDays, winterOf } from '#lib/model/calendar.ts';
import { runningApp, type RunningApp } from '../keeping-up/running-app.ts';
import { requestRate, type RequestRate } from './request-rate.ts';

export interface ServingReport {
	/** Lakes that are stored, each with three winters of weather. */
	lakes: number;
	/** A form without data, the lakes' pages in turn, and the same with all of them rendered anew. */
	trivial: RequestRate;
	lake: RequestRate;
	lakeAnew: RequestRate;
	/** Part of the trivial page's rate that the lake's page has. */
	ratio: number;
	home: HomeTimes;
}

export interface HomeTimes {
	/** The first answer after a start, with some lakes still to come; and until all are told. */
	first_ms: number;
	allTold_ms: number;
	/** Another visit with nothing changed. */
	again_ms: number;
	/** Of a small page while the lakes are worked out, the slowest of 95 in 100. */
	otherMeanwhile_p95_ms: number;
}

const WINTERS = 3;
const PAUSE_MS = 100;

/** How fast pages are answered with many lakes stored. */
export async function servingReport(lakes: number, duration_ms: number): Promise<ServingReport> {
	const app = await runningApp();
	try {
		const ids = await prepare(app, lakes);
		const home = await homeTimes(app);
		const page = (index: number) => `/lakes/${ids[index % ids.length]}`;
		for (const [index] of ids.entries()) await (await fetch(new URL(page(index), app.url))).text();
		const trivial = await requestRate(app.url, () => '/lakes/new', duration_ms);
		const lake = await requestRate(app.url, page, duration_ms);
		const lakeAnew = await requestRate(
			app.url,
			(index) => `${page(index)}?n=${index}`,
			duration_ms
		);
		return { lakes, trivial, lake, lakeAnew, ratio: lake.perSecond / trivial.perSecond, home };
	} finally {
		await app.stop();
	}
}

/** Lakes that froze over two months ago, with weather to yesterday. */
async function prepare(app: RunningApp, lakes: number): Promise<string[]> {
	const today = new Date().toISOString().slice(0, 10);
	const ids: string[] = [];
	for (let lake = 0; lake < lakes; lake++) {
		const place = { latitude: 45 + lake / 4, longitude: -38.2, timeZone: 'Etc/GMT+3' };
		const facts = { name: `Invented ${lake}`, water: 'lake', ...place };
		const { id } = await app.api<{ id: string }>('POST', '/lakes', facts);
		for (let back = 0; back < WINTERS; back++) {
			const freezeUpOn = addDays(today, -60 - 365 * back);
			await app.api('PUT', `/lakes/${id}/winters/${winterOf(freezeUpOn)}`, { freezeUpOn });
		}
		await app.api('POST', `/lakes/${id}/weather`, csv(addDays(today, -365 * WINTERS), today, lake));
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

/** Asks for home until every lake is told, and meanwhile for another page. */
async function homeTimes({ url }: RunningApp): Promise<HomeTimes> {
	const timed = async (path: string) => {
		const start_ms = performance.now();
		const text = await (await fetch(new URL(path, url))).text();
		return {
			took_ms: performance.now() - start_ms,
			isWhole: !text.includes('is being worked out')
		};
	};
	const others_ms: number[] = [];
	const until = { isOver: false };
	const others = (async () => {
		while (!until.isOver) {
			others_ms.push((await timed('/lakes/new')).took_ms);
			await pause();
		}
	})();
	const start_ms = performance.now();
	const first = await timed('/');
	for (let last = first; !last.isWhole; last = await timed('/')) await pause();
	const allTold_ms = performance.now() - start_ms;
	until.isOver = true;
	await others;
	const sorted = others_ms.toSorted((a, b) => a - b);
	return {
		first_ms: first.took_ms,
		allTold_ms,
		again_ms: (await timed('/')).took_ms,
		otherMeanwhile_p95_ms: sorted[Math.ceil(0.95 * sorted.length) - 1] ?? 0
	};
}

function pause(): Promise<void> {
	return new Promise((done) => setTimeout(done, PAUSE_MS));
}
