import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import references from '../../src/lib/model/references.md?raw';
import charts from '../../data/charts/minimums.json';
import { FITTED, parametersFor } from '../../src/lib/model/parameters.ts';
import { slushFrost_degCd } from '../../src/lib/model/leaving/slush-outlook.ts';
import { CLEAR_ICE_W_mK } from '../../src/lib/model/constants.ts';
import { currentExchange_W_m2K } from '../../src/lib/model/water-heat.ts';
import { LIMITS } from '../../src/routes/method/limits.ts';
import { CHAPTERS } from '../../src/routes/method/chapters.ts';
import { referencesIn } from '../../src/routes/method/references.ts';
import { equationParts } from '../../src/routes/method/step.ts';
import MethodPage from '../../src/routes/method/+page.svelte';

const STEPS = CHAPTERS.flatMap(({ steps }) => steps);

function shown(measure: 'metric' | 'imperial'): string {
	const { minimums, published } = charts;
	const data = {
		units: { measure, mass: 'kg' },
		minimums,
		published,
		references: referencesIn(references)
	};
	const props = { data, params: {} };
	return render(MethodPage, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

test('limits come before features', () => {
	const page = shown('metric');
	expect(page.indexOf(LIMITS[0] ?? '-')).toBeGreaterThan(-1);
	expect(page.indexOf(LIMITS.at(-1) ?? '-')).toBeLessThan(page.indexOf(STEPS[0]?.title ?? ''));
});

test('every step names where it comes from', () => {
	for (const { source } of STEPS)
		expect(source).toMatch(/\[(R|R2|T|C|M-)|[Oo]ur choice|not a published/);
});

test('every row that decides is shown with whose figure it is', () => {
	const page = shown('metric');
	for (const { governedBy } of charts.minimums) expect(page).toContain(governedBy);
	for (const { body } of charts.published) expect(page).toContain(body);
});

test('what is asked for follows the units', () => {
	expect(shown('metric')).toContain('On foot, one person 15 10');
	expect(shown('imperial')).toContain('On foot, one person 6 4');
});

test('slush is told to freeze as the model freezes it', () => {
	const lake = { latitude: 60, elevation_m: 0, area_km2: 0.3, meanDepth_m: 4 };
	const days = (snow_m: number): number => {
		const snow = { snow_m, snowDensity_kg_m3: FITTED.settledSnow_kg_m3 };
		return slushFrost_degCd(0.1, snow, parametersFor(lake as never)) / 10;
	};
	expect(shown('metric')).toContain(
		'two days at −10 °C where they lie bare, and two to three weeks under 10 cm of settled snow'
	);
	expect(Math.round(days(0))).toBe(2);
	expect(days(0.1)).toBeGreaterThan(14);
	expect(days(0.1)).toBeLessThan(21);
});

test('what a current leaves is what its law and that of conduction leave', () => {
	expect(shown('metric')).toContain(
		'half a metre a second at 0.1 °C holds the ice over two metres of water to about 16 cm at −10 °C'
	);
	const [water_degC, air_degC, depth_m, film_W_m2K] = [0.1, -10, 2, 20];
	const heat_W_m2 = currentExchange_W_m2K(0.5, depth_m) * water_degC;
	const most_m = CLEAR_ICE_W_mK * (-air_degC / heat_W_m2 - 1 / film_W_m2K);
	expect(Math.round(100 * most_m)).toBe(16);
});

test('what is asked for names all that the model holds a load against', () => {
	const page = shown('metric');
	for (const words of ['keeps its top above the water', 'Above 5 tonnes', 'of five spots'])
		expect(page).toContain(words);
	expect(page).toContain('colder by more than 30 °C than what lies on both sides');
	expect(page).toContain('snow sinks what stands on it');
});

test('no step or limit calls ice by a permission', () => {
	expect(shown('metric')).not.toMatch(/\b(un)?safe/i);
});

test('every part of the app that has rules of its own has a chapter, which the list leads to', () => {
	const { body } = render(MethodPage, {
		props: {
			data: { units: { measure: 'metric', mass: 'kg' }, ...charts, references: [] },
			params: {}
		} as never
	});
	const links = [...body.matchAll(/href="#([\w-]+)"/g)].map(([, id]) => id);
	const headings = [...body.matchAll(/<h2 id="([\w-]+)"/g)].map(([, id]) => id);
	expect(links).toEqual(headings);
	expect(headings).toEqual(
		expect.arrayContaining(['early', 'coming-off', 'places', 'doubt', 'loads', 'thaw'])
	);
});

test('all sources of the model are listed, with their titles set apart', () => {
	const listed = referencesIn(references);
	expect(listed).toHaveLength(references.match(/^- \[/gm)?.length ?? 0);
	expect(listed.find(({ key }) => key === 'Gold1971')).toMatchObject({
		title: 'Use of ice covers for transportation'
	});
	for (const { before, title, after } of listed) expect(before + title + after).not.toMatch(/_/);
});

test('equations are read out as they stand, with what is low and high in them', () => {
	expect(equationParts('h_{clear}^{2} + 1')).toEqual([
		{ text: 'h', at: 'line' },
		{ text: 'clear', at: 'low' },
		{ text: '2', at: 'high' },
		{ text: ' + 1', at: 'line' }
	]);
	for (const each of STEPS.flatMap(({ equations }) => equations ?? []))
		for (const { text } of equationParts(each)) expect(text).not.toMatch(/[{}_^]/);
});

test('no index or power is left as it is typed', () => {
	expect(shown('metric')).not.toMatch(/[_^]\{|\{[^ ]*\}/);
});
