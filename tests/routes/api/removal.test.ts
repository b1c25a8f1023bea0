import { expect, test } from 'vitest';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import type { ForecastAnswer } from '../../../src/lib/server/services/forecast.ts';
import { forecast as forecastAnswer } from '../../../src/routes/api/v1/openapi.json/answers.ts';
import { apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const WINTER = '2026-27';

async function lake() {
	const ctx = await freshContext('2027-02-10T12:00:00Z');
	const { id } = await inventedLake(ctx);
	const call = apiOf(ctx);
	const address = `/api/v1/lakes/${id}/winters/${WINTER}/removal`;
	const put = (body: object) => call('PUT', address, { body });
	return { ctx, id, call, put, get: async () => (await call('GET', address)).json() };
}

test('before anybody types one there is no removal date and no lead', async () => {
	const { get } = await lake();
	expect(await get()).toEqual({ removalOn: null, leads: [] });
});

test('a removal date and leads are stored, and set anew', async () => {
	const { put, get } = await lake();
	const record = { removalOn: '2027-03-15', leads: [{ load: 'half-ton', lead_d: 3 }] };
	const response = await put(record);
	expect(response.status).toBe(200);
	expect(await response.json()).toEqual(record);
	expect(await get()).toEqual(record);
	await put({ removalOn: null });
	expect(await get()).toEqual({ removalOn: null, leads: [] });
});

test.each([
	['a day of another winter', { removalOn: '2028-03-15' }, 'removalOn'],
	['a load that is not there', { leads: [{ load: 'boat', lead_d: 3 }] }, 'leads.0.load'],
	['a lead of half a day', { leads: [{ load: 'car', lead_d: 0.5 }] }, 'leads.0.lead_d'],
	['a lead of a year', { leads: [{ load: 'car', lead_d: 365 }] }, 'leads.0.lead_d'],
	['a load twice', { leads: [1, 2].map((lead_d) => ({ load: 'car', lead_d })) }, 'leads.1.load']
])('%s is refused by its field', async (_, body, field) => {
	const { put, get } = await lake();
	const response = await put(body);
	expect(response.status).toBe(400);
	const problem = (await response.json()) as { issues: { field: string }[] };
	expect(problem.issues.map((issue) => issue.field)).toEqual([field]);
	expect(await get()).toEqual({ removalOn: null, leads: [] });
});

test('the forecast says by when loads have to be off, the removal date before all', async () => {
	const { ctx, id, call, put } = await lake();
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 130)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...record });
	const ask = async (): Promise<ForecastAnswer> =>
		(await call('GET', `/api/v1/lakes/${id}/forecast?until=2027-06-20`)).json();
	const before = await ask();
	expect(forecastAnswer.parse(before)).toEqual(before);
	const offOf = ({ leaving }: ForecastAnswer) =>
		leaving?.loads.find((load) => load.id === 'on-foot')?.offBy;
	expect(offOf(before)).toMatchObject({ reason: expect.stringMatching(/thickness|warmSpell/) });
	expect(offOf(before)?.on).toMatch(/^2027-0[345]/);
	expect(before.leaving?.texts.lost).toMatch(/^No ice has been lost/);
	await put({ removalOn: '2027-02-20', leads: [{ load: 'on-foot', lead_d: 2 }] });
	const after = await ask();
	expect(after.leaving?.removalOn).toBe('2027-02-20');
	expect(offOf(after)).toEqual({
		on: '2027-02-20',
		reason: 'removalDate',
		beginOn: '2027-02-18',
		lead_d: 2
	});
});

test('once the ice is gone nothing has to be off it', async () => {
	const { ctx, id, call } = await lake();
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 130)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20', iceOutOn: '2027-02-05' });
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...record });
	const response = await call('GET', `/api/v1/lakes/${id}/forecast`);
	expect(await response.json()).toMatchObject({ leaving: null });
});
