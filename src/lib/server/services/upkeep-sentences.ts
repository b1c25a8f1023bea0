import type { Caution } from '#lib/model/forecast.ts';
import { SPIKE_K } from '#lib/model/spiked-air.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { readFetchStates } from '../storage/fetch-states.ts';
import { readForecastElevations } from '../storage/forecasts.ts';
import { findLakeRow } from '../storage/lakes.ts';
import type { LakeSourceRow } from '../storage/lake-sources.ts';
import { importedSlips } from './imported-slips.ts';
import type { KnownForecast } from './known-forecast.ts';
import { FRESH_H } from './known-forecast.ts';
import { coldForecasts } from './sources/cold-forecasts.ts';
import { disagreements } from './sources/disagreeing.ts';
import { listSources } from './sources/sources.ts';
import type { Origin, Trust } from './trust.ts';

interface Known {
	by: Date;
	forecast: KnownForecast;
	trust: Trust;
	words: Words;
	/** The last week observed. */
	latestDays: readonly WeatherDay[];
}

const HOUR_MS = 3_600_000;
/** One failure in a row is nothing to speak of: it is tried again within minutes. */
const FAILURES_TOLD = 2;

/** What a reader must know of the weather's upkeep, and what to do about it. */
export async function upkeepSentences(
	ctx: Context,
	uses: readonly LakeSourceRow[],
	known: Known
): Promise<Caution[]> {
	const slips = await slipped(ctx, known);
	if (uses.length === 0) return slips;
	const names = new Map((await listSources(ctx)).map(({ id, name }) => [id, name]));
	const nameOf = (use: LakeSourceRow) => names.get(use.source_id) ?? use.source_id;
	return [
		...oldForecast(known),
		...slips,
		...(await failing(ctx, uses, nameOf)),
		...(await disagreeing(ctx, names, known)),
		...(await tooCold(ctx, names, known)),
		...(await withoutElevation(ctx, uses, nameOf)),
		...withoutPrecipitation(uses, nameOf, known)
	];
}

/** Who imported it can put it right. */
async function slipped(ctx: Context, { by, trust, words }: Known): Promise<Caution[]> {
	const slips = await importedSlips(ctx, trust, by);
	if (slips === null) return [];
	const { count, on, clock } = slips;
	const first = `${words.day(on)}${clock === null ? '' : `, ${clock}`}`;
	const what =
		count === 1
			? `The imported weather of ${first} is`
			: `${count} days or hours of the imported weather, the first ${first}, are`;
	const text = `${what} colder by more than ${words.step(SPIKE_K)} than what lies beside, which no weather is: the temperature is left out. Import it corrected if it is a slip.`;
	return [{ code: 'weatherSlip', text }];
}

function oldForecast({ forecast, by }: Known): Caution[] {
	if (!forecast.isOld || forecast.issuedAt === null) return [];
	const age_h = Math.floor((by.getTime() - forecast.issuedAt.getTime()) / HOUR_MS);
	const text = `The newest forecast was issued ${age_h} hours ago: it is not used after ${FRESH_H} hours, and the days to come are told from past winters. Refresh the weather, or see its log.`;
	return [{ code: 'forecastOld', text }];
}

async function failing(
	ctx: Context,
	uses: readonly LakeSourceRow[],
	nameOf: (use: LakeSourceRow) => string
): Promise<Caution[]> {
	const cautions: Caution[] = [];
	for (const use of uses) {
		const states = await readFetchStates(ctx.db, use.id);
		const failures = Math.max(states.history?.failures ?? 0, states.forecast?.failures ?? 0);
		if (failures < FAILURES_TOLD) continue;
		const text = `${nameOf(use)} has failed ${failures} times in a row: what was known before still stands. Its log says why and what to do.`;
		cautions.push({ code: 'sourceFails', text });
	}
	return cautions;
}

/** What fills another's gaps, or is trusted more, may be the wrong one. */
async function disagreeing(
	ctx: Context,
	names: ReadonlyMap<string, string>,
	{ by, trust, words }: Known
): Promise<Caution[]> {
	const nameOf = (origin: Origin) =>
		origin.kind === 'csv'
			? 'the imported weather'
			: (names.get(origin.sourceId) ?? origin.sourceId);
	return (await disagreements(ctx, trust, by)).map(({ first, second, bias_K, days }) => {
		const [trusted, other] = [nameOf(first), nameOf(second)];
		const far = `By ${other} it was ${words.step(Math.abs(bias_K))} ${bias_K > 0 ? 'warmer' : 'colder'} than by ${trusted}, on the last ${days} days that both tell.`;
		const harm =
			bias_K > 0
				? `The colder one is trusted more: if the other is right, the ice is thinner than estimated.`
				: `Where ${trusted} tells nothing, ${other} stands in: if it is wrong, the ice is thinner than estimated.`;
		const text = `${far} ${harm} Compare both with a thermometer at the lake, and trust the wrong one less.`;
		return { code: 'sourcesDiffer', text };
	});
}

/** Cold that does not come makes days to go on that come too early. */
async function tooCold(
	ctx: Context,
	names: ReadonlyMap<string, string>,
	{ by, trust, words }: Known
): Promise<Caution[]> {
	return (await coldForecasts(ctx, trust, by)).map(({ sourceId, colder_K, days }) => {
		const text = `${names.get(sourceId) ?? sourceId} has forecast the last ${days} days ${words.step(colder_K)} colder than they came: the days told ahead may come too early, and the ice ahead be thinner than told. Check its place and its elevation, or trust another source more.`;
		return { code: 'forecastTooCold', text };
	});
}

/** A station that lies higher is colder than the lake, and makes its ice thicker than it is. */
async function withoutElevation(
	{ db }: Context,
	uses: readonly LakeSourceRow[],
	nameOf: (use: LakeSourceRow) => string
): Promise<Caution[]> {
	const lake = await findLakeRow(db, uses[0]?.lake_id ?? '');
	if (!lake || lake.elevation_m !== null) return [];
	const wanted = uses.filter(({ corrects_elevation }) => corrects_elevation === 1);
	const ofForecasts = await readForecastElevations(
		db,
		wanted.map(({ id }) => id)
	);
	return wanted.flatMap((use) => {
		const place_m = use.station_elevation_m ?? ofForecasts.get(use.id) ?? null;
		if (place_m === null) return [];
		const text = `${nameOf(use)} tells the temperatures of a place ${Math.round(place_m)} m above the sea. The elevation of ${lake.name} is not entered, so they are taken as they are: if the lake lies lower, it is warmer there, and the ice is thinner than estimated. Enter the elevation with the facts of the lake.`;
		return [{ code: 'elevationUnknown', text }];
	});
}

/** Unknown snow is never no snow. */
function withoutPrecipitation(
	uses: readonly LakeSourceRow[],
	nameOf: (use: LakeSourceRow) => string,
	{ latestDays }: Known
): Caution[] {
	const hasFall = latestDays.some(
		(day) => day.precipitation_kg_m2 !== null || day.snowfall_kg_m2 !== null
	);
	const dry = uses.filter(({ has_precipitation }) => has_precipitation === 0);
	if (hasFall || dry.length === 0 || uses.some((use) => use.has_precipitation === 1)) return [];
	const names = dry.map(nameOf).join(' and ');
	const text = `${names} ${dry.length === 1 ? 'gives' : 'give'} no precipitation, so the snow on the ice is not known: usual snow for the place and date stands in, and no load counts as expected or reached until a snow depth is measured on the ice. A source with precipitation would tell it.`;
	return [{ code: 'noPrecipitation', text }];
}
