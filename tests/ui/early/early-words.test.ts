import { expect, test } from 'vitest';
import { barsDrawing } from '#lib/ui/early/bars.ts';
import { inTenAtLeast, inTenAtMost } from '#lib/ui/early/chance-words.ts';
import { freezingHeadline, ifOpen, skimRows } from '#lib/ui/early/freezing-words.ts';
import {
	asksWords,
	isHeldBack,
	frostSentence,
	ratesSentence,
	snowSentence,
	weekday,
	weekendWords,
	whenSentence
} from '#lib/ui/early/growth-words.ts';
import { holeSentence, testHeadline } from '#lib/ui/early/test-words.ts';
import { windSentences } from '#lib/ui/early/wind-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
const NOW = '2026-11-25';

test('chances for the ice are rounded down, chances against it up', () => {
	expect([0, 0.09, 0.1, 0.39, 0.7, 1].map(inTenAtLeast)).toEqual([
		'under 1 in 10',
		'under 1 in 10',
		'1 in 10',
		'3 in 10',
		'7 in 10',
		'over 9 in 10'
	]);
	expect([0, 0.05, 0.31, 0.3, 0.91, 1].map(inTenAtMost)).toEqual([
		'1 in 10',
		'1 in 10',
		'4 in 10',
		'3 in 10',
		'over 9 in 10',
		'over 9 in 10'
	]);
});

const freezing = {
	chances: [
		{ on: NOW, pFrozen: 0.2 },
		{ on: '2026-11-28', pFrozen: 0.4 },
		{ on: '2026-12-02', pFrozen: 0.6 }
	]
};

test('a lake that is seen open has the rest of its chance before it', () => {
	expect(ifOpen(freezing, NOW, '2026-12-02')).toBeCloseTo(0.5, 9);
	expect(ifOpen(freezing, NOW, '2027-01-01')).toBeNull();
	expect(ifOpen({ chances: [{ on: NOW, pFrozen: 1 }] }, NOW, NOW)).toBe(1);
	expect(skimRows(freezing, NOW)).toEqual([
		{ on: '2026-11-28', text: '2 in 10' },
		{ on: '2026-12-02', text: '5 in 10' }
	]);
});

test('before freeze-up the headline gives the week’s chance, or sends somebody to look', () => {
	expect(freezingHeadline(freezing, NOW)).toBe(
		'No freeze-up is recorded yet. Chance of a first skim by 2 Dec: roughly 5 in 10.'
	);
	const late = { chances: [{ on: NOW, pFrozen: 0.75 }] };
	expect(freezingHeadline(late, NOW)).toContain('may have frozen over by now (7 in 10, roughly)');
	expect(freezingHeadline(null, NOW)).toBe('No freeze-up is recorded yet.');
});

test('frost still needed is rounded up, what the forecast brings down', () => {
	const load = { frostToGo_degCd: { estimate: 31.2, bound: 40.7 } };
	expect(frostSentence(load, { to: '2026-12-04', frost_degCd: 27.9 }, METRIC)).toBe(
		'It takes 32 °C·d more frost by the estimate, 41 °C·d by the lower bound; the forecast brings 27 °C·d by 4 Dec.'
	);
	expect(frostSentence({ frostToGo_degCd: { estimate: 0, bound: 5 } }, null, METRIC)).toBe(
		'The estimate has it; the lower bound needs 5 °C·d more frost.'
	);
	expect(frostSentence({ frostToGo_degCd: { estimate: 0, bound: 0 } }, null, METRIC)).toMatch(
		/^No more frost/
	);
	expect(frostSentence({ frostToGo_degCd: null }, null, METRIC)).toBeNull();
});

test('days are named by even chance and nine in ten, and not without known snow', () => {
	const told = { now: NOW, snowKnown: true };
	const load = { base_m: 0.15, expectedFrom: '2026-11-20', likelyFrom: '2026-12-01' };
	expect(whenSentence(load, told)).toBe('As likely as not since 20 Nov, nine in ten from 1 Dec.');
	expect(whenSentence({ ...load, likelyFrom: null }, told)).toContain('nine in ten on no day told');
	expect(whenSentence({ ...load, expectedFrom: null }, told)).toContain('on no day told');
	expect(whenSentence(load, { ...told, snowKnown: false })).toContain('No day is named');
	expect(whenSentence({ ...load, base_m: null }, told)).toContain('ice engineer');
});

test('a weekend day has its weekday, its chance and its warm spell', () => {
	expect(weekday('2026-11-28')).toBe('Sat 28 Nov');
	expect(weekendWords({ on: '2026-11-28', pThickness: 0.47, pThaw: 0.31 })).toBe(
		'Sat 28 Nov: 4 in 10, a warm spell 4 in 10'
	);
	expect(weekendWords({ on: '2026-11-29', pThickness: null, pThaw: 0 })).toBe(
		'Sun 29 Nov: not told'
	);
});

