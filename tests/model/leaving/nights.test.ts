import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { nightsAround } from '#lib/model/leaving/nights.ts';
import { weatherDay } from '../../support/invented-winter.ts';

const ON = '2027-03-10';
const day = (
	shift: number,
	air_degC: number | null,
	source: 'observed' | 'forecast' = 'observed'
) => weatherDay(addDays(ON, shift), air_degC, { source });

test('three days back and seven ahead are told, by who knows them', () => {
	const past = [-4, -3, -2, -1, 0].map((shift) => day(shift, -2));
	const ahead = Array.from({ length: 9 }, (_, at) => day(at + 1, 3, 'forecast'));
	const nights = nightsAround([...past, ...ahead], ON, 46);
	expect(nights.map(({ on }) => on)).toEqual(
		[-2, -1, 0, 1, 2, 3, 4, 5, 6, 7].map((shift) => addDays(ON, shift))
	);
});

test('a night of six hours of frost freezes again, one of fewer does not', () => {
	const hours = (aboveFreezing_h: number) =>
		weatherDay(ON, 1, { aboveFreezing_h, freezing_degCd: 0.5, thawing_degCd: 1.5 });
	const [six] = nightsAround([hours(18)], ON, 46);
	const [five] = nightsAround([hours(19)], ON, 46);
	expect(six).toMatchObject({ below_h: 6, refreezes: true });
	expect(five).toMatchObject({ below_h: 5, refreezes: false });
});

test('a daily mean above zero with a cold morning is split by the sine of its range', () => {
	const [night] = nightsAround([weatherDay(ON, 1, { min_degC: -5, max_degC: 7 })], ON, 46);
	expect(night?.below_h).toBeGreaterThan(6);
	expect(night?.min_degC).toBe(-5);
	expect(nightsAround([day(0, null)], ON, 46)).toEqual([]);
});
