import { addDays } from '#lib/model/calendar.ts';
import type { Forecast, ForecastDay, ForecastLoad, Quantiles } from '#lib/model/forecast.ts';
import type { ChartUse, LoadCase } from '#lib/model/load-case.ts';
import type { Outlook } from '#lib/model/outlook.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';

/** An invented lake, made by hand: it tells screens what to show without any model or database. */
export function inventedView(changes: Partial<LakeView> = {}): LakeView {
	return {
		lake: {
			id: 'pinder-lake',
			name: 'Pinder Lake',
			latitude: 47.4,
			longitude: -38.2,
			elevation_m: 310,
			area_km2: 2.6,
			meanDepth_m: 6.5,
			water: 'lake',
			timeZone: 'Etc/GMT+3',
			chartSet: 'strict',
			isInvented: true,
			today: '2027-02-12'
		},
		site: 'main',
		winter: '2026-27',
		winters: ['2026-27', '2025-26'],
		today: '2027-02-12',
		asOf: '2027-02-10',
		status: 'ok',
		record: {
			winter: '2026-27',
			freezeUpOn: '2026-11-27',
			freezeUpBy: null,
			iceOutOn: null,
			events: []
		},
		readings: READINGS,
		loads: (changes.outlook?.forecast.loads ?? LOADS).map(loadCase),
		shown: (changes.outlook?.forecast.loads ?? LOADS).map(({ id }) => id),
		isPresent: true,
		outlook: inventedOutlook(),
		weather: {
			from: '2026-10-01',
			to: '2027-02-09',
			days: 132,
			gapDays: 0,
			age_d: 3,
			hasPrecipitation: true
		},
		upkeep: {
			forecastIssuedAt: null,
			forecastAge_h: null,
			isForecastUsed: false,
			forecastTo: null,
			lastObservedAt: new Date('2027-02-10T03:00:00Z'),
			lastObservedAge_h: 57,
			attributions: [],
			sentences: []
		},
		...changes
	};
}

/** The load that an answer is about; what its name leaves open is a car. */
function loadCase({ id, name, mass_kg }: ForecastLoad): LoadCase {
	const use = USES[id] ?? 'car';
	const way = { parked_h: 0, wetCracks: 0, current: false, group: false } as const;
	return { id, name, mass_kg, use, ...way, trailer: null, count: 1, spacing_m: null };
}

const USES: Record<string, ChartUse> = {
	'on-foot': 'onFoot',
	group: 'group',
	snowmobile: 'snowmobile',
	atv: 'atv',
	pickup: 'lightTruck',
	shelter: 'truckWithShelter'
};

export function inventedOutlook(changes: Partial<Outlook> = {}): Outlook {
	return {
		forecast: inventedForecast(),
		today: null,
		growth_m_d: 0.0042,
		snowKnown: true,
		gapDays: 0,
		anchors: [
			{ on: '2026-12-20', readingIds: ['r1'], before_m: 0.152, after_m: 0.138 },
			{ on: '2027-01-17', readingIds: ['r2'], before_m: 0.262, after_m: 0.281 }
		],
		warmSpell: { state: 'none', since: null, text: null },
		floodsWithMoreSnow_m: 0.043,
		climate: null,
		...changes
	};
}

export function inventedForecast(changes: Partial<Forecast> = {}): Forecast {
	return {
		lake: 'pinder-lake',
		site: 'main',
		winter: '2026-27',
		asOf: '2027-02-10',
		days: Array.from({ length: 80 }, (_, index) => inventedDay(index)),
		loads: LOADS,
		iceOut: null,
		leaving: null,
		memoryText: null,
		cautions: [
			{
				code: 'flooding',
				text: '4 cm more snow floods the ice: slush that cannot be seen from above, and weeks until it is frozen.'
			},
			{
				code: 'open-part-only',
				text: 'This is the open part of the lake. A current, an inlet, a ridge, a landing or reeds can leave a fraction of it.'
			},
			{ code: 'hole', text: 'A drilled hole decides, on the day and on the way.' },
			{ code: 'authority', text: 'Orders and removal dates of the local authority come first.' }
		],
		...changes
	};
}

