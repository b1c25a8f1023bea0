import { expect, test } from 'vitest';
import { borders, regionsOf } from '#lib/ui/charts/regions.ts';
import { stripData, type StripData } from '#lib/ui/charts/strip-data.ts';
import { runs } from '#lib/ui/charts/strip-runs.ts';
import { stripTable } from '#lib/ui/charts/strip-table.ts';
import { winterStrip, type StripDrawing } from '#lib/ui/charts/winter-strip.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const FACTS = { today: '2027-01-26', snowKnown: true, isOpen: false, climate: 'past winters' };

function strip(changes: Parameters<typeof inventedFuture>[0] = {}): StripData {
	const data = stripData(inventedFuture(changes), FACTS);
	if (!data) throw new Error('the invented winter has days');
	return data;
}

function drawing(changes: Partial<StripData> = {}): StripDrawing {
	const readings = [
		{ on: '2026-12-20', kind: 'measured' as const },
		{ on: '2026-10-01', kind: 'measured' as const }
	];
	return winterStrip({ strip: { ...strip(), ...changes }, readings, units: METRIC });
}

function row(id: string) {
	const found = drawing().rows.find((each) => each.id === id);
	if (!found) throw new Error(`no row ${id}`);
	return found;
}

test('each load has a row, named with what it asks for', () => {
	expect(drawing().rows.map(({ name, asks }) => `${name}, ${asks}`)).toEqual([
		'On foot, alone, asks 15 cm',
		'Group, spread out, asks 20 cm',
		'Snowmobile, asks 25 cm',
		'Car, asks 38 cm',
		'Pickup, asks 48 cm',
		'Truck with shelter, parked, ask an engineer'
	]);
});

test('the ink follows the chance and never goes above it', () => {
	const data = strip();
	const snowmobile = data.loads.find(({ id }) => id === 'snowmobile');
	const count = snowmobile?.met_percent.length ?? 0;
	for (const { x, width, opacity } of row('snowmobile').inks) {
		const first = Math.round((x / 100) * count);
		const length = Math.round((width / 100) * count);
		const chances = snowmobile?.met_percent.slice(first, first + length) ?? [];
		expect(chances).toHaveLength(length);
		for (const met of chances) {
			expect(opacity * 100).toBeLessThanOrEqual((met ?? -1) + 1e-9);
			expect(opacity * 100).toBeGreaterThan((met ?? 200) - 5);
		}
	}
});

test('warm spells are hatched although the ice is thick enough, and the dates stay', () => {
	const { hatched, marks } = row('snowmobile');
	expect(hatched).toHaveLength(2);
	expect(hatched[0]?.x).toBeCloseTo((66 / 165) * 100, 2);
	expect(hatched[0]?.width).toBeCloseTo((3 / 165) * 100, 2);
	expect(marks.map(({ kind }) => kind)).toEqual(['expected', 'likely', 'until']);
});

test('the mark of the last day stands at its end', () => {
	const { until, from } = { ...strip().loads[2], from: strip().from };
	const days = (Date.parse(until ?? '') - Date.parse(from)) / 86_400_000 + 1;
	expect(row('snowmobile').marks[2]?.x).toBeCloseTo((days / 165) * 100, 2);
});

test('a load for an engineer is blank from end to end', () => {
	expect(row('shelter')).toMatchObject({ inks: [], marks: [], blank: [{ x: 0, width: 100 }] });
});

test('readings of other days than these are left out', () => {
	const { readings } = drawing();
	expect(readings).toHaveLength(1);
	expect(readings[0]?.x).toBeCloseTo(((23 + 0.5) / 165) * 100, 2);
});

test('today, the forecast and past winters are marked with words', () => {
	expect(drawing().borders).toMatchObject([
		{ text: 'today, 26 Jan', kind: 'today' },
		{ text: 'forecast from here', kind: 'forecast' },
		{ text: 'past winters from here', kind: 'climate' }
	]);
	const [today, forecast, climate] = drawing().borders;
	expect(forecast?.x).toBe(today?.x);
	expect(climate?.x).toBeGreaterThan(today?.x ?? 100);
});

test('labels point away from the nearer end', () => {
	for (const { x, anchor } of drawing().borders) expect(anchor).toBe(x < 50 ? 'start' : 'end');
});

test('months are named unless hardly any of one is in the strip', () => {
	expect(drawing().months.map(({ text }) => text)).toEqual([
		'Dec',
		'Jan',
		'Feb',
		'Mar',
		'Apr',
		null
	]);
});

test('everything lies within the picture', () => {
	const { rows, foot, height } = drawing();
	for (const { inks, hatched, y } of rows) {
		for (const { x, width } of [...inks, ...hatched]) expect(x + width).toBeLessThan(100.01);
		expect(y).toBeLessThan(foot);
	}
	expect(foot).toBeLessThan(height);
});

test('a chance is rounded down, a warm spell up', () => {
	const future = inventedFuture();
	const [load] = future.loads;
	const days = load?.days.map((day) => ({ ...day, pThickness: 0.8999, pThaw: 0.4901 })) ?? [];
	const data = strip({ loads: load ? [{ ...load, days }] : [] });
	expect(data.loads[0]?.met_percent[0]).toBe(89);
	expect(data.loads[0]?.thaw_percent[0]).toBe(50);
});

test('the table says each week what the strip shows', () => {
	const { columns, rows } = stripTable(strip());
	expect(columns).toHaveLength(7);
	expect(rows.at(-1)?.cells[0]).toBe('10 May');
	expect(rows.at(-1)?.cells[1]).toBe('8 %, warm spell');
	expect(rows.at(-1)?.cells[6]).toBe('not known, warm spell');
	expect(rows.length).toBe(Math.ceil(165 / 7));
});

test('a winter without days has no strip', () => {
	expect(stripData(inventedFuture({ days: [] }), FACTS)).toBeNull();
});

test('unreported days count as what they lie between, and as unknown at the end', () => {
	const days = (['observed', 'gap', 'forecast', 'gap', 'climate', 'gap', 'gap'] as const).map(
		(source, index) => ({ on: `2027-01-0${index + 1}`, source })
	);
	expect(regionsOf(days)).toEqual([
		'observed',
		'observed',
		'forecast',
		'forecast',
		'climate',
		'unknown',
		'unknown'
	]);
	expect(borders(days, { ...FACTS, asOf: '2027-01-02' }).map(({ on, text }) => [on, text])).toEqual(
		[
			['2027-01-02', '2 Jan'],
			['2027-01-02', 'forecast from here'],
			['2027-01-05', 'past winters from here'],
			['2027-01-06', 'no weather from here']
		]
	);
});

test('neighbours of one value make a run', () => {
	expect(runs([])).toEqual([]);
	expect(runs(['a', 'a', 'b', 'a'])).toEqual([
		{ value: 'a', from: 0, length: 2 },
		{ value: 'b', from: 2, length: 1 },
		{ value: 'a', from: 3, length: 1 }
	]);
});

test('of open water too it is told that a rule of the day raised what is asked: the dates are not for it', () => {
	const future = inventedFuture();
	const rule = { code: 'warmSpell', text: 'doubled', source: 'invented' };
	const loads = future.loads.map((load) => ({ ...load, rules: [...load.rules, rule] }));
	const data = stripData({ ...future, loads }, { ...FACTS, isOpen: true });
	expect(data?.loads.map(({ dayRule }) => dayRule)).toEqual(loads.map(() => 'warmSpell'));
});
