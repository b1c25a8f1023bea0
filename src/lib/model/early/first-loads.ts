import type { ForecastLoad } from '../forecast.ts';
import type { ChartUse, LoadCase } from '../load-case.ts';

/** What goes onto the ice first. */
const FIRST_USES: ReadonlySet<ChartUse> = new Set(['onFoot', 'group', 'snowmobile']);

/** Whether an answer is about somebody on foot, a group or a snowmobile. */
export function isFirstLoad({ id }: Pick<ForecastLoad, 'id'>, loads: readonly LoadCase[]): boolean {
	const load = loads.find((each) => each.id === id);
	return load !== undefined && load.use !== null && FIRST_USES.has(load.use);
}