/** Day `index` after freeze-up; the last four lie past the weather. */
export function inventedDay(index: number): ForecastDay {
	const isKnown = index < 76;
	const fdd = index * 6.1 + 9 * Math.sin(index / 5);
	const total = Math.max(0, 0.0205 * Math.sqrt(fdd) - 0.02) * (index > 50 ? 0.985 : 1);
	const white = index < 24 ? 0 : Math.min(0.085, (index - 24) * 0.004);
	const snow = index < 12 ? 0 : 0.03 + 0.05 * Math.max(0, Math.sin(index / 7));
	const lower = Math.max(0, total - 1.28 * Math.max(0.025, 0.19 * total));
	const all = (p50: number, p10: number | null = null): Quantiles => ({
		p05: null,
		p10: isKnown ? p10 : null,
		p50: isKnown ? p50 : null,
		p90: null,
		p95: null
	});
	return {
		on: addDays('2026-11-27', index),
		source: isKnown ? 'observed' : 'gap',
		air_degC: isKnown ? -6.1 + 5 * Math.sin(index / 5) : null,
		fdd_degCd: isKnown ? fdd : null,
		tdd_degCd: isKnown ? Math.max(0, (index - 30) * 0.31) : null,
		clear_m: all(total - white),
		white_m: all(white),
		snow_m: all(snow),
		slush_m: all(index > 68 ? 0.02 : 0),
		total_m: all(total, lower),
		effective_m: all(total - white / 2, lower - white / 2),
		bound: isKnown ? { total_m: lower, effective_m: Math.max(0, lower - white / 2) } : null
	};
}

export function inventedLoad(changes: Partial<ForecastLoad> = {}): ForecastLoad {
	return {
		id: 'on-foot',
		name: 'On foot, alone',
		mass_kg: 100,
		counted_kg: changes.mass_kg ?? 100,
		spacing_m: 15,
		required_m: 0.15,
		requiredOther_m: 0.1,
		parts: null,
		afloat: null,
		bound_m: 0.272,
		rules: [
			{
				code: 'chart',
				text: 'The strict charts ask 15 cm of new clear ice for one person on foot',
				source: 'Canadian Red Cross; New Hampshire Fish and Game, 2008 to 2023'
			}
		],
		status: 'reached',
		reason: 'Three holes on 9 February support it, and it still clears the requirement.',
		expectedFrom: null,
		likelyFrom: null,
		until: null,
		isEndedBySnow: false,
		days: [],
		...changes
	};
}

export function hole(changes: Partial<Hole> = {}): Hole {
	const unknown = { slush_m: null, freeboard_m: null, snow_m: null, clear_m: null, white_m: null };
	return { total_m: null, ...unknown, ...changes };
}

export function inventedReading(changes: Partial<Reading> = {}): Reading {
	return {
		id: 'r1',
		on: '2026-12-20',
		place: 'narrow bay',
		kind: 'measured',
		holes: [
			hole({ total_m: 0.13 }),
			hole({ total_m: 0.14 }),
			hole({ clear_m: 0.12, white_m: 0.025 })
		],
		core: 'sound',
		by: null,
		secondHand: false,
		remark: null,
		...changes
	};
}

const READINGS: Reading[] = [
	inventedReading(),
	inventedReading({
		id: 'r2',
		on: '2027-01-17',
		place: 'basin',
		holes: [0.27, 0.28, 0.3, 0.29, 0.265].map((total_m) => hole({ total_m }))
	}),
	inventedReading({
		id: 'r3',
		on: '2027-01-29',
		place: 'inlet',
		kind: 'wentThrough',
		holes: [hole({ total_m: 0.06 })]
	}),
	inventedReading({ id: 'r4', on: '2027-02-09', kind: 'atLeast', holes: [hole({ total_m: 0.3 })] })
];

const LOADS: ForecastLoad[] = [
	inventedLoad(),
	inventedLoad({
		id: 'group',
		name: 'Group, spread out',
		mass_kg: 400,
		required_m: 0.2,
		requiredOther_m: 0.15
	}),
	inventedLoad({
		id: 'snowmobile',
		name: 'Snowmobile',
		mass_kg: 400,
		required_m: 0.25,
		requiredOther_m: 0.18,
		status: 'expectedNotDrilled',
		reason: 'The estimate clears it. Five holes along the way, none under 25 cm, would support it.'
	}),
	inventedLoad({
		id: 'atv',
		name: 'ATV or side-by-side',
		mass_kg: 900,
		required_m: 0.25,
		requiredOther_m: 0.2,
		status: 'withheld',
		reason: 'Above freezing for 26 hours: stay off until it has refrozen and a new hole is drilled.'
	}),
	inventedLoad({
		id: 'car',
		name: 'Car',
		mass_kg: 1800,
		required_m: 0.4,
		requiredOther_m: 0.3,
		status: 'notYet',
		reason: 'Short by 19 cm at the lower bound.'
	}),
	inventedLoad({
		id: 'pickup',
		name: 'Pickup',
		mass_kg: 2900,
		required_m: 0.4,
		requiredOther_m: 0.38,
		status: 'notYet',
		reason: 'Short by 19 cm at the lower bound.'
	}),
	inventedLoad({
		id: 'shelter',
		name: 'Truck with shelter, parked',
		mass_kg: 6000,
		required_m: null,
		requiredOther_m: 0.83,
		status: 'askAnEngineer',
		reason: 'Above 5 tonnes, or parked with a shelter, the charts end.'
	})
];
