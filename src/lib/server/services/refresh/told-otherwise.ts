import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import { LARGE_K } from '#lib/model/weather-doubt.ts';
import type { Context } from '../../context.ts';
import { readSourceHours } from '../../storage/source-weather.ts';
import type { Fault } from '../../weather/source/contract.ts';

/** Fewer hours that come again may be a correction. Our choice. */
const FEWEST_h = 12;

/**
 * A source that tells hours far otherwise than it did, as one that flips between two stations; `null`
 * where it does not. To be asked before the new ones are stored: they replace those before.
 */
export async function toldOtherwise(
	{ db }: Pick<Context, 'db'>,
	useId: number,
	name: string,
	hours: readonly WeatherHour[]
): Promise<Fault | null> {
	const [first, last] = [hours.at(0), hours.at(-1)];
	if (!first || !last) return null;
	const span = [first.at_s, last.at_s + 1] as const;
	const stored = (await readSourceHours(db, 'source_hour', [useId], ...span)).get(useId) ?? [];
	const before = new Map(stored.map(({ at_s, air_degC }) => [at_s, air_degC]));
	const differences_K = hours.flatMap(({ at_s, air_degC }) => {
		const was_degC = before.get(at_s) ?? null;
		return air_degC === null || was_degC === null ? [] : [air_degC - was_degC];
	});
	if (differences_K.length < FEWEST_h) return null;
	const mean = (values: readonly number[]) =>
		values.reduce((sum, value) => sum + value, 0) / values.length;
	if (mean(differences_K.map(Math.abs)) <= LARGE_K) return null;
	const bias_K = mean(differences_K);
	const far = `${Math.round(mean(differences_K.map(Math.abs)))} °C`;
	const way = Math.abs(bias_K) <= LARGE_K ? 'otherwise' : bias_K < 0 ? 'colder' : 'warmer';
	const text = `${name} tells ${differences_K.length} hours ${far} ${way} than it told them before; what it tells now stands. See whether it has another station or place, or flips between two: if it is too cold now, the ice is thinner than estimated.`;
	return { code: 'unitDoubt', text, count: differences_K.length };
}
