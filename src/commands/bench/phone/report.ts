import type { Browser } from 'playwright-core';
import { runningApp } from '../keeping-up/running-app.ts';
import { median } from '../median-time.ts';
import { findBrowser } from './find-browser.ts';
import { hourlyLake } from './hourly-lake.ts';
import { PHONE, visit, type Visit } from './visit.ts';

export interface PhoneReport {
	/** How the phone was slowed down. */
	phone: { cpuTimes: number; down_Mbit_s: number; latency_ms: number };
	/** Hours of weather that the lake has. */
	hours: number;
	visits: number;
	/** Medians of first visits, to a page that the server has made before. */
	median: Visit;
	slowest: Visit;
	/** How long the server took to make that page for the first time, estimate included. */
	firstAnswer_ms: number;
}

/** Thickness, degree-days and snow. */
const CHARTS = 3;

const NO_BROWSER =
	'no browser: the page of a lake was NOT timed on a phone; install Chromium or Chrome to time it';

/** Times first visits to the page of a lake with a year of hours; without a browser it says so. */
export async function phoneReport(
	visits: number
): Promise<{ phone: PhoneReport | null; warnings: string[] }> {
	const browser = await launched();
	if (!browser) return { phone: null, warnings: [NO_BROWSER] };
	const app = await runningApp();
	try {
		const { id, hours } = await hourlyLake(app);
		const url = `${app.url}/lakes/${id}`;
		const firstAnswer_ms = await answerTime_ms(url);
		// The first one warms the browser's own start up, and is not counted.
		await visit(browser, url, CHARTS);
		const seen: Visit[] = [];
		for (let count = 0; count < visits; count++) {
			await answerTime_ms(url);
			seen.push(await visit(browser, url, CHARTS));
		}
		return {
			phone: {
				phone: PHONE,
				hours,
				visits,
				median: summary(seen, median),
				slowest: summary(seen, (values) => Math.max(...values)),
				firstAnswer_ms
			},
			warnings: []
		};
	} finally {
		await browser.close();
		await app.stop();
	}
}

/** `null` where there is no browser, or nothing to drive it with. */
async function launched(): Promise<Browser | null> {
	const { path, environment } = await findBrowser();
	const driver = await import('playwright-core').catch(() => null);
	if (!path || !driver) return null;
	return driver.chromium.launch({
		executablePath: path,
		args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
		env: { ...process.env, ...environment } as Record<string, string>
	});
}

async function answerTime_ms(url: string): Promise<number> {
	const start_ms = performance.now();
	const response = await fetch(url);
	await response.text();
	if (!response.ok) throw new Error(`${url} answered ${response.status}`);
	return performance.now() - start_ms;
}

function summary(visits: readonly Visit[], of: (values: number[]) => number): Visit {
	const each = (key: keyof Visit) => of(visits.map((visit) => visit[key]));
	return {
		firstPaint_ms: each('firstPaint_ms'),
		chart_ms: each('chart_ms'),
		allCharts_ms: each('allCharts_ms'),
		requests: each('requests'),
		received_bytes: each('received_bytes')
	};
}
