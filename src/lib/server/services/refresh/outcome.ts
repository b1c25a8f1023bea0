import type { Context } from '../../context.ts';
import { readFetchStates, writeFetchState } from '../../storage/fetch-states.ts';
import { markAllForJoining } from '../../storage/joined-days.ts';
import { updateLakeSourceRow, type LakeSourceRow } from '../../storage/lake-sources.ts';
import { readSourceState, updateSourceState } from '../../storage/source-states.ts';
import {
	callFor,
	type FaultCode,
	type SourceAnswer,
	type SourcePart,
	type WeatherSource
} from '../../weather/source/contract.ts';
import { spreadBackOff_min } from './allowance.ts';

/** Faults of the service as a whole: asking it for another lake would fail as well. */
const OF_THE_SERVICE: ReadonlySet<FaultCode> = new Set([
	'notConfigured',
	'timeOut',
	'unreachable',
	'keyRefused',
	'tooMany',
	'serverFailed',
	'redirectedTooOften',
	'addressNotAllowed'
]);

interface Use {
	use: LakeSourceRow;
	source: WeatherSource;
}

/** Keeps how it went: validators, waits, failures in a row, and what was told of the station. */
export async function noteOutcome(
	ctx: Context,
	{ use, source }: Use,
	part: SourcePart,
	answer: SourceAnswer
): Promise<void> {
	await noteForUse(ctx, use, part, answer);
	await noteForSource(ctx, use.source_id, answer);
	// The place of what is measured counts, and where nothing is that of the forecast.
	if (answer.outcome === 'ok' && (part === 'history' || !callFor(source, 'history'))) {
		await noteStation(ctx, use, answer);
	}
}

async function noteForUse(
	ctx: Context,
	use: LakeSourceRow,
	part: SourcePart,
	answer: SourceAnswer
): Promise<void> {
	const before = (await readFetchStates(ctx.db, use.id))[part];
	const now = ctx.now().toISOString();
	const isFailed = answer.outcome === 'failed';
	const given = answer.validators ? JSON.stringify(answer.validators) : null;
	const validators = answer.outcome === 'ok' ? given : (given ?? before?.validators ?? null);
	await writeFetchState(
		ctx.db,
		{ lake_source_id: use.id, part },
		{
			validators,
			last_try_at: now,
			last_success_at: isFailed ? (before?.last_success_at ?? null) : now,
			fresh_until_at: answer.freshUntilAt?.toISOString() ?? null,
			failures: isFailed ? (before?.failures ?? 0) + 1 : 0
		}
	);
}

async function noteForSource(
	ctx: Context,
	sourceId: string,
	{ outcome, faults, retryAfter_s }: SourceAnswer
): Promise<void> {
	const now = ctx.now();
	const after = (minutes: number) => new Date(now.getTime() + minutes * 60_000).toISOString();
	const wait = retryAfter_s === null ? {} : { retry_after_at: after(retryAfter_s / 60) };
	if (outcome !== 'failed') {
		const well = { failures: 0, back_off_until_at: null, last_success_at: now.toISOString() };
		return updateSourceState(ctx.db, sourceId, { ...well, ...wait });
	}
	if (!faults.some(({ code }) => OF_THE_SERVICE.has(code))) {
		return updateSourceState(ctx.db, sourceId, { ...wait });
	}
	const failures = (await readSourceState(ctx.db, sourceId)).failures + 1;
	const minutes = spreadBackOff_min(failures, ctx.weather.random());
	await updateSourceState(ctx.db, sourceId, {
		failures,
		back_off_until_at: after(minutes),
		...wait
	});
}

/** Another elevation of the station corrects all that it has brought. */
async function noteStation(
	ctx: Context,
	use: LakeSourceRow,
	{ station, hasPrecipitation }: SourceAnswer
): Promise<void> {
	await updateLakeSourceRow(ctx.db, use.id, {
		has_precipitation: hasPrecipitation ? 1 : 0,
		...(station
			? {
					station_name: station.name,
					station_latitude: station.latitude,
					station_longitude: station.longitude,
					station_elevation_m: station.elevation_m
				}
			: {})
	});
	if (station && station.elevation_m !== use.station_elevation_m) {
		await markAllForJoining(ctx.db, use.lake_id);
	}
}
