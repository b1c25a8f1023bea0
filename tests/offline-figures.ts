/*
 * Times what is promised of a phone without a connection, at a quarter of this machine's speed:
 *
 *   npx tsx tests/offline-figures.ts
 *
 * Medians of five. The browser slows pages and not workers, so that the model's time is told fourfold.
 */
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { ensureBuilt } from '../src/commands/start/build.ts';
import { startApp } from './support/app.ts';
import { cachedBytes, openAndKeep } from './support/device.ts';
import { findBrowser } from '../src/commands/bench/phone/find-browser.ts';

const LAKE = '/lakes/pinder-lake';
const RUNS = 5;
const SLOWER = 4;

const { path, environment } = await findBrowser();
if (!path) throw new Error('no browser on this machine: install Chromium or Chrome');
await ensureBuilt({ quiet: true });
const app = await startApp({ FROSTLEDGER_REFRESH: 'off' });
const browser = await chromium.launch({
	executablePath: path,
	args: ['--no-sandbox', '--disable-gpu'],
	env: { ...process.env, ...environment } as Record<string, string>
});
try {
	const device = await browser.newContext({
		baseURL: app.url,
		serviceWorkers: 'allow',
		viewport: { width: 360, height: 740 }
	});
	const first = await openAndKeep(device, LAKE);
	const kept_bytes = await cachedBytes(first);
	const model = await modelTimes_ms(first);
	await app.stop();
	await device.setOffline(true);
	await first.close();
	const usable: number[] = [];
	for (let run = 0; run < RUNS; run++) usable.push(await usableAfter_ms(device));
	process.stdout.write(
		[
			`kept on the device: ${kept_bytes} bytes`,
			`lake page usable without a connection, CPU ${SLOWER} times slower: ${median(usable)} ms`,
			`first answer of the model, fourfold: ${SLOWER * (model[0] ?? NaN)} ms`,
			`with one more reading, fourfold: ${SLOWER * median(model.slice(1))} ms`,
			''
		].join('\n')
	);
} finally {
	await browser.close();
}

/** From the start of the visit until the page's own script answers, on a page of its own. */
async function usableAfter_ms(device: BrowserContext): Promise<number> {
	const page = await device.newPage();
	const session = await device.newCDPSession(page);
	await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
	const from_ms = performance.now();
	await page.goto(LAKE, { waitUntil: 'commit' });
	await page.locator('#not-fresh').waitFor();
	await page.getByRole('heading', { level: 1 }).first().waitFor();
	// The links of a page that is awake are Kit's: it marks what it has taken over.
	await page.waitForFunction(() => document.querySelector('canvas') !== null);
	const took_ms = Math.round(performance.now() - from_ms);
	await page.close();
	return took_ms;
}

/** The worker's own time: the first with the run to today, the others going on from there. */
function modelTimes_ms(page: Page): Promise<number[]> {
	return page.evaluate(async (lake) => {
		const input = (await (await fetch(`${lake}/what-if.json`)).json()) as { asOf: string };
		let script = '';
		for (const name of await caches.keys()) {
			for (const { url } of await (await caches.open(name)).keys()) {
				if (url.includes('/workers/')) script = url;
			}
		}
		const worker = new Worker(script, { type: 'module' });
		worker.postMessage({ kind: 'input', input });
		const units = { measure: 'metric', mass: 'kg' };
		const more: object[] = [];
		const times: number[] = [];
		for (let id = 0; id < 6; id++) {
			const hole = { total_m: 0.5 + id / 100, clear_m: null, white_m: null, snow_m: null };
			const holes = [{ ...hole, slush_m: null, freeboard_m: null }];
			const none = { place: null, core: null, by: null, secondHand: false, remark: null };
			more.push({ id: `r${id}`, on: input.asOf, kind: 'measured', holes, ...none });
			const from_ms = performance.now();
			await new Promise((done) => {
				worker.addEventListener('message', done, { once: true });
				worker.postMessage({ kind: 'readings', id, units, more });
			});
			times.push(Math.round(performance.now() - from_ms));
		}
		return times;
	}, LAKE);
}

function median(values: readonly number[]): number {
	const sorted = values.toSorted((a, b) => a - b);
	return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}
