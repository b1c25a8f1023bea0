import { expect, test } from 'vitest';
import type { ImportReport } from '../../../src/lib/server/services/import-weather.ts';
import { storedWeather } from '../../../src/lib/server/services/stored-weather.ts';
import { POST } from '../../../src/routes/lakes/[lake]/weather/import/+server.ts';
import { countedRows } from '../../../src/routes/lakes/[lake]/weather/import/counted-rows.ts';
import type { Looked } from '../../../src/routes/lakes/[lake]/weather/look-at.ts';
import { readLines } from '../../../src/routes/lakes/[lake]/weather/send-file.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/weather/+page.server.ts';
import { formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const DAYS = ['2027-01-01,23,1.5', '2027-01-02,20,0', '2027-01-04,14,0'];
const DAILY = ['date,temp_f,precip_mm', ...DAYS].join('\n');

async function lake() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	return { context, params: { lake: id } };
}

function csv(text: string, name = 'station.csv'): File {
	return new File([text], name, { type: 'text/csv' });
}

function stream(text: string, query = '') {
	return (at: { context: object; params: object }) =>
		POST({
			params: at.params,
			url: new URL(`http://localhost/import?${query}`),
			locals: { context: at.context },
			request: new Request('http://localhost/import', { method: 'POST', body: text })
		} as never);
}

test('looking at a file shows the guess for each column and stores nothing', async () => {
	const at = await lake();
	const { status, data } = await outcomeOf(
		actions['look'],
		formEvent({ ...at, fields: { file: csv(DAILY) } })
	);
	const { preview, corrections, name } = data['looked'] as Looked;
	expect([status, name, corrections]).toEqual([200, 'station.csv', []]);
	expect(preview.columns.map(({ role, unit }) => [role, unit])).toEqual([
		['date', 'Y-m-d'],
		['air', '°F'],
		['precipitation', 'mm']
	]);
	expect(await storedWeather(at.context, at.params.lake)).toEqual([]);
});

test('corrections of the form are taken up, a unit of another role is not', async () => {
	const at = await lake();
	const fields = {
		file: csv(DAILY),
		'role.1': 'air',
		'unit.1': '°C',
		'role.2': 'ignore',
		'unit.2': 'mm',
		'role.0': 'date',
		'unit.0': 'mm'
	};
	const { data } = await outcomeOf(actions['look'], formEvent({ ...at, fields }));
	const { preview, corrections } = data['looked'] as Looked;
	expect(corrections.map(({ index, role, unit }) => [index, role, unit])).toEqual([
		[1, 'air', '°C'],
		[2, 'ignore', null]
	]);
	expect(preview.columns[1]).toMatchObject({ role: 'air', unit: '°C' });
});

test('without script the whole file is stored and the page lists it with its gap', async () => {
	const at = await lake();
	const { status, data } = await outcomeOf(
		actions['import'],
		formEvent({ ...at, fields: { file: csv(DAILY) } })
	);
	expect(status).toBe(200);
	expect(data['report']).toMatchObject({ status: 'stored', accepted: 3, gapDays: 1 });
	expect(await load(formEvent(at))).toMatchObject({
		stored: [
			{
				winter: '2026-27',
				from: '2027-01-01',
				to: '2027-01-04',
				days: 3,
				gapDays: 1,
				snowUnknownDays: 0
			}
		]
	});
});

test.each([
	['no file', {}, 'refusal'],
	['an empty file', { file: csv('') }, 'refusal'],
	['a web page', { file: csv('<html><body>sign in</body></html>') }, 'looked'],
	['a header alone', { file: csv('date,temp_c\n') }, 'looked']
])('%s is refused in words and stores nothing', async (_, fields, answer) => {
	const at = await lake();
	const { status, data } = await outcomeOf(actions['import'], formEvent({ ...at, fields }));
	expect(status).toBe(400);
	expect(Object.keys(data)).toEqual([answer]);
	const looked = data['looked'] as Looked | undefined;
	expect(looked?.preview.problems[0]?.reason ?? data['refusal']).toMatch(/[a-z ]{10}/);
	expect(await storedWeather(at.context, at.params.lake)).toEqual([]);
});

test('with script the file is answered in lines: rows read, then the report', async () => {
	const at = await lake();
	const response = await stream(`${DAILY}\n`)(at);
	expect(response.headers.get('content-type')).toBe('application/x-ndjson');
	const lines = readLines(await response.text());
	expect(lines.slice(0, -1)).toEqual([{ rows: 4, bytes: DAILY.length + 1 }]);
	expect(lines.at(-1)).toMatchObject({ report: { status: 'stored', accepted: 3 } });
});

test('corrections go with the streamed file', async () => {
	const at = await lake();
	const looked = await outcomeOf(
		actions['look'],
		formEvent({ ...at, fields: { file: csv(DAILY), 'role.2': 'ignore' } })
	);
	const { corrections } = looked.data['looked'] as Looked;
	const query = new URLSearchParams({ columns: JSON.stringify(corrections) }).toString();
	const last = readLines(await (await stream(`${DAILY}\n`, query)(at)).text()).at(-1);
	const { report } = last as { report: ImportReport };
	expect(report.columns[2]?.role).toBe('ignore');
	expect(await storedWeather(at.context, at.params.lake)).toMatchObject([{ snowUnknownDays: 3 }]);
});

test('a lake that is not there and corrections that are none are refused before the file is read', async () => {
	const at = await lake();
	const nowhere = { ...at, params: { lake: 'nowhere' } };
	await expect(stream(DAILY)(nowhere)).rejects.toMatchObject({ status: 404 });
	await expect(stream(DAILY, 'columns=5')(at)).rejects.toMatchObject({ status: 400 });
});

test('rows are told by lines and bytes, and the bytes pass unchanged', async () => {
	const chunk = new TextEncoder().encode('2027-01-01,1\n'.repeat(10_000));
	async function* file() {
		yield chunk;
		yield chunk;
	}
	const told: [number, number][] = [];
	let size = 0;
	for await (const bytes of countedRows(file(), (rows, read) => told.push([rows, read]))) {
		size += bytes.length;
	}
	expect(size).toBe(260_000);
	expect(told).toEqual([
		[20_000, 260_000],
		[20_000, 260_000]
	]);
});

test('a line that has not come whole yet is left for later', () => {
	expect(readLines('{"rows":1,"bytes":9}\n{"rows":2,"by')).toEqual([{ rows: 1, bytes: 9 }]);
	expect(readLines('')).toEqual([]);
});
