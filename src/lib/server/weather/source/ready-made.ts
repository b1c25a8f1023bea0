import brightSky from '../../../../../data/sources/bright-sky.json' with { type: 'json' };
import metNorway from '../../../../../data/sources/met-norway.json' with { type: 'json' };
import noaaDaily from '../../../../../data/sources/noaa-daily.json' with { type: 'json' };
import openMeteoArchive from '../../../../../data/sources/open-meteo-archive.json' with { type: 'json' };
import openMeteo from '../../../../../data/sources/open-meteo.json' with { type: 'json' };
import usWeatherService from '../../../../../data/sources/us-weather-service.json' with { type: 'json' };
import { weatherSource, type WeatherSource } from './schema.ts';

/** Open services that can be chosen without being set up; their terms stand with each of them. */
export const readyMadeSources: readonly WeatherSource[] = [
	openMeteo,
	openMeteoArchive,
	metNorway,
	usWeatherService,
	brightSky,
	noaaDaily
].map((source) => weatherSource.parse(source));
