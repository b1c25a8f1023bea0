import { stuckRuns } from '#lib/model/stuck-air.ts';
import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Context } from '../../context.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import { readSourceDays, readSourceHours } from '../../storage/source-weather.ts';
import { callFor, type Fault, type WeatherSource } from '../../weather/source/contract.ts';
import { addDays } from '#lib/model/calendar.ts';
import { localDay } from '../local-day.ts';
import { nextTurn } from '../next-turn.ts';
import { compareWithStored } from '../sources/compare-stored.ts';
import { lastObservedOf } from '../sources/last-observed.ts';
import { clock } from './allowance.ts';

/** Further back nothing is looked at again. */
const LOOK_BACK_D = 30;
const MISSING_LOOK_BACK_H = 168;
/** An observation is old when it lags so much more than the source always does. Our choice. */
const OLD_HOURS = 12;
const OLD_DAYS_H = 48;

/** What is wrong with a source's record as a whole, which no single answer shows. */
export async function faultsOverTime(
	ctx: Context,
	use: LakeSourceRow,
	source: WeatherSource,
	timeZone: string
): Promise<Fault[]> {
	const now_s = ctx.now().getTime() / 1000;
	const from_s = now_s - LOOK_BACK_D * 86_400;
	const hours = (await readSourceHours(ctx.db, 'source_hour', [use.id], from_s, now_s)).get(use.id);
	const today = localDay(ctx.now(), timeZone);
	const from = addDays(today, -LOOK_BACK_D);
	const days = (await readSourceDays(ctx.db, [use.id], from, today)).get(use.id);
	const told = { name: source.name, hours: hours ?? [], days: days ?? [] };
	await nextTurn();
	const compared = await compareWithStored(ctx, use.lake_id, {
		...told,
		exceptSourceId: source.id
	});
	return [
		...stuckFault(source.name, told.hours),
		...(await staleFault(ctx, use, source, timeZone)),
		...missingFault(source.name, told.hours),
		...(compared?.faults ?? [])
	];
}

function stuckFault(name: string, hours: readonly WeatherHour[]): Fault[] {
	const run = stuckRuns(hours).at(-1);
	const lastKnown = hours.findLastIndex(({ air_degC }) => air_degC !== null);
	if (run === undefined || run[1] !== lastKnown) return [];
	const [first, last] = [hours[run[0]], hours[run[1]]];
	if (!first || !last) return [];
	const since = new Date(first.at_s * 1000);
	const long_h = Math.round((last.at_s - first.at_s) / 3600) + 1;
	const text = `${name} has told ${first.air_degC?.toFixed(1)} °C for ${long_h} hours without a change, since ${clock(since)}: these hours are left out. Choose another station, or another source until it is mended.`;
	return [{ code: 'stuck', text, count: long_h, at: since.toISOString() }];
}

async function staleFault(
	ctx: Context,
	use: LakeSourceRow,
	source: WeatherSource,
	timeZone: string
): Promise<Fault[]> {
	const call = callFor(source, 'history');
	const last = (await lastObservedOf(ctx, timeZone, [use.id])).get(use.id);
	if (!call || !last) return [];
	const usual_h = call.reach.lag_h ?? 0;
	const allowed_h = usual_h + (call.mapping.step === 'hourly' ? OLD_HOURS : OLD_DAYS_H);
	const age_h = Math.floor((ctx.now().getTime() - last.getTime()) / 3_600_000);
	if (age_h <= allowed_h) return [];
	const text = `The last observation of ${source.name} is ${age_h} hours old, of ${clock(last)}: see whether its station still reports, or add another source.`;
	return [{ code: 'stale', text, count: age_h, at: last.toISOString() }];
}

/** Hours that lack among those of the last week, at the pace that it mostly keeps. */
function missingFault(name: string, hours: readonly WeatherHour[]): Fault[] {
	const known = hours.filter(({ air_degC }) => air_degC !== null).map(({ at_s }) => at_s);
	const last = known.at(-1);
	if (last === undefined) return [];
	const recent = known.filter((at_s) => at_s > last - MISSING_LOOK_BACK_H * 3600);
	const steps = recent.slice(1).map((at_s, index) => at_s - (recent[index] ?? at_s));
	const usual_s = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)];
	if (usual_s === undefined) return [];
	const gaps = steps.filter((step_s) => step_s > usual_s);
	const missing = gaps.reduce((count, step_s) => count + Math.round(step_s / usual_s) - 1, 0);
	if (missing === 0) return [];
	const text = `${name} lacks ${missing} of its last ${recent.length + missing} hourly temperatures: a day with more than four of them missing is taken from the next source in the order of trust, else it is a gap.`;
	return [{ code: 'missing', text, count: missing }];
}
