import { expect, test } from 'vitest';
import { degreeDaysChart } from '#lib/ui/charts/degree-days.ts';
import type { Palette } from '#lib/ui/charts/palette.ts';
import { readingPoints } from '#lib/ui/charts/reading-points.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { snowChart } from '#lib/ui/charts/snow.ts';
import { thicknessChart, top, type ThicknessInput } from '#lib/ui/charts/thickness.ts';
import { timeSpan } from '#lib/ui/charts/time-axis.ts';
import { inventedForecast, inventedOutlook, inventedView } from '../../support/invented-view.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
const PALETTE: Palette = {
	sheet: 'sheet',
	ink: 'ink',
	soft: 'soft',
	rule: 'rule',
	line: 'line',
	mark: 'mark',
	clear: 'clear',
	white: 'white',
	deep: 'deep',
	hatch: 'hatch',
	font: 'sans-serif'
};

const days = knownDays(inventedForecast().days);
const span = timeSpan('2026-11-27', '2027-02-10');

interface Drawn {
	label: string;
	data: { x: string; y: number; says?: string }[];
}

function input(changes: Partial<ThicknessInput> = {}): ThicknessInput {
	return {
		days,
		readings: readingPoints(inventedView().readings, '2027-02-10'),
		anchors: inventedOutlook().anchors,
		loads: inventedForecast().loads.map((load) => ({ ...load, mark: load.name })),
		asOf: '2027-02-10',
		span,
		units: METRIC,
		...changes
	};
}

function drawn(changes: Partial<ThicknessInput> = {}): Drawn[] {
	return thicknessChart(input(changes), PALETTE).data.datasets as unknown as Drawn[];
}

function marks(changes: Partial<ThicknessInput> = {}): Record<string, Record<string, unknown>> {
	const { plugins } = thicknessChart(input(changes), PALETTE).options ?? {};
	return (plugins as { annotation: { annotations: Record<string, Record<string, unknown>> } })
		.annotation.annotations;
}

function set(label: string, changes: Partial<ThicknessInput> = {}): Drawn {
	const found = drawn(changes).find((each) => each.label === label);
	if (!found) throw new Error(`no ${label} in the chart`);
	return found;
}

test('clear and white ice are stacked to the estimate, and snow is not in it', () => {
	const [clear, white, estimate] = [set('clear'), set('white'), set('estimate')];
	const last = days.length - 1;
	expect(clear.data[last]?.y).toBeLessThan(white.data[last]?.y ?? 0);
	expect(white.data[last]?.y).toBeCloseTo(estimate.data[last]?.y ?? 0, 6);
	expect(drawn().map(({ label }) => label)).not.toContain('snow');
});

test('nothing is drawn past the last known day', () => {
	const last = drawn().map(
		({ data }) =>
			data
				.map(({ x }) => x)
				.toSorted()
				.at(-1) ?? ''
	);
	expect(last.toSorted().at(-1)).toBe('2027-02-10');
});

test('the bounds lie under the estimate', () => {
	const estimate = set('estimate').data;
	for (const label of ['at least', 'counts as at least']) {
		const bounds = set(label).data;
		expect(bounds.map(({ x }) => x)).toEqual(estimate.map(({ x }) => x));
		bounds.forEach(({ y }, index) => expect(y).toBeLessThanOrEqual(estimate[index]?.y ?? 0));
	}
});

test('each reading is a point, each of its holes a dot', () => {
	expect(set('reading').data.map(({ says }) => says)).toEqual([
		'read 13, 14, 14 cm at narrow bay',
		'read 27, 28, 30, 29, 26 cm at basin',
		'went through at inlet',
		'at least 30 cm at narrow bay'
	]);
	expect(set('hole').data).toHaveLength(3 + 5 + 1 + 1);
});

test('what the loads ask for is a line each, in the warm colour', () => {
	const lines = Object.entries(marks()).filter(([name]) => name.startsWith('asks'));
	expect(lines.map(([, line]) => line['yMin'])).toEqual([15, 20, 25, 40]);
	for (const [, line] of lines) expect(line['borderColor']).toBe('mark');
});

