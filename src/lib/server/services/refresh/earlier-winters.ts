import { addDays, daysBetween, winterOf, winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { countSourceDays } from '../../storage/source-weather.ts';
import { listWintersBefore, type RecordedSpan } from '../../storage/winters.ts';
import type { Span, WeatherSource } from '../../weather/source/contract.ts';
import { BEFORE_FREEZE_UP_D, historySpans } from './plan.ts';

/** The first and the last day of a span may lie in another day by UTC. */
const SPARE_D = 2;

/** Spans of earlier winters that a source has not brought yet, the latest first. */
export async function spansOfEarlierWinters(
	{ db }: Context,
	useId: number,
	lakeId: string,
	source: WeatherSource,
	today: IsoDate
): Promise<Span[]> {
	const winters = await listWintersBefore(db, lakeId, winterOf(today));
	const spans = winters.flatMap((winter) =>
		historySpans(source, spanOf(winter), today).toReversed()
	);
	const missing: Span[] = [];
	for (const { from, to } of spans) {
		const days = daysBetween(from, to) + 1;
		const brought = await countSourceDays(db, useId, from, to);
		if (brought < Math.max(1, days - SPARE_D)) missing.push({ from, to });
	}
	return missing;
}

/** From some days before freeze-up to ice-out, or to the end of the winter where nobody saw that. */
function spanOf({ winter, freezeUpOn, iceOutOn }: RecordedSpan): Span {
	const [, last] = winterSpan(winter);
	return { from: addDays(freezeUpOn, -BEFORE_FREEZE_UP_D), to: iceOutOn ?? last };
}
