import { z } from 'zod';
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { trialCall, type Ask, type Trial } from '../../weather/source/contract.ts';
import { between, isoDate, orUnknown } from '../fields.ts';
import { getLake } from '../lakes.ts';
import { isTimeZone, localDay, timeZoneAt } from '../local-day.ts';
import { compareWithStored, type Comparison } from './compare-stored.ts';
import { hostsOfCalls } from './hosts.ts';
import { openSource } from './sources.ts';

const place = {
	latitude: between(-90, 90, 'degrees north'),
	longitude: between(-180, 180, 'degrees east'),
	elevation_m: orUnknown(between(-500, 9000, 'm')),
	timeZone: orUnknown(z.string().refine(isTimeZone, 'must be a time zone such as Europe/Helsinki'))
};

export const tryInput = z
	.strictObject({
		call: trialCall,
		name: z.string().trim().min(1).max(80).default('The source'),
		/** The lake whose position is asked for, and with whose stored days the answer is compared. */
		lake: z.string().min(1).max(80).exactOptional(),
		/** Where no lake is given. */
		place: z.strictObject(place).exactOptional(),
		/** A stored source whose key is used, while the address stays on its hosts. */
		source: z.string().min(1).max(80).exactOptional(),
		key: z.string().trim().min(1).max(4000).exactOptional().meta({ writeOnly: true }),
		station: z.string().trim().min(1).max(120).nullable().default(null),
		part: z.enum(['history', 'forecast']).default('history'),
		from: isoDate.exactOptional(),
		to: isoDate.exactOptional()
	})
	.refine(({ lake, place: at }) => lake !== undefined || at !== undefined, {
		path: ['lake'],
		message: 'must be named, or the place be given, to have a position to ask for'
	})
	.meta({ id: 'TryInput' });

export type TryInput = z.output<typeof tryInput>;

export interface Tried extends Trial {
	/** Beside the stored days of the lake; `null` without a lake or with fewer than five days in common. */
	comparison: Comparison | null;
}

const DAYS_BACK = 6;
const DAYS_AHEAD = 3;

/** Asks an address once and tells what came and what was understood. @throws LakeNotFound */
export async function tryCall(ctx: Context, input: TryInput): Promise<Tried> {
	const ask = await askFrom(ctx, input);
	const { fetchWeather: _, trySource, settings } = ctx.weather;
	const trial = await trySource(input.call, ask, settings);
	const { hours, days } = trial.answer;
	const comparison =
		input.lake === undefined
			? null
			: await compareWithStored(ctx, input.lake, {
					name: input.name,
					hours,
					days,
					...(input.source ? { exceptSourceId: input.source } : {})
				});
	return { ...trial, comparison };
}

async function askFrom(ctx: Context, input: TryInput): Promise<Ask> {
	const at = await placeOf(ctx, input);
	const today = localDay(ctx.now(), at.timeZone);
	const [from, to] = daysOf(input, today);
	const { part, station } = input;
	return {
		...at,
		from,
		to,
		part,
		station,
		key: input.key ?? (await keyOf(ctx, input)),
		contact: ctx.weather.contact,
		validators: null,
		now: ctx.now()
	};
}

function daysOf({ part, from, to }: TryInput, today: IsoDate): [from: IsoDate, to: IsoDate] {
	const isHistory = part === 'history';
	const first = from ?? (isHistory ? addDays(today, -DAYS_BACK) : today);
	const last = to ?? (isHistory ? today : addDays(today, DAYS_AHEAD));
	return first <= last ? [first, last] : [last, first];
}

async function placeOf(ctx: Context, { lake: lakeId, place: at }: TryInput) {
	if (lakeId !== undefined) {
		const { latitude, longitude, elevation_m, timeZone } = await getLake(ctx, lakeId);
		return { latitude, longitude, elevation_m, timeZone };
	}
	if (!at) throw new RangeError('tryCall needs a lake or a place');
	return { ...at, timeZone: at.timeZone ?? timeZoneAt(at.latitude, at.longitude) };
}

/** A stored key goes only where it was given for. */
async function keyOf(ctx: Context, input: TryInput): Promise<string | null> {
	const open = input.source === undefined ? null : await openSource(ctx, input.source);
	if (!open) return null;
	const known = new Set(hostsOfCalls(open.source.calls));
	return hostsOfCalls([input.call]).every((host) => known.has(host)) ? open.key : null;
}
