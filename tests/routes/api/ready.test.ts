import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { apiOf } from '../../support/api.ts';
import { freshContext } from '../../support/fresh-context.ts';

test('with its schema up to date the app is ready', async () => {
	const response = await apiOf(await freshContext())('GET', '/api/v1/ready');
	expect(response.status).toBe(200);
	expect(await response.json()).toEqual({ status: 'ready' });
});

test('with a change of the schema to come it is not, and says which', async () => {
	const ctx = await freshContext();
	await sql`DELETE FROM kysely_migration WHERE name = '0002-second-hand'`.execute(ctx.db);
	const response = await apiOf(ctx)('GET', '/api/v1/ready');
	expect(response.status).toBe(503);
	expect(await response.json()).toMatchObject({
		detail: expect.stringContaining('0002-second-hand is to come')
	});
});

test('without a database it is not, but alive', async () => {
	const ctx = await freshContext();
	await ctx.db.destroy();
	const response = await apiOf(ctx)('GET', '/api/v1/ready');
	expect(response.status).toBe(503);
	expect(response.headers.get('content-type')).toBe('application/problem+json');
	const health = await apiOf(ctx)('GET', '/api/v1/health');
	expect(await health.json()).toEqual({ status: 'ok' });
});
