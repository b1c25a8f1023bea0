import { isHttpError } from '@sveltejs/kit';
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { load } from '../../../src/routes/lakes/[lake]/early-ice/+page.server.ts';
import Page from '../../../src/routes/lakes/[lake]/early-ice/+page.svelte';
import type { Context } from '../../../src/lib/server/context.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import type { EarlyIceAnswer } from '../../../src/lib/server/services/early-ice.ts';
import { earlyIce } from '../../../src/routes/api/v1/openapi.json/early-ice-answer.ts';
import { apiOf } from '../../support/api.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { formEvent } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

async function shown(
	context: Context,
	lake: string,
	query = '',
	units: typeof METRIC | typeof IMPERIAL = METRIC
): Promise<string> {
	const data = await load(formEvent({ context, params: { lake }, query, units }));
	const props = { data: { ...data, sites: [], units }, params: { lake }, form: null };
	return render(Page, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<(?!a )[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

test('before freeze-up the page tells the chance of a skim, roughly, and how cold it has been', async () => {
	const { ctx, id } = await drilledLake();
	const page = await shown(ctx, id, 'asOf=2026-11-10');
	expect(page).toMatch(/Chance of a first skim by 17 Nov: roughly|may have frozen over by now/);
	expect(page).toContain('As it was known on 10 Nov 2026.');
	expect(page).toContain('Early ice varies most from place to place');
	expect(page).toContain('At 1 earlier freeze-up here it stood at');
	expect(page).toContain('No wind to come is known here');
	expect(page).not.toMatch(/NaN|undefined|\bnull\b/);
});

test('over young ice it tells the loads, the weekend, the snow and what a test has to show', async () => {
	const { ctx, id } = await drilledLake();
	const page = await shown(ctx, id, 'asOf=2026-11-24');
	expect(page).toMatch(/worth the trip|No trip is worth it/);
	expect(page).toMatch(/Sat 28 Nov: .*; Sun 29 Nov: /);
	expect(page).toContain('No forecast counts at present');
	expect(page).toContain('of clear ice at the least');
	expect(page).toContain('Early ice varies most from place to place');
	expect(page).toContain('Before anybody goes');
	expect(page).not.toMatch(/NaN|undefined|\bnull\b/);
});

test('in inches, feet, °F and miles an hour nothing metric is left, before and over young ice', async () => {
	const { ctx, id } = await drilledLake();
	for (const asOf of ['2026-11-10', '2026-11-24']) {
		const page = await shown(ctx, id, `asOf=${asOf}`, IMPERIAL);
		expect(page).toMatch(/\d °F/);
		expect(page).not.toMatch(/\d (?:°C|cm|mm|m|m\/s)(?![\w/])/);
	}
});

test('after it, it says so in a sentence and leads on', async () => {
	const { ctx, id } = await drilledLake();
	const page = await shown(ctx, id);
	expect(page).toContain('The early season is over');
	expect(page).toContain(`href="/lakes/${id}"`);
	expect(page).not.toContain('The first loads');
});

test('without weather it says what is missing', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const page = await shown(ctx, id);
	expect(page).toContain('Not known: there is no weather that reaches this day.');
	expect(page).toContain(`href="/lakes/${id}/weather"`);
});

test('of a lake that is not there, nothing is found', async () => {
	const event = formEvent({ context: await freshContext(), params: { lake: 'nowhere' } });
	const cause: unknown = await Promise.resolve(load(event)).catch((thrown: unknown) => thrown);
	expect(isHttpError(cause, 404)).toBe(true);
});

test.each(['2026-11-10', '2026-11-24', '2027-01-20'])(
	'the API answers as described, as of %s',
	async (asOf) => {
		const { ctx, id } = await drilledLake();
		const response = await apiOf(ctx)('GET', `/api/v1/lakes/${id}/early-ice?asOf=${asOf}`);
		const answer = (await response.json()) as EarlyIceAnswer;
		expect(earlyIce.strict().parse(answer)).toEqual(answer);
		expect(answer).toMatchObject({ lake: id, winter: '2026-27', asOf });
		expect(answer.cautions[0]?.code).toBe('variesMost');
	}
);

test('a day outside of its winter, and a parameter that is not known, are refused', async () => {
	const { ctx, id } = await drilledLake();
	const ask = apiOf(ctx);
	const path = `/api/v1/lakes/${id}/early-ice`;
	const outside = await ask('GET', `${path}?winter=2025-26&asOf=2026-12-01`);
	expect(outside.status).toBe(400);
	expect((await ask('GET', `${path}?until=2026-12-01`)).status).toBe(400);
	expect((await ask('GET', '/api/v1/lakes/nowhere/early-ice')).status).toBe(404);
});

test('that the ice broke lately is said before anything that is estimated, and for two weeks', async () => {
	const { ctx, id } = await drilledLake();
	const broke = readingInput.parse({
		on: '2026-11-22',
		place: 'The inlet',
		kind: 'wentThrough',
		holes: []
	});
	await addReadings(ctx, id, 'main', [broke]);
	const page = await shown(ctx, id, 'asOf=2026-11-24');
	const headline = 'The ice broke at The inlet on 22 Nov 2026: keep away from there';
	expect(page).toContain(headline);
	expect(page.indexOf(headline)).toBeLessThan(page.search(/worth the trip|No trip is worth it/));
	expect(await shown(ctx, id, 'asOf=2026-12-06')).toContain(headline);
	expect(await shown(ctx, id, 'asOf=2026-12-07')).not.toContain(headline);
	expect(await shown(ctx, id, 'asOf=2026-11-21')).not.toContain(headline);
});

test('past the early season it never speaks against the statuses, and keeps the cautions', async () => {
	const { ctx, id } = await drilledLake();
	const add = (more: object) =>
		addReadings(ctx, id, 'main', [
			readingInput.parse({ on: '2027-01-28', kind: 'measured', holes: [{ total_m: 0.4 }], ...more })
		]);
	await add({});
	const met = await shown(ctx, id);
	expect(met).toContain('the chart minimums are likely met');
	expect(met).toContain('Charts are for new, clear, hard ice.');
	await add({ on: '2027-01-27', core: 'candled' });
	const held = await shown(ctx, id);
	expect(held).toContain('Stay off, whatever the ice measures. The early season is over.');
	expect(held).toContain('The core of 27 Jan was wet or candled.');
	expect(held).not.toContain('likely met');
	await add({ core: 'sound' });
	await add({ on: '2027-02-10', holes: [{ total_m: 0.05 }] });
	const thin = await shown(ctx, id);
	expect(thin).toContain('the chart minimum is not met at the lower bound');
	expect(thin).not.toContain('likely met');
});

test('ice that broke after the last known weather is said first', async () => {
	const { ctx, id } = await drilledLake();
	const broke = { on: '2027-02-10', place: 'narrows', kind: 'wentThrough', holes: [] };
	await addReadings(ctx, id, 'main', [readingInput.parse(broke)]);
	expect(await shown(ctx, id)).toContain('The ice broke at narrows on 10 Feb 2027');
});
