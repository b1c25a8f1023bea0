import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { apiAddresses, apiOf, type Call } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const HOLES = [{ total_m: 0.3 }];

beforeEach(() => {
	vi.spyOn(process.stderr, 'write').mockReturnValue(true);
});

afterEach(() => {
	vi.mocked(process.stderr.write).mockRestore();
});

async function problemOf(method: string, address: string, call?: Call) {
	const ctx = await freshContext();
	await inventedLake(ctx, { name: 'Pond' });
	const response = await apiOf(ctx)(method, address, call);
	expect(response.headers.get('content-type')).toBe('application/problem+json');
	const problem = (await response.json()) as Record<string, unknown>;
	expect(problem).toMatchObject({ type: 'about:blank', status: response.status });
	expect(problem['instance']).toBe(address.split('?')[0]);
	return problem as { status: number; detail: string; issues?: { field: string }[] };
}

test.each([
	['GET', '/api', 'Nothing is at /api'],
	['GET', '/api/v1/lake', 'Nothing is at'],
	['POST', '/api/v2/lakes', 'Nothing is at'],
	['GET', '/api/v1/lakes/nowhere', 'No lake "nowhere"'],
	['GET', '/api/v1/lakes/nowhere/readings', 'No lake "nowhere"'],
	['GET', '/api/v1/lakes/nowhere/forecast', 'No lake "nowhere"'],
	['GET', '/api/v1/lakes/pond/readings?site=bay', 'No site "bay" of lake "pond"'],
	['GET', '/api/v1/lakes/pond/forecast?site=bay', 'No site "bay" of lake "pond"'],
	['DELETE', '/api/v1/lakes/pond/readings/r-1', 'No reading "r-1" of lake "pond"']
])('%s %s is not found and says what', async (method, address, detail) => {
	const problem = await problemOf(method, address);
	expect(problem.status).toBe(404);
	expect(problem.detail).toContain(detail);
});

test('every address names the methods that it takes', async () => {
	const call = apiOf(await freshContext());
	for (const { address, methods } of apiAddresses) {
		const response = await call('PROPFIND', address.replaceAll(/\{\w+\}/g, 'x'));
		expect(response.status).toBe(405);
		const allowed = response.headers.get('allow')?.split(', ');
		expect(allowed?.filter((name) => name !== 'HEAD').toSorted()).toEqual(methods.toSorted());
	}
});

test.each([
	['/api/v1/lakes', { name: 'X' }, ['latitude', 'longitude', 'water']],
	['/api/v1/lakes', [], ['']],
	['/api/v1/lakes/pond/readings', { on: '2027-02-30', kind: 'measured', holes: HOLES }, ['on']],
	[
		'/api/v1/lakes/pond/readings',
		{ on: '2027-02-03', kind: 'measured', holes: [{ total_m: 31 }] },
		['holes.0.total_m']
	]
])('POST %s of %j names the fields', async (address, body, fields) => {
	const problem = await problemOf('POST', address, { body });
	expect(problem.status).toBe(400);
	expect(problem.issues?.map(({ field }) => field)).toEqual(fields);
});

test('an array of readings names the one that is wrong', async () => {
	const good = { on: '2027-02-03', kind: 'measured', holes: HOLES };
	const body = [good, { ...good, kind: 'guessed' }];
	const { issues } = await problemOf('POST', '/api/v1/lakes/pond/readings', { body });
	expect(issues?.map(({ field }) => field)).toEqual(['1.kind']);
});

test.each([
	['a winter that is none', 'GET', '/api/v1/lakes/pond/winters/2026-28'],
	['a day that is none', 'GET', '/api/v1/lakes/pond/forecast?asOf=2027-02-30'],
	['a mistyped parameter', 'GET', '/api/v1/lakes/pond/forecast?asof=2027-02-10'],
	['a day outside the winter', 'GET', '/api/v1/lakes/pond/forecast?winter=2026-27&asOf=2026-01-10'],
	['an end before the day', 'GET', '/api/v1/lakes/pond/forecast?asOf=2027-02-10&until=2027-02-09'],
	['corrections that are no JSON', 'POST', '/api/v1/lakes/pond/weather?columns=air']
])('%s is refused', async (_, method, address) => {
	const call = method === 'POST' ? { text: 'date,tmean_c\n2027-01-01,-3\n' } : {};
	const problem = await problemOf(method, address, call);
	expect(problem.status).toBe(400);
	expect(problem.issues ?? problem.detail).not.toEqual([]);
});

test.each([
	['broken JSON', '{"name": ', 'application/json', 400],
	['JSON nested deep', '['.repeat(50_000), 'application/json', 400],
	['JSON of five megabytes', `"${'x'.repeat(5_000_000)}"`, 'application/json', 413],
	['a form', 'name=Pond', 'application/x-www-form-urlencoded', 415],
	['nothing', '', 'application/json', 400]
])('%s is refused', async (_, text, type, status) => {
	const call = { text, headers: { 'content-type': type } };
	expect((await problemOf('POST', '/api/v1/lakes', call)).status).toBe(status);
});

test('brackets inside a string are no nesting', async () => {
	const call = apiOf(await freshContext());
	const name = `${'['.repeat(50)}"\\`;
	const body = { name, latitude: 1, longitude: 1, water: 'lake' };
	expect((await call('POST', '/api/v1/lakes', { body })).status).toBe(201);
});

test('JSON where a CSV file is due is refused before anything is read', async () => {
	const problem = await problemOf('POST', '/api/v1/lakes/pond/weather', { body: [] });
	expect(problem).toMatchObject({ status: 415, detail: expect.stringContaining('text/csv') });
});

test('a surprise is logged under the id that the client is given', async () => {
	const ctx = await freshContext();
	await ctx.db.destroy();
	const response = await apiOf(ctx)('GET', '/api/v1/lakes');
	expect(response.status).toBe(500);
	const { detail } = (await response.json()) as { detail: string };
	const id = /as (\w{8})$/.exec(detail)?.[1] ?? 'no id';
	const logged = vi.mocked(process.stderr.write).mock.calls.map(([line]) => String(line));
	expect(logged.join('')).toContain(`[${id}] GET /api/v1/lakes: `);
	expect(detail).not.toContain('destroyed');
});
