import { expect, test } from 'vitest';
import type { SeriesDay } from '#lib/ui/charts/series.ts';
import {
	boundsSentence,
	columnSentence,
	degreeDaysSentence,
	growth,
	snowSentence,
	thicknessSentence,
	verdict
} from '#lib/ui/sentences.ts';
import { wordsIn } from '#lib/ui/words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

function ice(changes: Partial<SeriesDay> = {}): SeriesDay {
	return {
		on: '2027-01-14',
		air_degC: -8,
		fdd_degCd: 340,
		tdd_degCd: 3,
		clear_m: 0.22,
		white_m: 0.09,
		snow_m: 0.06,
		slush_m: 0,
		total_m: 0.31,
		totalLower_m: 0.25,
		effective_m: 0.265,
		effectiveLower_m: 0.205,
		...changes
	};
}

test('the answer says estimate, doubt and what the white ice takes off', () => {
	expect(verdict(ice(), METRIC)).toEqual({
		main: 'About 31 cm of ice, but one hole in ten may show less than 25.',
		rest: 'It counts as 26 cm of clear ice, since the 9 cm of white in it count half.'
	});
});

test('the answer follows the units', () => {
	expect(verdict(ice(), IMPERIAL).main).toBe(
		'About 12 in of ice, but one hole in ten may show less than 9.5.'
	);
});

test('a bound of nothing is said as such', () => {
	const young = ice({ total_m: 0.03, white_m: 0, clear_m: 0.03, totalLower_m: 0 });
	expect(verdict(young, METRIC)).toEqual({
		main: 'About 3 cm of ice, but one hole in ten may show hardly any.',
		rest: 'All of it is clear.'
	});
});

test('no ice is called open water, by this estimate', () => {
	expect(verdict(ice({ total_m: 0 }), METRIC)).toEqual({
		main: 'Open water by this estimate.',
		rest: null
	});
});

test('without a bound none is made up', () => {
	expect(verdict(ice({ totalLower_m: null, effectiveLower_m: null }), METRIC)).toEqual({
		main: 'About 31 cm of ice.',
		rest: 'It counts as 26 cm of clear ice, since the 9 cm of white in it count half.'
	});
});

test('an answer of another day names it', () => {
	expect(verdict(ice(), METRIC, { isPast: true }).main).toBe(
		'About 31 cm of ice on 14 Jan 2027, but one hole in ten may have shown less than 25.'
	);
	expect(verdict(ice({ total_m: 0 }), METRIC, { isPast: true }).main).toBe(
		'Open water by this estimate on 14 Jan 2027.'
	);
});

test('where every load is withheld the answer begins by that', () => {
	expect(verdict(ice(), METRIC, { isWithheld: true }).main).toBe(
		'Stay off, whatever it measures: about 31 cm of ice, but one hole in ten may show less than 25.'
	);
	expect(verdict(ice(), METRIC, { isWithheld: true, isPast: true }).main).toMatch(
		/^Stay off, whatever it measured: about 31 cm of ice on 14 Jan 2027, but /
	);
	expect(verdict(ice({ total_m: 0 }), METRIC, { isWithheld: true }).main).toMatch(/^Open water/);
});

test('what loads are held against is said for whom a bound is known', () => {
	expect(boundsSentence({ onFoot_m: 0.205, vehicles_m: 0.158 }, METRIC)).toBe(
		'Loads are held against its lower bound: 20 cm on foot, 15 cm for vehicles.'
	);
	expect(boundsSentence({ onFoot_m: 0.205, vehicles_m: null }, METRIC)).toBe(
		'Loads are held against its lower bound: 20 cm on foot.'
	);
	expect(boundsSentence({ onFoot_m: null, vehicles_m: null }, METRIC)).toBeNull();
});

test('growth, loss and standing still are told apart', () => {
	expect(growth(0.008, METRIC)).toBe('Growing 8 mm a day.');
	expect(growth(-0.012, METRIC)).toBe('Losing 12 mm a day.');
	expect(growth(0.0001, METRIC)).toBe('Neither growing nor thinning.');
	expect(growth(null, METRIC)).toBeNull();
});

test('the column is told from the top down, layer by layer', () => {
	expect(columnSentence(ice({ slush_m: 0.03 }), METRIC)).toBe(
		'From the top: 6 cm of snow, 3 cm of slush, 9 cm of white ice, 22 cm of clear ice.'
	);
	expect(columnSentence(ice({ snow_m: 0, white_m: 0, clear_m: 0 }), METRIC)).toBe('Open water.');
});

test('a winter that is open water so far has no peak', () => {
	const days = ['2026-12-01', '2026-12-02'].map((on) => ice({ on, total_m: 0 }));
	expect(thicknessSentence({ days, readings: [] }, METRIC)).toBe(
		'Open water to 2 Dec 2026; no reading.'
	);
});

test('where freeze-up is not known to the day, growth is told from the last open one', () => {
	const days = [0, 0, 0.02, 0.05].map((total_m, i) => ice({ on: `2026-12-0${i + 1}`, total_m }));
	expect(thicknessSentence({ days, readings: [] }, METRIC)).toBe(
		'From open water on 2 Dec 2026 to 5 cm on 4 Dec 2026; no reading.'
	);
});

test('the pictures are told in a sentence each', () => {
	const days = [
		ice({ on: '2026-12-01', total_m: 0, snow_m: 0 }),
		ice({ on: '2027-03-01', total_m: 0.5, snow_m: 0.12 }),
		ice({ on: '2027-03-20', total_m: 0.4, snow_m: 0 })
	];
	expect(thicknessSentence({ days, readings: [1] }, METRIC)).toBe(
		'From open water on 1 Dec 2026 to 40 cm on 20 Mar 2027, after a peak of 50 cm on 1 Mar 2027; 1 reading.'
	);
	expect(degreeDaysSentence(days, METRIC)).toBe(
		'340 °C·d of frost and 3 °C·d of thaw since freeze-up.'
	);
	expect(snowSentence(days, false, METRIC)).toBe(
		'No dry snow now, 12 cm at most on 1 Mar 2027. The snow is the usual of the place and date, not a record.'
	);
	expect(snowSentence(days.slice(0, 1), true, METRIC)).toBe('No snow on it so far.');
	expect(snowSentence([], true, METRIC)).toBe('No snow is known yet.');
});

test('the model’s own sentences are written in the reader’s units', () => {
	const words = wordsIn(IMPERIAL);
	expect(words.thickness(0.319)).toBe('12.5 in');
	expect(words.requirement(0.15)).toBe('6 in');
	expect(words.mass(100)).toBe('220 lb');
	expect(words.step(20)).toBe('36 °F');
	expect(words.degreeDays(15)).toBe('27 °F·d');
	expect(words.day('2027-01-12')).toBe('12 Jan');
	expect(wordsIn(METRIC).depth(0.046)).toBe('5 cm');
});
