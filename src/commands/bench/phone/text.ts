import type { PhoneReport } from './report.ts';

/** The times of a phone as lines of text. */
export function phoneText(report: PhoneReport): string[] {
	const { phone, hours, visits, median, slowest, firstAnswer_ms } = report;
	const seconds = (time_ms: number) => `${(time_ms / 1000).toFixed(2)} s`;
	return [
		`the page of a lake with ${hours} hours of weather, first visits by a phone (processor ${phone.cpuTimes} times slower, ${phone.down_Mbit_s} Mbit/s, ${phone.latency_ms} ms), medians of ${visits}: first words ${seconds(median.firstPaint_ms)}, first chart ${seconds(median.chart_ms)}, all charts ${seconds(median.allCharts_ms)}`,
		`  slowest: ${seconds(slowest.firstPaint_ms)}, ${seconds(slowest.chart_ms)}, ${seconds(slowest.allCharts_ms)}; ${median.requests} requests, ${(median.received_bytes / 1000).toFixed(0)} kB; the server's first answer took ${firstAnswer_ms.toFixed(0)} ms more`
	];
}
