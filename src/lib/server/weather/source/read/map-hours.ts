import { setImmediate as nextTurn } from 'node:timers/promises';
import { addDays } from '#lib/model/calendar.ts';
import { LakeClock } from '../../cells/zone.ts';
import { hourText, startOfDay_s } from '../lake-days.ts';
import type { Axis, Column } from './columns.ts';
import { hoursOfRole } from './hour-role.ts';
import { hoursOf, type Roles } from './hours.ts';
import { byRole, isRainAlone, samplesOf, type Mapped, type Place, type Reading } from './mapped.ts';
import { LONGEST_STEP_s, typicalStep_s } from './steps.ts';
import type { Tally } from './tally.ts';
import { timelineOf, type Timeline, type Window } from './timeline.ts';

/** Reads columns as hours. Other work gets its turn between one role and the next. */
export async function mapHours(
	reading: Reading,
	columns: readonly Column[],
	mapped: Mapped
): Promise<void> {
	const { mapping, place, decimal } = reading;
	const { tally } = mapped;
	const lake = new LakeClock(place.timeZone, 'local');
	const window = windowOf(place);
	const ofColumns = {
		timelineOf: timelines(reading, window, tally),
		stamp: mapping.time.stamp,
		hourOf: (at_s: number) => lake.hourStart_s(at_s),
		hourText: (at_s: number) => hourText(at_s, place.timeZone),
		decimal,
		tally
	};
	const roles: Roles = {};
	for (const [role, ofRole] of byRole(columns)) {
		roles[role] = hoursOfRole(ofRole, ofColumns, samplesOf(mapped, role));
		await nextTurn();
	}
	mapped.hours = hoursOf(roles, isRainAlone(mapping)).filter(
		({ at_s }) => at_s >= window.start_s && at_s < window.end_s
	);
}

/** The timeline of each axis, made once, its troubles counted once. */
function timelines(
	{ mapping: { time }, clock, place: { timeZone } }: Reading,
	window: Window,
	tally: Tally
): (column: Column) => Timeline {
	const known = new Map<Axis, Timeline>();
	return ({ axis }) => {
		const before = known.get(axis);
		if (before) return before;
		const timeline = timelineOf(axis.raw, time.form, clock, window);
		note(timeline, timeZone, tally);
		const problem = tooFarApart(timeline, axis.path);
		if (problem) tally.addProblem(problem);
		const used = problem ? NO_TIMES : timeline;
		known.set(axis, used);
		return used;
	};
}

const NO_TIMES: Timeline = timelineOf([], 'iso', null, { start_s: 0, end_s: 0 });

/** Days that are taken for hours would each lend their value to a few of them. */
function tooFarApart({ starts_s, lengths_s }: Timeline, path: string): string | null {
	const step_h = (typicalStep_s(starts_s) ?? 0) / 3600;
	if (step_h * 3600 <= LONGEST_STEP_s || lengths_s.some((length_s) => length_s !== null))
		return null;
	return step_h >= 20
		? `The times at ${path} are a day apart; choose daily values for them.`
		: `The times at ${path} are ${Math.round(step_h)} hours apart; hourly values must not be more than 6 hours apart. Ask the service for a finer step.`;
}

function windowOf({ from, to, timeZone }: Place): Window {
	return { start_s: startOfDay_s(from, timeZone), end_s: startOfDay_s(addDays(to, 1), timeZone) };
}

function note(timeline: Timeline, timeZone: string, tally: Tally): void {
	const { unread, skipped, doubled, places, starts_s } = timeline;
	tally.add('unreadTimes', null, unread.first ?? '', null, unread.count);
	tally.add('skippedTimes', null, skipped.first ?? '', null, skipped.count);
	tally.add('doubledTimes', null, '', null, doubled);
	for (const [at, each] of places.entries()) {
		if (each.length < 2) continue;
		const text = hourText(starts_s[at] ?? 0, timeZone);
		tally.add('repeatedTimes', null, text, text, each.length - 1);
	}
}
