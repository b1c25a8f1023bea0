import fc from 'fast-check';
import { addDays } from '../../src/lib/model/calendar.ts';
import type { DayValues } from '../../src/lib/model/hours-to-days.ts';
import type { SiteEvent } from '../../src/lib/model/site-winter.ts';

/** Pieces of random lakes, of what forms and the API would take. */

const thousandths = (low: number, high: number) =>
	fc.integer({ min: Math.round(low * 1000), max: Math.round(high * 1000) }).map((n) => n / 1000);
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 3 });

/** With everything in it that CSV and spreadsheets stumble over. */
const words = fc
	.array(
		fc.constantFrom(
			'Bay',
			'a',
			' ',
			',',
			'"',
			"'",
			'=1+1',
			'-',
			'@',
			';',
			'\n',
			'\t',
			'ä',
			'雪',
			'|'
		),
		{ minLength: 1, maxLength: 8 }
	)
	.map((parts) => parts.join('').trim());
export const name = words.filter((text) => text.length > 0);

export const facts = fc.record({
	name,
	latitude: thousandths(-66, 75),
	longitude: thousandths(-180, 180),
	elevation_m: orNull(thousandths(-400, 5000)),
	area_km2: orNull(thousandths(0, 3000)),
	meanDepth_m: orNull(thousandths(0, 200)),
	water: fc.constantFrom('lake', 'river', 'reservoir'),
	timeZone: fc.constantFrom('Europe/Helsinki', 'America/Chicago', 'Etc/UTC'),
	chartSet: fc.constantFrom('strict', 'common')
});

export const day = fc.integer({ min: 0, max: 180 }).map((n) => addDays('2026-11-01', n));

const value = (low: number, high: number) => orNull(thousandths(low, high));

/** Sorted, and of each day something is known. */
export const days = fc
	.uniqueArray(
		fc.record<DayValues>({
			on: day,
			air_degC: value(-40, 20),
			min_degC: value(-50, 10),
			max_degC: value(-30, 30),
			freezing_degCd: value(0, 50),
			thawing_degCd: value(0, 30),
			aboveFreezing_h: value(0, 24),
			precipitation_kg_m2: value(0, 80),
			snowfall_kg_m2: value(0, 80),
			landSnow_m: orNull(thousandths(0, 3)),
			wind_m_s: value(0, 40)
		}),
		{ selector: ({ on }) => on, maxLength: 40 }
	)
	.map((list) =>
		list
			.filter((each) => Object.entries(each).some(([key, known]) => key !== 'on' && known !== null))
			.toSorted((a, b) => (a.on < b.on ? -1 : 1))
	);

const length = (most_m: number) => orNull(thousandths(0, most_m));

const hole = fc
	.record({
		total_m: length(1.5),
		clear_m: length(1),
		white_m: length(1),
		snow_m: length(1),
		slush_m: length(0.5),
		freeboard_m: orNull(thousandths(-0.5, 0.5))
	})
	.filter((layers) => Object.values(layers).some((depth) => depth !== null));

export const readings = fc.array(
	fc.record({
		on: day,
		place: orNull(words),
		kind: fc.constantFrom('measured', 'wentThrough'),
		holes: fc.array(hole, { minLength: 1, maxLength: 3 }),
		core: orNull(fc.constantFrom('sound', 'wet', 'candled')),
		by: orNull(words),
		secondHand: fc.boolean(),
		remark: orNull(words)
	}),
	{ maxLength: 8 }
);

export const events = fc.array(
	fc.oneof(
		fc.record({ kind: fc.constant('reopened' as const), on: day, refrozeOn: fc.constant(null) }),
		fc.record({ kind: fc.constant('cleared' as const), on: day, snow_m: thousandths(0, 0.5) }),
		fc.record({
			kind: fc.constant('packed' as const),
			on: day,
			density_kg_m3: orNull(thousandths(100, 800))
		}),
		fc.record({ kind: fc.constant('pumped' as const), on: day, water_m: thousandths(0, 0.5) })
	) as fc.Arbitrary<SiteEvent>,
	{ maxLength: 4 }
);

export const winter = fc.record({
	freezeUpOn: fc.constant('2026-11-01'),
	freezeUpBy: orNull(fc.integer({ min: 0, max: 9 }).map((n) => addDays('2026-11-01', n))),
	iceOutOn: orNull(fc.integer({ min: 20, max: 240 }).map((n) => addDays('2026-11-01', n))),
	events
});
