import { isHttpError } from '@sveltejs/kit';
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { load } from '../../../src/routes/lakes/[lake]/how-good/+page.server.ts';
import Page from '../../../src/routes/lakes/[lake]/how-good/+page.svelte';
import { GET } from '../../../src/routes/lakes/[lake]/what-if.json/+server.ts';
import { whatIf } from '../../../src/lib/model/ensemble/what-if.ts';
import { outlook } from '../../../src/lib/model/outlook.ts';
import { MEMBERS } from '../../../src/lib/model/site-estimate.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { formEvent } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import type { Context } from '../../../src/lib/server/context.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

async function shown(context: Context, lake: string, query = ''): Promise<string> {
	const data = await load(formEvent({ context, params: { lake }, query }));
	const props = { data: { ...data, units: METRIC }, params: { lake }, form: null };
	return render(Page, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

test('each reading stands beside what had been predicted before it', async () => {
	const { ctx, id } = await drilledLake();
	const page = await shown(ctx, id);
	expect(page).toContain('The winter 2026-27');
	expect(page).toContain('Over 2 winters here: Usually within');
	expect(page).toMatch(/15 Dec 2026 15 cm \d+ cm/);
	expect(page).not.toMatch(/NaN|undefined/);
});

test('a winter of one’s choice, and one without readings', async () => {
	const { ctx, id } = await drilledLake();
	expect(await shown(ctx, id, 'winter=2025-26')).toContain('The winter 2025-26');
	expect(await shown(ctx, id, 'winter=2020-21')).toContain(
		'Nothing drilled through in the winter 2020-21 had an estimate'
	);
});

test('a lake without readings is told what to add', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	expect(await shown(ctx, id)).toContain('No reading is stored yet');
});

test('a browser that tries something out gets what the page’s own estimate was made from', async () => {
	const { ctx, id } = await drilledLake();
	const query = 'winter=2026-27&asOf=2027-01-05';
	const response = await GET(formEvent({ context: ctx, params: { lake: id }, query }));
	const input = (await response.json()) as Parameters<typeof outlook>[0];
	const asked = { winter: '2026-27', asOf: '2027-01-05', toWinterEnd: true };
	const view = await lakeView(ctx, id, asked);
	expect(view.outlook?.forecast.days.at(-1)).toMatchObject({ on: '2027-06-30', source: 'climate' });
	expect(outlook(input)).toEqual(view.outlook);
	const unchanged = { snowFactor: 1, warming_K: 0, extraLoad: null };
	expect(whatIf(input, unchanged, MEMBERS)).toEqual(view.outlook?.forecast);
});

test('of a lake that is not there, neither is found', async () => {
	const event = formEvent({ context: await freshContext(), params: { lake: 'nowhere' } });
	for (const asked of [() => load(event), () => GET(event)]) {
		const cause: unknown = await Promise.resolve(asked()).catch((thrown: unknown) => thrown);
		expect(isHttpError(cause, 404)).toBe(true);
	}
});