test('snow is told by what it would do, in the reader’s units', () => {
	const rates = {
		air_degC: -8,
		rows: [
			{ moreSnow_m: 0, growth_m_d: 0.0091 },
			{ moreSnow_m: 0.05, growth_m_d: 0.0042 },
			{ moreSnow_m: 0.1, growth_m_d: 0.003 }
		]
	};
	expect(ratesSentence(rates, METRIC)).toBe(
		'At −8 °C, the mean of the days to come, the sheet grows 9 mm a day; under 5 cm of new snow 4 mm a day, under 10 cm of new snow 3 mm a day.'
	);
	expect(ratesSentence(rates, IMPERIAL)).toContain('2 in of new snow 0.2 in a day');
	expect(ratesSentence(null, METRIC)).toBeNull();
	const forecast = { to: '2026-12-04', frost_degCd: 20 };
	const pair = (bound_m: number, p50_m: number) => ({ p10_m: bound_m + 0.02, p50_m, bound_m });
	const snow = {
		on: '2026-12-05',
		fall_kg_m2: 12.4,
		with: pair(0.05, 0.08),
		without: pair(0.07, 0.11)
	};
	expect(snowSentence({ snow, forecast }, METRIC)).toContain(
		'With it 8 cm of ice are estimated for 5 Dec, lower bound 5 cm; without it they would be 11 cm and 7 cm.'
	);
	expect(snowSentence({ snow: null, forecast }, METRIC)).toContain('hardly any snow');
	expect(snowSentence({ snow: null, forecast: null }, METRIC)).toContain('No forecast counts');
});

test('what a load asks is that of today, and no frost is told while a rule of the day asks more', () => {
	const load = { status: 'notYet', required_m: 0.3, base_m: 0.15 } as const;
	expect(asksWords(load, METRIC)).toBe(
		', asks 30 cm now; the days are for the 15 cm it asks otherwise'
	);
	expect(isHeldBack(load)).toBe(true);
	expect(asksWords({ ...load, required_m: 0.15 }, METRIC)).toBe(', asks 15 cm');
	expect(isHeldBack({ ...load, required_m: 0.15 })).toBe(false);
	expect(isHeldBack({ ...load, required_m: 0.15, status: 'withheld' })).toBe(true);
	expect(asksWords({ required_m: null, base_m: null }, METRIC)).toBe('');
});

test('a test is told from its first day, as a trip and never as a permission', () => {
	const test = { on: '2026-12-05', isThawInTheWay: false, lowest_m: 0.1, asked_m: 0.15 };
	const say = (change: object, isWithheld = false, snowKnown = true) =>
		testHeadline({ test: { ...test, ...change }, snowKnown }, { now: NOW, isWithheld }, METRIC);
	expect(say({})).toContain('worth the trip from Sat 5 Dec');
	expect(say({ on: NOW })).toContain('as likely as not a hole shows 10 cm');
	expect(say({ on: null })).toContain('No trip is worth it yet');
	expect(say({ on: null, isThawInTheWay: true })).toContain('so is a warm spell');
	expect(say({ on: NOW }, true)).toMatch(/^Stay off/);
	expect(say({ on: NOW }, false, false)).toContain('snow on the ice is not known');
	expect(holeSentence(test, METRIC)).toContain('ask 15 cm of one person on foot');
	expect(holeSentence({ ...test, asked_m: 0.1 }, METRIC)).not.toContain('charts chosen');
});

test('wind over ice that is thick enough is left out; unknown wind is said', () => {
	const day = (on: string, source: 'observed' | 'forecast', pThin: number | null) => ({
		on,
		source,
		pThin,
		wind_m_s: 7.6
	});
	const days = [day('2026-11-20', 'observed', 0.95), day('2026-11-27', 'forecast', 0.05)];
	const wind = { isForecast: true, isObserved: true, days };
	const said = windSentences({ wind, phase: 'growing' }, 0.1, METRIC);
	expect(said).toHaveLength(1);
	expect(said[0]).toContain('20 Nov 8 m/s in the mean, under 10 cm with a chance of over 9 in 10');
	const unknown = { isForecast: false, isObserved: false, days: [] };
	expect(windSentences({ wind: unknown, phase: 'growing' }, 0.1, METRIC)[0]).toContain(
		'nor any that has blown'
	);
	const calm = { isForecast: true, isObserved: false, days: [] };
	expect(windSentences({ wind: calm, phase: 'beforeFreezeUp' }, 0.1, IMPERIAL)[0]).toContain(
		'13 mph or more'
	);
});

test('bars stand a day apart on one scale, texts of close marks do not overlap', () => {
	const days = [0, 1, 2, 3].map((index) => ({
		on: `2026-11-2${6 + index}`,
		low: 0.02,
		high: 0.1,
		middle: 0.05,
		isForecast: index < 2
	}));
	const lines = [
		{ at: 0.1, text: '10 cm' },
		{ at: 0.105, text: '11 cm' },
		{ at: 0.5, text: 'off the picture' }
	];
	const drawing = barsDrawing({ days, top: 0.2, lines, weekend: ['2026-11-28', '2026-12-05'] });
	expect(drawing.bars.map(({ x }) => Math.round(x))).toEqual([18, 40, 61, 82]);
	const [bar] = drawing.bars;
	expect(bar?.y).toBeCloseTo(drawing.foot - 90, 9);
	expect(bar?.height).toBeCloseTo(72, 9);
	expect(drawing.lines.map(({ text }) => text)).toEqual(['10 cm', '11 cm']);
	expect((drawing.lines[0]?.textY ?? 0) - (drawing.lines[1]?.textY ?? 0)).toBeGreaterThanOrEqual(
		15
	);
	expect(drawing.weekend).toEqual([{ on: '2026-11-28', x: 57.5, width: 21.25 }]);
	expect(drawing.forecastEnds).toBe(57.5);
});
