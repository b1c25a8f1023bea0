import { addDays, type IsoDate } from './calendar.ts';
import type { Kept } from './ensemble/estimate.ts';
import type { LoadStatus } from './forecast.ts';
import { outlook, type Outlook, type OutlookInput } from './outlook.ts';
import type { Reading } from './reading.ts';
import { isForecastBefore, keptEstimateSteps } from './site-estimate.ts';
import { siteSeason } from './site-season.ts';
import { finish } from './steps.ts';

/** The ice of one day, as a hole at a random spot would show it. */
export interface IceThen {
	p05_m: number;
	p50_m: number;
	p95_m: number;
	/** Lower bound to go by. */
	bound_m: number;
}

/** What readings change of an estimate that was made without them. */
export interface ReadingsEffect {
	/** Of the day of the last of them; `null` where that day is not estimated. */
	ice: { before: IceThen; after: IceThen } | null;
	/** Where each load stands. */
	loads: { id: string; name: string; before: LoadStatus; after: LoadStatus; reason: string }[];
	/** The weather of its day is not in: until then it counts against the ice, not for it. */
	isAhead: boolean;
	asOf: IsoDate;
}

/**
 * The estimate of the day of asking with the last of some more readings and without it; `null` where
 * there is no estimate. The days to come are left out, which nothing told here needs.
 *
 * Goes on from the day before the first of them, so that all but the first call cost a few days only.
 */
export function readingsEffect(
	input: OutlookInput,
	more: readonly Reading[]
): ReadingsEffect | null {
	const last = more.at(-1);
	const ids = new Set(more.map(({ id }) => id));
	const days = [...more, ...input.readings.filter(({ id }) => ids.has(id))].map(({ on }) => on);
	const first = days.toSorted()[0];
	if (last === undefined || first === undefined) return null;
	const kept = keptBefore(input, first);
	const run = (readings: readonly Reading[]): Outlook | null =>
		outlook({ ...withReadings(toToday(input), readings), ...(kept ? { resume: kept } : {}) });
	const [before, after] = [run(more.slice(0, -1)), run(more)];
	if (after === null) return null;
	const ice = { before: iceOn(before, last.on), after: iceOn(after, last.on) };
	return {
		ice: ice.before && ice.after ? { before: ice.before, after: ice.after } : null,
		loads: after.forecast.loads.map(({ id, name, status, reason }) => ({
			id,
			name,
			before: before?.forecast.loads.find((load) => load.id === id)?.status ?? status,
			after: status,
			reason
		})),
		isAhead: last.on > input.asOf,
		asOf: input.asOf
	};
}

/** The input with more readings, each in the place of one with the same id: those after the day of asking can only take from the answer. */
export function withReadings(input: OutlookInput, more: readonly Reading[]): OutlookInput {
	const { asOf, since } = input;
	const isLater = ({ on }: Reading) => on > asOf;
	const ids = new Set(more.map(({ id }) => id));
	const joined = (known: readonly Reading[], added: readonly Reading[]) =>
		[...known.filter(({ id }) => !ids.has(id)), ...added].toSorted(byDay);
	const onTime = more.filter((reading) => !isLater(reading));
	return {
		...input,
		readings: joined(input.readings, onTime),
		...(since
			? { since: { ...since, readings: joined(since.readings, more.filter(isLater)) } }
			: {})
	};
}

/** The ice of a day in an outlook; `null` where it is not estimated. */
export function iceOn(answer: Outlook | null, on: IsoDate): IceThen | null {
	const day = answer?.forecast.days.find((each) => each.on === on);
	if (!day || day.bound === null) return null;
	const { p05, p50, p95 } = day.total_m;
	if (p05 === null || p50 === null || p95 === null) return null;
	return { p05_m: p05, p50_m: p50, p95_m: p95, bound_m: day.bound.total_m };
}

function byDay(a: Reading, b: Reading): number {
	return a.on < b.on ? -1 : Number(a.on > b.on);
}

function toToday(input: OutlookInput): OutlookInput {
	const { past: _, ...rest } = input;
	const isDrawn = isForecastBefore(input.weather, input.asOf);
	return { ...(isDrawn ? input : rest), until: input.asOf };
}

const runs = new WeakMap<OutlookInput, Map<IsoDate, Kept | null>>();

/** The run up to the day before; `null` where every run has to begin at freeze-up. */
function keptBefore(input: OutlookInput, on: IsoDate): Kept | null {
	const day = addDays(on < input.asOf ? on : input.asOf, -1);
	const own = runs.get(input) ?? new Map<IsoDate, Kept | null>();
	runs.set(input, own);
	const known = own.get(day);
	if (known !== undefined) return known;
	const site = isForecastBefore(input.weather, input.asOf) ? null : siteSeason(input);
	const { past: _, ...rest } = input;
	const kept = site && finish(keptEstimateSteps(site, { ...rest, asOf: day, until: day }));
	own.set(day, kept);
	return kept;
}
