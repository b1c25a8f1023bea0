import type { ScenarioWeather } from './ensemble/scenarios.ts';
import { THEN_USUAL, USUAL_CLIMATE } from './ensemble/climate-draws.ts';

/** What weather stands in for days that no forecast reaches. */
export interface Climate {
	/** Earlier winters of the lake that may come again. */
	pastWinters: number;
	/** Beside them, or instead, the usual climate of such a place: an assumption with a wide band. */
	hasUsual: boolean;
	/** Whether the record of any of those winters ends before what is told, and goes on as usual. */
	endsEarly: boolean;
}

/** What some futures go by after the forecast; `null` without any. */
export function climateOf(scenarios: readonly ScenarioWeather[]): Climate | null {
	if (scenarios.length === 0) return null;
	const names = new Set(scenarios.map(({ from }) => from));
	const hasUsual = names.delete(USUAL_CLIMATE);
	const endsEarly = [...names].some((name) => name.endsWith(THEN_USUAL));
	return { pastWinters: names.size, hasUsual, endsEarly };
}
