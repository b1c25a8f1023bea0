import type { Ask, FetchSettings, SourceAnswer } from './contract.ts';
import { emptyAnswer } from './empty-answer.ts';
import type { WeatherSource } from './schema.ts';

/** The weather that a source has for a lake. Whatever the source does, the answer says it. */
export async function fetchWeather(
	source: WeatherSource,
	_ask: Ask,
	_settings: FetchSettings
): Promise<SourceAnswer> {
	const text = `${source.name} can not be asked yet.`;
	return { ...emptyAnswer(), faults: [{ code: 'notConfigured', text }] };
}
