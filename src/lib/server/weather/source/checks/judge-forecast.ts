import type { Mapped } from '../read/mapped.ts';
import type { Fault } from '../contract.ts';
import { hourText } from '../lake-days.ts';
import { clockDoubt } from './clock-doubt.ts';
import { dayGaps, hasTemperature, hourGaps } from './gaps.ts';
import type { Judged, Question } from './judge.ts';
import { withoutSpikes } from './spiked.ts';
import { staleForecast } from './stale.ts';
import { withoutStuckFrost } from './stuck-forecast.ts';

/** What is expected: frost that stands still or is out of all bounds taken out, its age, its gaps and its clock told. */
export function judgeForecast(
	{ now, timeZone, longitude }: Question,
	told: Pick<Mapped, 'hours' | 'days'>,
	mapped: Mapped,
	madeAt: Date
): Judged {
	const moving = withoutStuckFrost(told.hours, told.days, timeZone);
	const { hours, days, faults: spiked } = withoutSpikes(moving.hours, moving.days, timeZone);
	const firstHour = hours.find(({ air_degC }) => air_degC !== null);
	const firstDay = days.find(hasTemperature);
	const faults = [
		staleForecast(madeAt, now),
		firstHour || firstDay ? null : past(mapped, timeZone),
		...moving.faults,
		...spiked,
		clockDoubt(hours, longitude),
		firstHour ? hourGaps(hours, firstHour.at_s, timeZone) : null,
		firstDay ? dayGaps(days, firstDay.on) : null
	].filter((fault) => fault !== null);
	return { hours, days, faults };
}

function past({ hours, days }: Mapped, timeZone: string): Fault | null {
	const hour = hours.findLast(({ air_degC }) => air_degC !== null);
	const day = days.findLast(hasTemperature);
	const at = hour ? hourText(hour.at_s, timeZone) : day?.on;
	if (at === undefined) return null;
	const text = `All of this forecast lies in the past; it ends ${at}. The source seems to have stopped making new ones; set another source before this one if that goes on.`;
	return { code: 'stale', text, at };
}
