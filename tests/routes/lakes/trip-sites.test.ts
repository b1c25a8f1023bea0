import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { createSite, listSites } from '../../../src/lib/server/services/sites.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import type { TripSheetWords } from '../../../src/lib/ui/places/trip-text.ts';
import { tripText } from '../../../src/lib/ui/places/trip-text.ts';
import TripPage from '../../../src/routes/lakes/[lake]/trip/+page.svelte';
import { load } from '../../../src/routes/lakes/[lake]/trip/+page.server.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { formEvent } from '../../support/form-event.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const NOBODY = { emergency: null, party: null, back: null, told: null };

interface Data {
	sheet: TripSheetWords;
}

async function dataOf(context: Context, lake: string, query = ''): Promise<Data> {
	return (await load(formEvent({ context, params: { lake }, query }))) as Data;
}

/** A lake whose bay froze much later than the rest, with a site of which nothing is known. */
async function lakeOfSites() {
	const { ctx, id } = await drilledLake();
	for (const name of ['Late bay', 'Far cove'])
		await createSite(ctx, id, { name, kind: 'bay', parent: null });
	const record = winterInput.parse({ freezeUpOn: '2026-12-28' });
	await saveSiteWinter(ctx, id, 'late-bay', { winter: '2026-27', ...record });
	return { ctx, id };
}

test('of a lake with one site the sheet names none', async () => {
	const { ctx, id } = await drilledLake();
	const { sheet } = await dataOf(ctx, id);
	expect(sheet).toMatchObject({ site: null, beside: null });
	expect(tripText(sheet, NOBODY)).not.toContain('Site:');
});

test('a sheet is of the site that was asked for, says which, and what stands on the others', async () => {
	const { ctx, id } = await lakeOfSites();
	const [main, bay] = [
		(await dataOf(ctx, id)).sheet,
		(await dataOf(ctx, id, 'site=late-bay')).sheet
	];
	expect([main.site, bay.site]).toEqual(['Main', 'Late bay']);
	const thickness = ({ estimate }: TripSheetWords) => Number(/About (\d+) cm/.exec(estimate)?.[1]);
	expect(thickness(bay)).not.toBe(thickness(main));
	expect(main.beside).toMatch(
		/^On the other sites: Far cove, not known; Late bay, one hole in ten under \d+ cm\.$/
	);
	expect(bay.beside).toMatch(/^On the other sites: Main, one hole in ten under \d+ cm; Far cove, /);
	// A hole in ten under what is told of the bay itself.
	const bound = /less than (\d+)/.exec(bay.estimate)?.[1];
	expect(main.beside).toContain(`under ${bound} cm`);
	expect(tripText(bay, NOBODY)).toMatch(/Site: Late bay\n.*\nOn the other sites: Main/);
});

test('the paper shows both, and its forms keep the site', async () => {
	const { ctx, id } = await lakeOfSites();
	const data = await dataOf(ctx, id, 'site=late-bay');
	const rest = { units: METRIC, site: 'late-bay', sites: await listSites(ctx, id) };
	const props = { data: { ...data, ...rest }, params: { lake: id }, form: null };
	const html = render(TripPage, { props: props as never }).body.replace(/<!--[\s\S]*?-->/g, '');
	const text = html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
	expect(text).toMatch(/Test Lake, Late bay/);
	expect(text).toContain('On the other sites: Main, ');
	expect(html).toContain('action="?/show&amp;site=late-bay"');
});
