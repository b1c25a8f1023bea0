import type { Browser, Page } from 'playwright-core';

/** What a first visit to a page took, on a phone that is slowed down. */
export interface Visit {
	/** From asking for the page to the first of its words on the screen. */
	firstPaint_ms: number;
	/** To the frame that shows the first chart, and to the one that shows the last. */
	chart_ms: number;
	allCharts_ms: number;
	requests: number;
	/** As sent, heads included. */
	received_bytes: number;
}

/** A phone of the middle range on a slow line. */
export const PHONE = {
	cpuTimes: 4,
	down_Mbit_s: 1.6,
	latency_ms: 150
} as const;

const SCREEN = {
	viewport: { width: 360, height: 740 },
	deviceScaleFactor: 2,
	isMobile: true,
	hasTouch: true
};
const BYTES_PER_MBIT = 125_000;
const PATIENCE_ms = 60_000;

declare global {
	interface Window {
		/** When frames with a new chart were on the screen. */
		chartFrames_ms: number[];
	}
}

/** Opens a page with nothing kept from before, and waits until so many charts are drawn. */
export async function visit(browser: Browser, url: string, charts: number): Promise<Visit> {
	const context = await browser.newContext(SCREEN);
	try {
		const page = await context.newPage();
		const sent = await slowedDown(page);
		await page.addInitScript(watchCharts);
		await page.goto(url, { waitUntil: 'load', timeout: PATIENCE_ms });
		await page.waitForFunction((count) => window.chartFrames_ms.length >= count, charts, {
			timeout: PATIENCE_ms
		});
		const times = await page.evaluate(() => ({
			firstPaint_ms: performance.getEntriesByName('first-contentful-paint')[0]?.startTime,
			frames_ms: window.chartFrames_ms.toSorted((a, b) => a - b)
		}));
		const { firstPaint_ms, frames_ms } = times;
		const [chart_ms] = frames_ms;
		const allCharts_ms = frames_ms.at(-1);
		if (firstPaint_ms === undefined || chart_ms === undefined || allCharts_ms === undefined)
			throw new Error(`${url} was never painted`);
		return { firstPaint_ms, chart_ms, allCharts_ms, ...sent };
	} finally {
		await context.close();
	}
}

/** Slows the page's processor and line down, and counts what comes through it. */
async function slowedDown(page: Page) {
	const sent = { requests: 0, received_bytes: 0 };
	const session = await page.context().newCDPSession(page);
	await session.send('Network.enable');
	await session.send('Network.emulateNetworkConditions', {
		offline: false,
		latency: PHONE.latency_ms,
		downloadThroughput: PHONE.down_Mbit_s * BYTES_PER_MBIT,
		uploadThroughput: PHONE.down_Mbit_s * BYTES_PER_MBIT
	});
	await session.send('Emulation.setCPUThrottlingRate', { rate: PHONE.cpuTimes });
	session.on('Network.loadingFinished', ({ encodedDataLength }) => {
		sent.requests++;
		sent.received_bytes += encodedDataLength;
	});
	return sent;
}

/** Runs in the page, before its own scripts: a chart is seen once the frame that it is in is made. */
function watchCharts(): void {
	window.chartFrames_ms = [];
	const mark = performance.mark.bind(performance);
	performance.mark = (name, options) => {
		if (name === 'chart-drawn')
			requestAnimationFrame(() =>
				setTimeout(() => window.chartFrames_ms.push(performance.now()), 0)
			);
		return mark(name, options);
	};
}