test('a reading that moved the estimate is marked from before to after', () => {
	const anchor = marks()['anchor 2027-01-17'];
	expect(anchor).toMatchObject({ xMin: '2027-01-17', xMax: '2027-01-17' });
	expect(anchor?.['yMin']).toBeCloseTo(26.2, 9);
	expect(anchor?.['yMax']).toBeCloseTo(28.1, 9);
});

test('the day asked for is marked', () => {
	expect(marks()['as of']).toMatchObject({ xMin: '2027-02-10', label: { content: '10 Feb' } });
});

test('the scale ends on a whole number above the next load, in either unit', () => {
	expect(top(input())).toBe(50);
	expect(top(input({ units: IMPERIAL }))).toBe(20);
	expect(top(input({ days: days.slice(0, 1), readings: [] }))).toBe(20);
	expect(top(input({ days: [], readings: [], loads: [] }))).toBe(20);
});

test('inches are drawn as inches', () => {
	const [cm, inches] = [
		set('estimate').data.at(-1),
		set('estimate', { units: IMPERIAL }).data.at(-1)
	];
	expect(inches?.y).toBeCloseTo((cm?.y ?? 0) / 2.54, 6);
	expect(inches?.says).toBe('estimate 16 in');
});

test('all pictures share one time axis and one width of scale', () => {
	const configurations = [
		thicknessChart(input(), PALETTE),
		degreeDaysChart({ days, span, units: METRIC }, PALETTE),
		snowChart({ days, span, units: METRIC }, PALETTE)
	];
	for (const { options } of configurations) {
		expect(options?.scales?.['x']).toMatchObject({ type: 'time', min: span.from, max: span.to });
		const scale = { width: 0 };
		const y = options?.scales?.['y'] as unknown as { afterFit: (scale: { width: number }) => void };
		y.afterFit(scale);
		expect(scale.width).toBe(46);
	}
});

test('the scale names its steps as they are, and thousands apart', () => {
	const { options } = degreeDaysChart({ days, span, units: METRIC }, PALETTE);
	const y = options?.scales?.['y'] as unknown as { ticks: { callback: (value: number) => string } };
	const named = [0, 10, 0.1 + 0.2, 2.5, 1250].map((value) => y.ticks.callback(value));
	expect(named).toEqual(['0', '10', '0.3', '2.5', '1,250']);
});

test('a young winter still gets a month of axis', () => {
	expect(timeSpan('2026-11-27', '2026-11-28').to).toBe('2026-12-27');
});

test('frost and thaw are two lines, snow a bar a day', () => {
	const frost = degreeDaysChart({ days, span, units: IMPERIAL }, PALETTE).data.datasets;
	expect(frost.map(({ label }) => label)).toEqual(['frost', 'thaw']);
	const snow = snowChart({ days, span, units: METRIC }, PALETTE).data.datasets[0]?.data;
	expect(snow).toHaveLength(days.length);
	expect(snow?.at(-1)).toMatchObject({ x: '2027-02-10', says: 'snow 3 cm' });
});

test('frost, thaw and snow to come are told apart from what was, with the day between marked', () => {
	const known = days.slice(0, 60);
	const ahead = { days: known, coming: days.slice(60), span, units: METRIC };
	const frost = degreeDaysChart(ahead, PALETTE);
	const labels = frost.data.datasets.map(({ label }) => label);
	expect(labels).toEqual(['frost', 'thaw', 'frost to come', 'thaw to come']);
	const toCome = frost.data.datasets[2] as unknown as Drawn;
	expect(toCome.data[0]).toMatchObject({ x: known.at(-1)?.on });
	expect(toCome.data).toHaveLength(days.length - 60 + 1);
	for (const { options } of [frost, snowChart(ahead, PALETTE)]) {
		const plugins = options?.plugins as unknown as { annotation: object };
		expect(plugins.annotation).toMatchObject({
			annotations: { 'as of': { xMin: known.at(-1)?.on } }
		});
	}
});
