import { expect, test } from 'vitest';
import { datePart, headingOf } from '#lib/server/weather/cells/header-roles.ts';
import { headingUnit } from '#lib/server/weather/cells/header-units.ts';

const MEANINGS: readonly [heading: string, role: string, unit: string | null][] = [
	['date', 'date', null],
	['Datum', 'date', null],
	['Date/Time (LST)', 'time', null],
	['timestamp', 'time', null],
	['valid(UTC)', 'time', null],
	['Hour', 'clock', null],
	['Klo', 'clock', null],
	['tmean_c', 'air', '°C'],
	['Mean Temp (°C)', 'air', '°C'],
	['Mean Temp (Â°C)', 'air', '°C'],
	['Mean Temp (\uFFFDC)', 'air', '°C'],
	['temperature_2m (°C)', 'air', '°C'],
	['airTempF', 'air', '°F'],
	['TAVG', 'air', null],
	['Lufttemperatur [°C]', 'air', '°C'],
	['Ilman lämpötila (degC)', 'air', '°C'],
	['t2m [K]', 'air', 'K'],
	['TAVG (tenths of degrees C)', 'air', '0.1 °C'],
	['tmin_c', 'min', '°C'],
	['TMIN', 'min', null],
	['Min Temp, deg F', 'min', '°F'],
	['temperature_2m_min (°C)', 'min', '°C'],
	['Max Temp (°C)', 'max', '°C'],
	['TXK', 'max', null],
	['precip_mm', 'precipitation', 'mm'],
	['PRCP', 'precipitation', null],
	['Total Precip (mm)', 'precipitation', 'mm'],
	['precipitation_sum (inch)', 'precipitation', 'in'],
	['precipitation (kg/m²)', 'precipitation', 'mm'],
	['Niederschlag in mm', 'precipitation', 'mm'],
	['rain (mm/h)', 'precipitation', 'mm/h'],
	['snowfall_cm', 'snowfall', 'cm'],
	['Total Snow (cm)', 'snowfall', 'cm'],
	['snowfall_we_mm', 'snowfall', 'mm water'],
	['Neuschnee [cm]', 'snowfall', 'cm'],
	['snow_depth_cm', 'landSnow', 'cm'],
	['snow_depth (m)', 'landSnow', 'm'],
	['Snow on Grnd (cm)', 'landSnow', 'cm'],
	['Schneehöhe [cm]', 'landSnow', 'cm'],
	['Snödjup (m)', 'landSnow', 'm'],
	['wind_speed_10m (km/h)', 'wind', 'km/h'],
	['wspd_ms', 'wind', 'm/s'],
	['Wind Spd (kn)', 'wind', 'kn'],
	['AWND (mph)', 'wind', 'mph']
];

test.each(MEANINGS)('"%s" is %s in %s', (heading, role, unit) => {
	expect(headingOf(heading, '')).toMatchObject({ role, unit });
});

test.each([
	'dew point (°C)',
	'soil_temperature_0cm (°C)',
	'water temp_c',
	'apparent_temperature (°C)',
	'Wind Chill',
	'wind_gusts_10m (km/h)',
	'Wind Dir (10s deg)',
	'Spd of Max Gust (km/h)',
	'Max Temp Flag',
	'precipitation_hours (h)',
	'precipitation probability (%)',
	'snow depth water equivalent (mm)',
	'Heat Deg Days (°C)',
	'pressure (hPa)',
	'Rel Hum (%)',
	'source',
	'lat'
])('"%s" is not taken for the weather that is needed', (heading) => {
	expect(headingOf(heading, '').role).toBe('ignore');
});

test('a unit that we don’t know is kept apart from no unit', () => {
	expect(headingUnit('precip (mm/3h)')).toMatchObject({ unit: null, unknown: 'mm/3h' });
	expect(headingUnit('temperature (2m)')).toMatchObject({ unit: null, unknown: null });
	expect(headingOf('snow depth (km)', '')).toMatchObject({ unit: null, unknownUnit: 'km' });
});

test('the line below a heading gives its unit', () => {
	expect(headingOf('temp', '°F').unit).toBe('°F');
	expect(headingOf('wind', 'knots').unit).toBe('kn');
});

test('year, month and day are told in some languages', () => {
	expect(['Year', 'MM', 'Päivä'].map(datePart)).toEqual(['year', 'month', 'day']);
	expect(datePart('Daylight')).toBeNull();
});
