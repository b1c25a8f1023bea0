import { isHttpError } from '@sveltejs/kit';
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import { addLoad } from '../../../src/lib/server/services/own-loads.ts';
import { setShownLoads } from '../../../src/lib/server/services/shown-loads.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { load } from '../../../src/routes/lakes/[lake]/going-on/+page.server.ts';
import Page from '../../../src/routes/lakes/[lake]/going-on/+page.svelte';
import { drilledLake } from '../../support/drilled-lake.ts';
import { formEvent } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces } from '../../support/winter-csv.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

async function dataOf(context: Context, lake: string, query = '') {
	return (await load(formEvent({ context, params: { lake }, query }))) as {
		page: { changes: unknown; ice: { loads: { id: string }[] } | null };
	};
}

async function html(context: Context, lake: string, query = '', units: object = METRIC) {
	const data = await dataOf(context, lake, query);
	const props = { data: { ...data, sites: [], units }, params: { lake }, form: null };
	return render(Page, { props: props as never }).body.replace(/<!--[\s\S]*?-->/g, '');
}

async function shown(context: Context, lake: string, query = '', units: object = METRIC) {
	return (await html(context, lake, query, units)).replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}

const SHELTER = loadInput.parse({ name: 'Invented shelter', mass_kg: 900, parked_h: 48 });

test('one heading answers, cautions follow, then the strip, each load and what would move it', async () => {
	const { ctx, id } = await drilledLake();
	const page = await shown(ctx, id);
	const order = [
		/Next, .*: expected|Nothing|All of it|Stay off/,
		/Before anybody goes/,
		/The winter strip/,
		/Load by load/,
		/What would change it/,
		/On the way/,
		/Where it stands/
	].map((words) => page.search(words));
	expect(order[0]).toBeGreaterThan(-1);
	expect(order).toEqual(order.toSorted((a, b) => a - b));
	expect((await html(ctx, id)).match(/<h1/g)).toHaveLength(1);
	expect(page).not.toMatch(/NaN|undefined|\bnull\b/);
});

test('what was cleared comes with its cautions, before anybody goes and on the way', async () => {
	const { ctx, id } = await drilledLake();
	const before = await shown(ctx, id);
	expect(before).not.toMatch(/What a track brings|the ice that was cleared/);
	const events = [{ kind: 'cleared', on: '2027-01-12', snow_m: 0.01 }];
	const record = winterInput.parse({ freezeUpOn: '2026-11-20', events });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	const page = await shown(ctx, id);
	expect(page).toMatch(/Before anybody goes .*Told is the ice that was cleared/);
	expect(page).toMatch(/What a track brings with it Cracks open along the banks/);
	expect(page).toMatch(/Traffic on one line tires the ice/);
	const earlier = await shown(ctx, id, 'asOf=2027-01-11');
	expect(earlier).toContain('Before anybody goes');
	expect(earlier).not.toMatch(/What a track brings|the ice that was cleared/);
});

test('both sets and the formula stand beside each other, and one decides', async () => {
	const { ctx, id } = await drilledLake();
	await setShownLoads(ctx, id, { shown: ['half-ton'] });
	const page = await shown(ctx, id);
	expect(page).toMatch(
		/Strict charts 40 cm, which decides Common charts 38 cm Gold’s formula, 2,500 kg 27 cm/
	);
	expect(page).toMatch(/The ice, by the estimate \d+ cm/);
	expect(page).toContain('Keep 40 m from the next.');
	expect(page).not.toContain('One person with gear');
});

test('a shelter that stands is held against staying above the water', async () => {
	const { ctx, id } = await drilledLake();
	const { id: shelter } = await addLoad(ctx, id, SHELTER);
	await setShownLoads(ctx, id, { shown: [shelter] });
	const page = await shown(ctx, id);
	expect(page).toContain('To stay above the water for 48 hours');
	expect(page).toMatch(/when it has stood for 48 hours|water comes up under anything/);
	expect(page).toContain('Move vehicles every 2 hours.');
	expect(page).toContain('at least 15 m apart');
});

test('in inches, pounds, feet and miles an hour nothing metric is left in what is asked', async () => {
	const { ctx, id } = await drilledLake();
	const data = await dataOf(ctx, id);
	const page = await shown(ctx, id, '', IMPERIAL);
	expect(data.page.ice?.loads.length).toBeGreaterThan(5);
	expect(page).toMatch(/\d+ mph/);
	expect(page).toMatch(/Strict charts \d+(\.5)? in/);
	expect(page).not.toMatch(/\d km\/h/);
});

test('while a warm day doubles what is asked, no chance is told of the half', async () => {
	const { ctx, id } = await drilledLake();
	const asOf = 'asOf=2027-01-20';
	expect(await shown(ctx, id, asOf)).toMatch(/On 20 Jan the chance is/);
	const hours = Array.from({ length: 24 }, (_, hour) => [
		`2027-01-20T${String(hour).padStart(2, '0')}:00`,
		hour >= 10 && hour < 18 ? '2.0' : '-12.0'
	]);
	const csv = `time,temperature_c\n${hours.map((row) => row.join(',')).join('\n')}\n`;
	await importWeather(ctx, id, inPieces(csv));
	const page = await shown(ctx, id, asOf);
	expect(page).toMatch(/in the warm spell; the dates are for what it asks otherwise/);
	expect(page).not.toMatch(/the chance is|Chance on/);
});

test('without weather it says what is missing, and tries nothing', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	expect(await shown(ctx, id)).toContain('Without weather there is no estimate yet.');
	expect((await dataOf(ctx, id)).page.changes).toBeNull();
});

test('before freeze-up it says so', async () => {
	const { ctx, id } = await drilledLake();
	expect(await shown(ctx, id, 'asOf=2026-11-10')).toContain('Not frozen over yet on 10 Nov 2026.');
});

test('a lake that is not there is not found', async () => {
	const ctx = await freshContext();
	const lost = dataOf(ctx, 'nowhere');
	await expect(lost).rejects.toSatisfy((cause) => isHttpError(cause) && cause.status === 404);
});

test('the wave is told for the thinnest ice on a vehicle’s way: it is slower there', async () => {
	const { ctx, id } = await drilledLake();
	const { outlook } = await lakeView(ctx, id, { toWinterEnd: true });
	const of = (load: string) => {
		const { bound_m } = outlook?.forecast.loads.find((each) => each.id === load) ?? {};
		return bound_m ?? Number.NaN;
	};
	const driven_m = of('car');
	expect(driven_m).toBeLessThan(of('on-foot') - 0.005);
	for (const query of ['', 'asOf=2027-01-05']) {
		const page = await shown(ctx, id, query);
		const [, told] =
			/For (\d+) cm of ice, the lower bound at the thinnest of five spots/.exec(page) ?? [];
		if (query === '') expect(told).toBe(String(Math.floor(driven_m * 100)));
		else expect(told).toBeDefined();
	}
	// Not even where no vehicle is shown.
	await setShownLoads(ctx, id, { shown: ['on-foot'] });
	expect(await shown(ctx, id)).toContain(`For ${Math.floor(driven_m * 100)} cm of ice`);
});
