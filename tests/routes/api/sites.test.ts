import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function lakeApi() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const call = apiOf(ctx);
	const base = `/api/v1/lakes/${id}`;
	return {
		base,
		call: async (method: string, path: string, body?: unknown) => {
			const response = await call(method, `${base}${path}`, body === undefined ? {} : { body });
			const text = await response.text();
			return {
				status: response.status,
				headers: response.headers,
				answer: text && JSON.parse(text)
			};
		}
	};
}

test('sites are made, listed, changed and deleted', async () => {
	const { base, call } = await lakeApi();
	const made = await call('POST', '/sites', { name: 'East bay', kind: 'bay' });
	expect(made).toMatchObject({
		status: 201,
		answer: { id: 'east-bay', name: 'East bay', kind: 'bay', parent: null }
	});
	expect(made.headers.get('location')).toBe(`${base}/sites/east-bay`);
	const track = { name: 'Track', kind: 'track', parent: 'east-bay' };
	expect((await call('POST', '/sites', track)).status).toBe(201);
	const renamed = await call('PATCH', '/sites/track', { name: 'Long track' });
	expect(renamed.answer).toEqual({ id: 'track', ...track, name: 'Long track' });
	expect((await call('GET', '/sites/track')).answer).toEqual(renamed.answer);
	const { answer } = await call('GET', '/sites');
	expect(answer.map(({ id }: { id: string }) => id)).toEqual(['main', 'east-bay', 'track']);
	expect((await call('DELETE', '/sites/track')).status).toBe(204);
	expect((await call('GET', '/sites/track')).status).toBe(404);
});

test.each([
	['POST', '/sites', { name: 'Main', kind: 'bay' }, 400, 'name'],
	['POST', '/sites', { name: 'A', kind: 'track' }, 400, 'parent'],
	['POST', '/sites', { name: '', kind: 'bay' }, 400, 'name'],
	['POST', '/sites', { name: 'A', kind: 'lagoon' }, 400, 'kind'],
	['PATCH', '/sites/main', { kind: 'track', parent: 'main' }, 400, 'parent'],
	['DELETE', '/sites/main', undefined, 409, '']
])('%s %s %j is refused with the field', async (method, path, body, status, field) => {
	const { call } = await lakeApi();
	const refused = await call(method, path, body);
	expect(refused).toMatchObject({ status, answer: { issues: [{ field }] } });
	expect(refused.headers.get('content-type')).toBe('application/problem+json');
});

test('a position is kept apart from its reading, and forgotten on demand', async () => {
	const { call } = await lakeApi();
	const reading = { on: '2027-02-01', kind: 'measured', holes: [{ total_m: 0.2 }] };
	const { answer } = await call('POST', '/readings', reading);
	const path = `/readings/${answer.ids[0]}/position`;
	expect((await call('GET', path)).answer).toEqual({ position: null });
	const position = { latitude: 47.41, longitude: -38.21 };
	expect((await call('PUT', path, position)).answer).toEqual({ position });
	expect((await call('GET', path)).answer).toEqual({ position });
	expect(JSON.stringify((await call('GET', '/readings')).answer)).not.toContain('38.21');
	expect((await call('PUT', path, { latitude: 47 })).status).toBe(400);
	expect((await call('DELETE', path)).status).toBe(204);
	expect((await call('GET', path)).answer).toEqual({ position: null });
	expect((await call('GET', '/readings/r-none/position')).status).toBe(404);
});
