import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { apiOf } from '../../support/api.ts';
import { drilledLake } from '../../support/drilled-lake.ts';

interface Day {
	on: string;
	total_m: { p10: number | null };
	bound: { total_m: number; effective_m: number } | null;
}

test('the table has the lower bounds that statuses go by, which can lie far under its quantiles', async () => {
	const { ctx, id } = await drilledLake();
	const thin = { on: '2027-02-10', kind: 'measured', holes: [{ total_m: 0.04 }] };
	await addReadings(ctx, id, 'main', [readingInput.parse(thin)]);
	const api = apiOf(ctx);
	const told = await (await api('GET', `/api/v1/lakes/${id}/forecast`)).json();
	const text = await (await api('GET', `/api/v1/lakes/${id}/forecast.csv`)).text();
	const rows: Record<string, string>[] = parse(text, { columns: true });
	const days = (told as { days: Day[] }).days;
	expect(rows.map(({ on }) => on)).toEqual(days.map(({ on }) => on));
	days.forEach(({ bound }, at) => {
		expect(Number(rows[at]?.['bound_total_m'])).toBeCloseTo(bound?.total_m ?? Number.NaN, 4);
		expect(Number(rows[at]?.['bound_effective_m'])).toBeCloseTo(
			bound?.effective_m ?? Number.NaN,
			4
		);
	});
	expect(Number(rows.at(-1)?.['bound_total_m'])).toBeLessThanOrEqual(0.04);
	expect(Number(rows.at(-1)?.['total_p10_m'])).toBeGreaterThan(0.2);
});
