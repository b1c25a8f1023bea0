import { expect, test } from 'vitest';
import { readClock } from '#lib/server/weather/cells/clock.ts';
import { dateShape, readStamp } from '#lib/server/weather/cells/dates.ts';
import { isMissingCode, readNumber, voteDecimal } from '#lib/server/weather/cells/numbers.ts';
import { toSi, unitsFor } from '#lib/server/weather/cells/units.ts';
import { LakeClock } from '#lib/server/weather/cells/zone.ts';

test('numbers are read with a sign, an exponent and either kind of minus', () => {
	const read = (text: string) => readNumber(text, '.').value;
	expect(['-5.25', '+3', '.5', '5.', '1.2e-3', '\u22127', '\u20137'].map(read)).toEqual([
		-5.25, 3, 0.5, 5, 0.0012, -7, -7
	]);
	expect(readNumber('-5,25', ',').value).toBe(-5.25);
});

test.each(['1,234', '1 234', "1'234.5", '5 °C', '0x10', '1e999', '5..2', '--5', '٣'])(
	'%s is not a number, and says so',
	(text) => {
		const { value, reason } = readNumber(text, '.');
		expect(value).toBeNull();
		expect(reason).toMatch(/;/);
	}
);

test('codes for missing values are known by their nines', () => {
	for (const code of ['-999', '-999.9', '-9999', '9999.9', '999', '-99', '-99,9', '99999']) {
		expect(isMissingCode(code, false)).toBe(true);
	}
	for (const value of ['99', '99.9', '9', '-9.9', '-98', '0.999', '-999.5']) {
		expect(isMissingCode(value, false)).toBe(false);
	}
	expect(isMissingCode('-99', true)).toBe(false);
	expect(isMissingCode('-9999', true)).toBe(true);
});

test('the decimal mark of most cells wins, and the strays are counted', () => {
	expect(voteDecimal(['1,5', '2,5', '3', '4.5', ''])).toEqual({ decimal: ',', strayShare: 1 / 3 });
	expect(voteDecimal(['1', '2'])).toEqual({ decimal: '.', strayShare: 0 });
});

test('times of day have no hour 25, no minute 60 and no hour 13 in the afternoon', () => {
	expect(readClock('24:00')).toEqual({ second: 86_400, offset_s: null });
	expect(readClock('12:30 am')).toEqual({ second: 1800, offset_s: null });
	expect(readClock('12:30pm')).toEqual({ second: 45_000, offset_s: null });
	expect(readClock('05:30:15.250-03:30')).toEqual({ second: 19_815, offset_s: -12_600 });
	for (const text of [
		'24:01',
		'25:00',
		'12:60',
		'13:00 pm',
		'0:30 pm',
		'12:00+15:00',
		'noon',
		''
	]) {
		expect(readClock(text)).toMatch(/;/);
	}
});

test('a leap day is a day in leap years only', () => {
	expect(readStamp('2024-02-29', 'Y-m-d')).toMatchObject({ day: 19_782 });
	expect(readStamp('2023-02-29', 'Y-m-d')).toMatch(/no such day/);
	expect(readStamp('1900-02-29', 'Y-m-d')).toMatch(/no such day/);
});

test('days by number fit their instant', () => {
	expect(readStamp('1704067200', 'epoch s')).toEqual({ day: 19_723, second: 0, offset_s: 0 });
	expect(readStamp('1704067199000', 'epoch ms')).toEqual({
		day: 19_722,
		second: 86_399,
		offset_s: 0
	});
	expect(readStamp('2024010100', 'Ymd')).toEqual({ day: 19_723, second: 0, offset_s: null });
	expect(readStamp('202401011330', 'Ymd')).toEqual({ day: 19_723, second: 48_600, offset_s: null });
});

test('words that look a little like dates are none', () => {
	for (const text of [
		'marble 5 2024',
		'2024-01',
		'1.5',
		'12345678',
		'99991231',
		'T2024-01-01',
		'2024-01-01x'
	]) {
		expect(dateShape(text)).toBeNull();
	}
});

test('the skipped hour has no instant and the doubled hour has two', () => {
	const clock = new LakeClock('America/Chicago', 'local');
	const wall = (text: string) => Date.parse(`${text}Z`) / 1000;
	expect(clock.instants(wall('2024-03-10T02:30'))).toEqual([]);
	expect(clock.instants(wall('2024-11-03T01:30'))).toEqual([
		wall('2024-11-03T06:30'),
		wall('2024-11-03T07:30')
	]);
	expect(clock.instants(wall('2024-07-01T12:00'))).toEqual([wall('2024-07-01T17:00')]);
});

test('standard time is the winter’s offset on either half of the globe', () => {
	const july = Date.parse('2024-07-01T12:00Z') / 1000;
	const january = Date.parse('2024-01-01T12:00Z') / 1000;
	expect(new LakeClock('America/Chicago', 'standard').instants(july)).toEqual([july + 6 * 3600]);
	expect(new LakeClock('America/Santiago', 'standard').instants(january)).toEqual([
		january + 4 * 3600
	]);
});

test('units convert as their definitions say', () => {
	expect(toSi('air', '°F', -40, 24)).toBeCloseTo(-40, 12);
	expect(toSi('air', 'K', 273.15, 24)).toBe(0);
	expect(toSi('air', '0.1 °C', -53, 24)).toBeCloseTo(-5.3, 12);
	expect(toSi('precipitation', 'in', 1, 24)).toBeCloseTo(25.4, 12);
	expect(toSi('precipitation', 'mm/h', 1, 0.5)).toBe(0.5);
	expect(toSi('snowfall', 'cm', 10, 24)).toBe(10);
	expect(toSi('snowfall', 'in', 10, 24)).toBeCloseTo(25.4, 12);
	expect(toSi('snowfall', 'mm water', 10, 24)).toBe(10);
	expect(toSi('landSnow', 'in', 10, 24)).toBeCloseTo(0.254, 12);
	expect(toSi('wind', 'kn', 1, 24)).toBeCloseTo(0.514444, 6);
	expect(() => toSi('wind', 'furlong', 1, 24)).toThrow(RangeError);
	expect(unitsFor('ignore')).toEqual([]);
});
