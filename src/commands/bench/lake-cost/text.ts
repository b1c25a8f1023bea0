import type { LakeCostReport } from './report.ts';
import type { Spent } from './spent.ts';

/** The cost of a lake as lines of text. */
export function lakeCostText(cost: LakeCostReport): string[] {
	const { lakes, hours, readings, size_B, refresh, forecast } = cost;
	return [
		`a lake with ${hours} hours of weather from two sources and ${readings} readings, of ${lakes}: ${(size_B / 1e6).toFixed(2)} MB`,
		`  refreshing both sources: ${spentText(refresh)}, ${refresh.calls.toFixed(0)} calls; its forecast anew: ${spentText(forecast)}`
	];
}

function spentText({ duration_ms, cpu_ms }: Spent): string {
	return `${duration_ms.toFixed(0)} ms, ${cpu_ms.toFixed(0)} ms of a core`;
}
