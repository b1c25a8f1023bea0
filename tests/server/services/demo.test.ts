import { cpSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { DEMO_FOLDER, loadDemo } from '../../../src/lib/server/services/demo.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import {
	createLake,
	deleteLake,
	listLakes,
	newLake
} from '../../../src/lib/server/services/lakes.ts';
import { listOwnLoads } from '../../../src/lib/server/services/own-loads.ts';
import { placesView } from '../../../src/lib/server/services/places/places-view.ts';
import { listWeakSpots } from '../../../src/lib/server/services/places/weak-spots.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

test('an empty database gets the invented lake, and always the same day of it', async () => {
	const ctx = await freshContext('2031-08-15T12:00:00Z');
	const demo = await loadDemo(ctx);
	expect(demo?.isInvented).toBe(true);
	const view = await lakeView(ctx, demo?.id ?? '');
	expect(view.status).toBe('ok');
	expect(view.today).toBe(demo?.today);
	expect(view.weather.hasPrecipitation).toBe(true);
	expect(view.outlook?.forecast.days.length).toBeGreaterThan(30);
});

test('the invented lake has earlier winters, which teach it and may come again', async () => {
	const ctx = await freshContext();
	const demo = await loadDemo(ctx);
	const { winters, outlook } = await lakeView(ctx, demo?.id ?? '', { toWinterEnd: true });
	expect(winters).toHaveLength(4);
	expect(outlook?.climate).toEqual({ pastWinters: 3, hasUsual: false, endsEarly: false });
	expect(outlook?.forecast.memoryText).toMatch(/^3 past winters with \d+ readings/);
	expect(outlook?.forecast.iceOut?.p50).toMatch(/^2026-0[45]/);
});

test('it has what a visitor would come to enter: a load that is parked, weak spots, routes', async () => {
	const ctx = await freshContext();
	const { id = '' } = (await loadDemo(ctx)) ?? {};
	expect(await listOwnLoads(ctx, id)).toMatchObject([{ name: 'Shelter on runners', parked_h: 48 }]);
	expect((await listWeakSpots(ctx, id)).map(({ kind }) => kind)).toEqual([
		'landing',
		'pressureRidge',
		'inletOutlet'
	]);
	const { routes } = await placesView(ctx, id);
	expect(routes.map(({ answer }) => answer.unknown)).toEqual([[], [1]]);
});

test('the demo is not loaded twice, nor beside a lake of somebody', async () => {
	const ctx = await freshContext();
	await loadDemo(ctx);
	expect(await loadDemo(ctx)).toBeNull();
	expect(await listLakes(ctx)).toHaveLength(1);
	const other = await freshContext();
	await inventedLake(other);
	expect(await loadDemo(other)).toBeNull();
});

test('a demo that was deleted does not come back', async () => {
	const ctx = await freshContext();
	await deleteLake(ctx, (await loadDemo(ctx))?.id ?? '');
	expect(await loadDemo(ctx)).toBeNull();
	expect(await listLakes(ctx)).toEqual([]);
});

test('a demo whose loading broke off is loaded anew', async () => {
	const ctx = await freshContext();
	const half = { name: 'Half', latitude: 1, longitude: 1, water: 'lake' };
	await createLake(ctx, newLake.parse(half), { today: '2027-01-01' });
	expect((await loadDemo(ctx))?.isInvented).toBe(true);
	expect(await listLakes(ctx)).toHaveLength(1);
});

test('a broken demo file is named', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-demo-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	expect(existsSync(join(DEMO_FOLDER, 'lake.json'))).toBe(true);
	cpSync(DEMO_FOLDER, folder, { recursive: true });
	writeFileSync(join(folder, 'weather.csv'), 'nothing\n');
	await expect(loadDemo(await freshContext(), folder)).rejects.toThrow('weather.csv');
});
