import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { hostile } from '../../support/hostile-texts.ts';

const LAKE = { latitude: 47.4, longitude: -38.2, water: 'lake' };

async function lake() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	return { id, path: `/api/v1/lakes/${id}`, api: apiOf(context) };
}

test.each(hostile)(
	'%s stays the text that it is, as name, place and remark',
	async (_, typed, stored) => {
		const { api, path } = await lake();
		const made = await api('POST', '/api/v1/lakes', { body: { ...LAKE, name: typed } });
		expect(made.status).toBe(201);
		const { id, name } = (await made.json()) as { id: string; name: string };
		expect(name).toBe(stored);
		expect(id).toMatch(/^[a-z0-9-]+$/);
		expect(({} as Record<string, unknown>)['ran']).toBeUndefined();

		const reading = {
			on: '2027-01-20',
			kind: 'measured',
			holes: [{ total_m: 0.3 }],
			place: typed,
			remark: typed,
			by: typed
		};
		expect((await api('POST', `${path}/readings`, { body: reading })).status).toBe(201);
		const [first] = (await (await api('GET', `${path}/readings`)).json()) as { place: string }[];
		expect(first?.place).toBe(stored);
		const spot = { name: typed, kind: 'current', latitude: 47.4, longitude: -38.2, remark: typed };
		expect((await api('POST', `${path}/weak-spots`, { body: spot })).status).toBe(201);
		const gpx = await (await api('GET', `${path}/places.gpx`)).text();
		expect(gpx).not.toMatch(/<script|<img|<svg|<!--/);
		const csv = await (await api('GET', `${path}/forecast.csv`)).headers;
		expect(csv.get('content-disposition')).toMatch(/^attachment; filename="[\w.-]+"$/);
	}
);

test('a name of nothing but what cannot be seen is no name', async () => {
	const { api } = await lake();
	for (const name of ['\u0000', '\u202e\u2066', ' \t\n', '']) {
		const made = await api('POST', '/api/v1/lakes', { body: { ...LAKE, name } });
		expect(made.status).toBe(400);
	}
	const long = await api('POST', '/api/v1/lakes', { body: { ...LAKE, name: 'x'.repeat(121) } });
	expect(long.status).toBe(400);
});

test.each([
	'..%2f..%2fetc%2fpasswd',
	'%2e%2e',
	'%00',
	'pinder%00lake',
	'__proto__',
	'constructor',
	'%252e%252e',
	"'%20OR%20'1'='1",
	'%F0%9F%A7%8A',
	'a'.repeat(2000)
])('%s is no lake, no reading and no backup', async (name) => {
	const { api, path } = await lake();
	const addresses = [
		`/api/v1/lakes/${name}`,
		`/api/v1/lakes/${name}/forecast`,
		`/api/v1/lakes/${name}/winters.zip`,
		`${path}/weak-spots/${name}`,
		`${path}/loads/${name}`,
		`${path}/sites/${name}`,
		`/api/v1/sources/${name}`,
		`/api/v1/sources/${name}/export`
	];
	for (const address of addresses) expect((await api('GET', address)).status, address).toBe(404);
	expect((await api('DELETE', `${path}/readings/${name}`)).status).toBe(404);
	// In memory there are no backups at all.
	expect([404, 409]).toContain((await api('GET', `/api/v1/backups/${name}`)).status);
});

test.each([
	['a parameter twice', '?asOf=2027-01-01&asOf=2027-02-01'],
	['a parameter of the prototype', '?__proto__=1'],
	['a parameter that is not known', '?site[]=main'],
	['a day that is none', '?asOf=2027-02-30'],
	['a year without end', `?asOf=${'9'.repeat(5000)}-01-01`],
	['no number', '?winter=NaN-aN']
])('%s in the query is refused', async (_, query) => {
	const { api, path } = await lake();
	const answer = await api('GET', `${path}/forecast${query}`);
	expect(answer.status).toBe(400);
	expect(answer.headers.get('content-type')).toBe('application/problem+json');
});

const deep = (open: string, close: string, levels: number) =>
	open.repeat(levels) + close.repeat(levels);

test.each([
	['a number without end', `{"name":"a","latitude":1e999,"longitude":0,"water":"lake"}`],
	['no number', `{"name":"a","latitude":NaN,"longitude":0,"water":"lake"}`],
	['a list for a number', `{"name":"a","latitude":[1],"longitude":0,"water":"lake"}`],
	['lists in lists', deep('[', ']', 100_000)],
	['objects in objects', `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`],
	['a prototype', `{"__proto__":{"name":"a"},"latitude":1,"longitude":0,"water":"lake"}`],
	[
		'a prototype beside the rest',
		`{"name":"a","latitude":1,"longitude":0,"water":"lake","__proto__":{"isAdmin":true}}`
	],
	[
		'a constructor',
		`{"name":"a","latitude":1,"longitude":0,"water":"lake","constructor":{"prototype":{"x":1}}}`
	],
	['nothing', 'null'],
	['half of it', '{"name":"a"'],
	['a byte order mark', '\ufeff{"name":"a","latitude":1,"longitude":0,"water":"lake"}'],
	[
		'digits without end',
		`{"name":"a","latitude":${'9'.repeat(100_000)},"longitude":0,"water":"lake"}`
	]
])('a body with %s makes no lake', async (_, text) => {
	const { api } = await lake();
	const begun_ms = performance.now();
	const headers = { 'content-type': 'application/json' };
	const answer = await api('POST', '/api/v1/lakes', { text, headers });
	expect(answer.status).toBe(400);
	expect(performance.now() - begun_ms).toBeLessThan(1000);
	expect(Object.keys(Object.prototype)).toEqual([]);
	expect(((await (await api('GET', '/api/v1/lakes')).json()) as unknown[]).length).toBe(1);
});

test('of a key that is there twice the last counts, and the rest is checked as ever', async () => {
	const { api } = await lake();
	const headers = { 'content-type': 'application/json' };
	const text = '{"name":"a","name":"b","latitude":1,"longitude":0,"water":"lake"}';
	const made = await api('POST', '/api/v1/lakes', { text, headers });
	expect(((await made.json()) as { name: string }).name).toBe('b');
});
