import type { Context } from '../../context.ts';
import { callFor, type Fault, type Span } from '../../weather/source/contract.ts';
import { joinChanged } from '../joining.ts';
import type { Asking, Taking } from './asking.ts';
import { faultsOverTime } from './over-time.ts';
import { storeForecast } from './store-forecast.ts';
import { storeHistory } from './store-history.ts';
import { toldOtherwise } from './told-otherwise.ts';

/** What is done with history; once its last days are stored, the record is looked at as a whole. */
export function takingHistory(ctx: Context, asking: Asking, span: Span, isLast: boolean): Taking {
	const { use, source, lake } = asking;
	let otherwise: Fault | null = null;
	return {
		async store(answer) {
			const mapping = callFor(source, 'history')?.mapping;
			if (!mapping) return 0;
			otherwise = await toldOtherwise(ctx, use.id, source.name, answer.hours);
			const stored = await storeHistory(ctx.db, { ...asking, mapping }, answer, span);
			await joinChanged(ctx, use.lake_id);
			return stored;
		},
		moreFaults: async () => [
			...(otherwise ? [otherwise] : []),
			...(isLast ? await faultsOverTime(ctx, use, source, lake.timeZone) : [])
		]
	};
}

/** What is done with a forecast. */
export function takingForecast(ctx: Context, asking: Asking): Taking {
	return {
		store: (answer) => storeForecast(ctx, asking, answer),
		moreFaults: async () => []
	};
}
