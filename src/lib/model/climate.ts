import type { ScenarioWeather } from './ensemble/scenarios.ts';
import { USUAL_CLIMATE } from './ensemble/climate-draws.ts';

/** What weather stands in for days that no forecast reaches. */
export interface Climate {
	/** Earlier winters of the lake that may come again. */
	pastWinters: number;
	/** Beside them, or instead, the usual climate of such a place: an assumption with a wide band. */
	hasUsual: boolean;
}

/** What some futures go by after the forecast; `null` without any. */
export function climateOf(scenarios: readonly ScenarioWeather[]): Climate | null {
	if (scenarios.length === 0) return null;
	const names = new Set(scenarios.map(({ from }) => from));
	const hasUsual = names.delete(USUAL_CLIMATE);
	return { pastWinters: names.size, hasUsual };
}
