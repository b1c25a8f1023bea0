import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import type { LoadStatus } from '#lib/model/forecast.ts';
import { columnDrawing } from '#lib/ui/charts/column-drawing.ts';
import ChartCanvas from '#lib/ui/components/ChartCanvas.svelte';
import IceColumn from '#lib/ui/components/IceColumn.svelte';
import LakeName from '#lib/ui/components/LakeName.svelte';
import NumbersTable from '#lib/ui/components/NumbersTable.svelte';
import StatusMark from '#lib/ui/components/StatusMark.svelte';
import UnitsForm from '#lib/ui/components/UnitsForm.svelte';
import { STATUS_WORDS } from '#lib/ui/status-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

function lakeName(isInvented: boolean): string {
	return render(LakeName, { props: { name: 'Pinder Lake', isInvented } }).body;
}

test('every status has a shape of its own and words of its own', () => {
	const statuses = Object.keys(STATUS_WORDS) as LoadStatus[];
	const shapes = statuses.map((status) => render(StatusMark, { props: { status } }).body);
	expect(new Set(shapes).size).toBe(5);
	expect(new Set(Object.values(STATUS_WORDS)).size).toBe(5);
});

test('an invented lake says so beside its name', () => {
	expect(lakeName(true)).toContain('(invented)');
	expect(lakeName(false)).not.toContain('invented');
});

test('the units form works without JavaScript and tells which unit is on', () => {
	const { body } = render(UnitsForm, { props: { units: METRIC, back: '/lakes/a?winter=2026-27' } });
	expect(body).toContain('method="POST" action="/units"');
	expect(body).toContain('name="back" value="/lakes/a?winter=2026-27"');
	expect(body).toMatch(/value="metric" aria-pressed="true"/);
	expect(body).toMatch(/value="imperial" aria-pressed="false"/);
});

test('the drawn column carries its sentence, its layers and its marks', () => {
	const drawing = columnDrawing({
		snow_m: 0.06,
		slush_m: 0,
		white_m: 0.09,
		clear_m: 0.22,
		totalLower_m: 0.25,
		counts: [
			{ who: 'on foot', at_m: 0.205 },
			{ who: 'for vehicles', at_m: 0.158 }
		],
		loads: [{ mark: 'on foot', required_m: 0.15 }],
		units: METRIC
	});
	const { body } = render(IceColumn, { props: { drawing, label: 'The column.', unit: 'cm' } });
	expect(body).toContain('role="img" aria-label="The column."');
	for (const words of ['snow 6 cm', 'white 9 cm', 'clear 22 cm', '15 cm on foot']) {
		expect(body).toContain(words);
	}
	expect(body).toContain('counts as 20 cm on foot');
	expect(body).toContain('counts as 15 cm for vehicles');
	expect(body).not.toContain('NaN');
});

test('open water is drawn as open water', () => {
	const drawing = columnDrawing({
		snow_m: 0,
		slush_m: 0,
		white_m: 0,
		clear_m: 0,
		totalLower_m: 0,
		counts: [{ who: 'on foot', at_m: 0 }],
		loads: [],
		units: METRIC
	});
	const { body } = render(IceColumn, { props: { drawing, label: 'Open water.', unit: 'cm' } });
	expect(body).toContain('open water');
	expect(body).not.toContain('NaN');
});

test('a chart has its sentence, and says what to read without JavaScript', () => {
	const { body } = render(ChartCanvas, {
		props: {
			label: 'Thickness grew.',
			height_px: 200,
			configure: () => ({ type: 'line' as const, data: { datasets: [] } })
		}
	});
	expect(body).toContain('role="img" aria-label="Thickness grew."');
	expect(body).toMatch(/<noscript>.*needs JavaScript.*<\/noscript>/s);
});

test('a table of numbers names its rows and columns', () => {
	const { body } = render(NumbersTable, {
		props: {
			title: 'Week by week',
			caption: 'Ice by week',
			columns: ['Day', 'Ice'],
			rows: [{ id: 'a', cells: ['1 Jan', '20 cm'] }]
		}
	});
	expect(body).toMatch(/<th scope="col"[^>]*>Ice<\/th>/);
	expect(body).toMatch(/<th scope="row"[^>]*>1 Jan<\/th>/);
	expect(body).toMatch(/<td[^>]*>20 cm<\/td>/);
});
