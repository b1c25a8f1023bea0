import { expect, test } from 'vitest';
import type { AnyChart } from '#lib/ui/charts/attach.svelte.ts';
import { bandDays, withBand } from '#lib/ui/charts/band.ts';
import type { Palette } from '#lib/ui/charts/palette.ts';
import { borders } from '#lib/ui/charts/regions.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const PALETTE: Palette = {
	sheet: 'sheet',
	ink: 'ink',
	soft: 'soft',
	rule: 'rule',
	line: 'line',
	mark: 'mark',
	clear: 'clear',
	white: 'white',
	deep: 'rgb(1, 2, 3)',
	hatch: 'hatch',
	font: 'sans-serif'
};

const future = inventedFuture();
const days = bandDays(future.days);
const band = {
	days,
	borders: borders(future.days, { asOf: future.asOf, today: future.asOf, climate: 'past winters' }),
	units: METRIC
};

interface Drawn {
	label: string;
	data: { x: string; y: number; says: string }[];
	fill?: string;
	backgroundColor?: string;
	segment?: { borderDash: (context: object) => number[] | undefined };
}

function chart(): AnyChart {
	const annotations = { kept: { type: 'line' as const, yMin: 15 } };
	return {
		type: 'line',
		data: {
			datasets: [
				{ label: 'clear', data: [] },
				{ label: 'estimate', data: [] }
			]
		},
		options: { animation: false, plugins: { annotation: { clip: false, annotations } } }
	};
}

function sets(): Drawn[] {
	return withBand(chart(), band, PALETTE).data.datasets as unknown as Drawn[];
}

test('the band lies between what one hole in twenty shows and what nineteen show', () => {
	const [lower, upper] = sets().slice(2);
	expect([lower?.label, upper?.label]).toEqual(['5 %', '95 %']);
	expect(upper).toMatchObject({ fill: '-1', backgroundColor: 'rgba(1, 2, 3, 0.17)' });
	lower?.data.forEach(({ y }, index) => expect(y).toBeLessThanOrEqual(upper?.data[index]?.y ?? -1));
	expect(upper?.data[60]?.says).toBe('nine holes in ten: 32 to 41 cm');
});

test('days without a band are left out, and the rest know what they go by', () => {
	const none = { p05: null, p10: null, p50: null, p90: null, p95: null };
	const known = future.days.slice(58, 72);
	const unknown = known
		.slice(0, 1)
		.map((day) => ({ ...day, source: 'gap' as const, total_m: none }));
	const found = bandDays([...known, ...unknown]);
	expect(found).toHaveLength(14);
	expect(found.map(({ region }) => region).filter((region) => region === 'forecast')).toHaveLength(
		10
	);
});

test('the estimate is dashed by what it goes by, in any time zone', () => {
	const estimate = sets().find(({ label }) => label === 'estimate');
	const dashOn = (on: string) => {
		const [year = 0, month = 1, day = 1] = on.split('-').map(Number);
		const x = new Date(year, month - 1, day).getTime();
		return estimate?.segment?.borderDash({ p1: { parsed: { x } } });
	};
	expect(dashOn('2027-01-20')).toBeUndefined();
	expect(dashOn('2027-01-30')).toEqual([7, 4]);
	expect(dashOn('2027-03-01')).toEqual([2, 4]);
	expect(estimate?.segment?.borderDash({ p1: {} })).toBeUndefined();
	expect(sets()[0]?.segment).toBeUndefined();
});

test('borders are lines with words, beside what the chart had', () => {
	const { options } = withBand(chart(), band, PALETTE);
	const plugins = options?.plugins as { annotation: { annotations: Record<string, object> } };
	const { annotations } = plugins.annotation;
	expect(Object.keys(annotations)).toEqual(['kept', 'border forecast', 'border climate']);
	expect(annotations['border climate']).toMatchObject({
		xMin: '2027-02-05',
		label: { content: 'past winters from here' }
	});
	expect(options?.animation).toBe(false);
});
