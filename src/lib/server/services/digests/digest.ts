import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Caution, ForecastDay, LoadStatus } from '#lib/model/forecast.ts';
import { isVehicle, type ChartUse } from '#lib/model/load-case.ts';
import type { ComingOff } from '../coming-off.ts';
import { iceOutByNow } from '../ice-out-by-now.ts';
import type { LakeView } from '../lake-view.ts';
import type { WeatherUpkeep } from '../weather-upkeep.ts';

/** One site of a lake at a glance: little enough to be kept of every one. */
export interface LakeDigest {
	/** The lake's. */
	id: string;
	name: string;
	isInvented: boolean;
	site: string;
	today: IsoDate;
	asOf: IsoDate;
	status: LakeView['status'];
	iceOutOn: IsoDate | null;
	/** The estimate of `asOf`; `null` where nothing is known of it. */
	day: ForecastDay | null;
	growth_m_d: number | null;
	/** Of the lower bound since the day before; `null` where one of them is not known. */
	boundChange_m: number | null;
	snowKnown: boolean;
	floodsWithMoreSnow_m: number | null;
	warmSince: IsoDate | null;
	loads: DigestLoad[];
	/** The local removal date, as typed. */
	removalOn: IsoDate | null;
	/** Of this winter, up to today. */
	lastReadingOn: IsoDate | null;
	wentThroughOn: IsoDate | null;
	/** Ages are told anew from their instants when they are shown. */
	upkeep: Omit<WeatherUpkeep, 'sentences'>;
	/** Those of the weather in short, then the estimate's, the weightiest first; of any ice left out. */
	cautions: Caution[];
}

export interface DigestLoad {
	id: string;
	name: string;
	use: ChartUse | null;
	status: LoadStatus;
	/** Whether its bound was still below what it asks the day before. */
	isNew: boolean;
	required_m: number | null;
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	until: IsoDate | null;
	/** The latest day to have it off; `null` where none is known, or it is not likely before. */
	offBy: IsoDate | null;
}

/** What holds for any ice on any day. */
const ALWAYS = new Set(['openPartOnly', 'chartsForClearIce', 'askAnEngineer', 'ordersFirst']);

/**
 * The view in short, with the days by which things have to be off. What is said of the day before comes
 * from the same run.
 */
export function digestOf(
	view: LakeView,
	off: Pick<ComingOff, 'removalOn' | 'loads'> | null
): LakeDigest {
	const { lake, site, today, asOf, status, outlook } = view;
	const { sentences, ...ages } = view.upkeep;
	const days = outlook?.forecast.days ?? [];
	const day = knownDay(days, asOf);
	const before = knownDay(days, addDays(asOf, -1));
	const cautions = outlook?.forecast.cautions ?? [];
	return {
		id: lake.id,
		name: lake.name,
		isInvented: lake.isInvented,
		site,
		today,
		asOf,
		status,
		iceOutOn: iceOutByNow(view),
		day,
		growth_m_d: outlook?.growth_m_d ?? null,
		boundChange_m: day?.bound && before?.bound ? day.bound.total_m - before.bound.total_m : null,
		snowKnown: outlook?.snowKnown ?? false,
		floodsWithMoreSnow_m: outlook?.floodsWithMoreSnow_m ?? null,
		warmSince: outlook?.warmSpell.since ?? null,
		loads: loadsOf(view, before, off),
		removalOn: off?.removalOn ?? null,
		...readingsOf(view),
		upkeep: ages,
		cautions: [...sentences.map(inShort), ...cautions.filter(({ code }) => !ALWAYS.has(code))]
	};
}

const IN_SHORT: Readonly<Record<string, string>> = {
	forecastOld: 'The newest forecast is too old to be used.',
	sourceFails: 'A weather source fails.',
	elevationUnknown: 'Its elevation is not entered, and its weather is another height’s.',
	noPrecipitation: 'Its snow is not known.',
	weatherSlip: 'A slip in its imported weather is left out.',
	forecastTooCold: 'Its forecasts were too cold of late.',
	sourcesDiffer: 'Its weather sources are far apart.'
};

/** What is wrong with the weather without its remedy, which stands on the lake's page. */
function inShort({ code, text }: Caution): Caution {
	return { code, text: IN_SHORT[code] ?? text };
}

function knownDay(days: readonly ForecastDay[], on: IsoDate): ForecastDay | null {
	const day = days.find((each) => each.on === on);
	return day === undefined || day.total_m.p50 === null ? null : day;
}

/** Those that the lake's pages show. */
function loadsOf(
	view: LakeView,
	before: ForecastDay | null,
	off: Pick<ComingOff, 'loads'> | null
): DigestLoad[] {
	const { outlook, loads, shown } = view;
	return (outlook?.forecast.loads ?? []).flatMap((answer) => {
		const load = loads.find(({ id }) => id === answer.id);
		if (load === undefined || !shown.includes(load.id)) return [];
		const { id, name, status, required_m, expectedFrom, likelyFrom, until } = answer;
		// The day before is told of one spot only, which vehicles are not held against.
		const wasShort =
			before?.bound && required_m !== null && !isVehicle(load)
				? before.bound.effective_m < required_m
				: false;
		const isNew = wasShort && (status === 'expectedNotDrilled' || status === 'reached');
		const by = off?.loads.find((each) => each.id === id)?.offBy.on ?? null;
		return [
			{
				id,
				name,
				use: load.use,
				status,
				isNew,
				required_m,
				expectedFrom,
				likelyFrom,
				until,
				// What is not likely before that day is not to be out there at all.
				offBy: by !== null && likelyFrom !== null && likelyFrom <= by ? by : null
			}
		];
	});
}

function readingsOf({
	readings,
	today
}: LakeView): Pick<LakeDigest, 'lastReadingOn' | 'wentThroughOn'> {
	const taken = readings.filter(({ on }) => daysBetween(on, today) >= 0);
	const last = (days: readonly IsoDate[]) => days.toSorted().at(-1) ?? null;
	return {
		lastReadingOn: last(taken.map(({ on }) => on)),
		wentThroughOn: last(taken.filter(({ kind }) => kind === 'wentThrough').map(({ on }) => on))
	};
}
