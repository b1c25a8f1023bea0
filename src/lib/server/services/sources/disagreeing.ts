import { addDays } from '#lib/model/calendar.ts';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import { compareDays, LARGE_K } from '#lib/model/weather-doubt.ts';
import type { Context } from '../../context.ts';
import { joinDays } from '../joining.ts';
import { localDay } from '../local-day.ts';
import type { Origin, Trust } from '../trust.ts';
import { WhileUnchanged } from '../while-unchanged.ts';

/** Two origins of a lake's weather that tell of other air. */
export interface Disagreement {
	/** The more trusted of the two. */
	first: Origin;
	second: Origin;
	/** How much warmer the second is in the mean. */
	bias_K: number;
	/** Days that both tell. */
	days: number;
}

/** So far back they are compared. Our choice: a station that fails has mostly told something by then. */
const LOOK_BACK_D = 30;
const KEPT = 200;
const HOUR_MS = 3_600_000;

const unchanged = new WhileUnchanged<Disagreement[]>(KEPT, HOUR_MS);

/** Each less trusted origin that is far off the most trusted that tells the same days, by an instant. */
export function disagreements(ctx: Context, trust: Trust, by: Date): Promise<Disagreement[]> {
	const to = localDay(by, trust.timeZone);
	return unchanged.oneAtATime(ctx, trust.lakeId, `${trust.lakeId} ${to}`, async ({ keep }) => {
		const found = await compareAll(ctx, trust, addDays(to, -LOOK_BACK_D), to);
		keep(found);
		return found;
	});
}

async function compareAll(
	{ db }: Context,
	trust: Trust,
	from: string,
	to: string
): Promise<Disagreement[]> {
	const told: { origin: Origin; days: DayValues[] }[] = [];
	const found: Disagreement[] = [];
	for (const origin of trust.origins) {
		const days = await joinDays(db, { ...trust, origins: [origin] }, from, to);
		for (const { origin: first, days: theirs } of told) {
			const compared = compareDays(days, theirs);
			if (compared === null) continue;
			const { bias_K } = compared;
			if (Math.abs(bias_K) > LARGE_K)
				found.push({ first, second: origin, bias_K, days: compared.days });
			break;
		}
		told.push({ origin, days });
	}
	return found;
}
