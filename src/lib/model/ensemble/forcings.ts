import { addDays, type IsoDate } from '../calendar.ts';
import { dayForcing, type Forcing } from '../forcing.ts';
import type { LakeFacts } from '../lake.ts';
import { seasonWeather, type SeasonWeatherDay } from '../season-weather.ts';
import { clearSky_W_m2 } from '../sun.ts';
import type { DaySource, WeatherDay } from '../weather.ts';
import type { ScenarioWeather } from './scenarios.ts';

/** One day's weather in one possible future. */
export interface EnsembleForcing {
	forcing: Forcing;
	hasAir: boolean;
	hasSnow: boolean;
}

/** A day of the ensemble: one weather while it is known, one a scenario after that. */
export interface EnsembleWeatherDay {
	on: IsoDate;
	source: DaySource;
	forcings: readonly EnsembleForcing[];
}

export interface EnsembleWeatherInput {
	lake: LakeFacts;
	freezeUpOn: IsoDate;
	until: IsoDate;
	weather: readonly WeatherDay[];
	scenarios: readonly ScenarioWeather[];
}

/**
 * Every day from freeze-up to `until`, as far as the known weather and the scenarios reach.
 *
 * The day after the last known one is stated as well: its start is known.
 */
export function ensembleDays(input: EnsembleWeatherInput): EnsembleWeatherDay[] {
	const { lake, freezeUpOn, until, weather, scenarios } = input;
	const lastKnownOn = weather.at(-1)?.on ?? null;
	const known = chain(seasonWeather(weather, freezeUpOn, until), lake);
	if (scenarios.length === 0 || lastKnownOn === null) return known.map(shared);
	const from = addDays(lastKnownOn, 1);
	const futures = scenarios.map(({ days }) => {
		const all = [...weather.slice(-1), ...days];
		return chain(seasonWeather(all, from > freezeUpOn ? from : freezeUpOn, until), lake);
	});
	const settled = known.filter(({ day }) => day.on < from).map(shared);
	const longest = futures.reduce((most, days) => (days.length > most.length ? days : most), []);
	const open = longest.map(({ day }, index) => ({
		on: day.on,
		source: day.reported?.source ?? ('climate' as const),
		forcings: futures.map((future) => (future[index] ?? future.at(-1) ?? { forced: NONE }).forced)
	}));
	return [...settled, ...open];
}

interface Forced {
	day: SeasonWeatherDay;
	forced: EnsembleForcing;
}

const NONE: EnsembleForcing = {
	forcing: {
		duration_d: 1,
		freezing_degCd: 0,
		thawing_degCd: 0,
		air_degC: 0,
		warmFraction: 0,
		snowfall_kg_m2: 0,
		freshSnow_kg_m3: 100,
		rain_kg_m2: 0,
		sun_W_m2: 0
	},
	hasAir: false,
	hasSnow: false
};

function shared({ day, forced }: Forced): EnsembleWeatherDay {
	const source = forced.hasAir ? (day.reported?.source ?? 'gap') : 'gap';
	return { on: day.on, source, forcings: [forced] };
}

function chain(days: readonly SeasonWeatherDay[], lake: LakeFacts): Forced[] {
	let previous: WeatherDay | null = null;
	return days.map((day) => {
		const sun_W_m2 = clearSky_W_m2(lake.latitude, day.dayOfYear, lake.elevation_m ?? 0);
		const forcing = dayForcing(day, previous, lake.latitude, sun_W_m2);
		previous = day.reported;
		return { day, forced: { forcing, hasAir: forcing.hasAir, hasSnow: forcing.hasSnow } };
	});
}
