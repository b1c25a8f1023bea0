import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import charts from '../../data/charts/minimums.json';
import { LIMITS } from '../../src/routes/method/limits.ts';
import { STEPS } from '../../src/routes/method/steps.ts';
import MethodPage from '../../src/routes/method/+page.svelte';

function shown(measure: 'metric' | 'imperial'): string {
	const { minimums, published } = charts;
	const props = { data: { units: { measure, mass: 'kg' }, minimums, published }, params: {} };
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

test('no step or limit calls ice by a permission', () => {
	expect(shown('metric')).not.toMatch(/\b(un)?safe/i);
});
