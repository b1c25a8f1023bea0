import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { listSites } from '../../../src/lib/server/services/sites.ts';
import * as list from '../../../src/routes/lakes/[lake]/sites/+page.server.ts';
import SitesPage from '../../../src/routes/lakes/[lake]/sites/+page.svelte';
import * as one from '../../../src/routes/lakes/[lake]/sites/[site]/+page.server.ts';
import PlanResult from '../../../src/routes/lakes/[lake]/sites/[site]/PlanResult.svelte';
import Work from '../../../src/routes/lakes/[lake]/sites/[site]/Work.svelte';
import type { PlanAnswer } from '../../../src/routes/lakes/[lake]/sites/[site]/plan-of.ts';
import * as note from '../../../src/routes/lakes/[lake]/sites/[site]/note/+page.server.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';

const BAY = { name: 'North bay', siteKind: 'bay', parent: 'main' };
const PLAN = 'firstOn=2027-02-13&left_cm=0&width_m=8&again=yes&over_cm=5&load=half-ton';

async function lakeOfSites() {
	const { ctx: context, id } = await drilledLake();
	const params = { lake: id };
	const at = (more: object = {}) => formEvent({ context, params, ...more });
	const add = (fields: Record<string, string>) => outcomeOf(list.actions['add'], at({ fields }));
	const of = (site: string, more: object = {}) =>
		formEvent({ context, params: { lake: id, site }, ...more });
	return {
		id,
		at,
		add,
		of,
		names: async () => (await listSites(context, id)).map(({ name }) => name)
	};
}

interface Page {
	rows: { id: string; day: object | null }[];
}

interface SitePage {
	plan: {
		issues: { field: string }[];
		answer: PlanAnswer | null;
	} | null;
	events: unknown[];
}

test('a site is made, renamed, deleted and brought back by the pages', async () => {
	const { id, at, add, of, names } = await lakeOfSites();
	expect((await add(BAY)).location).toBe(`/lakes/${id}/sites/north-bay?made`);
	const fields = { ...BAY, name: 'The bay' };
	const renamed = await outcomeOf(one.actions['store'], of('north-bay', { fields }));
	expect(renamed.location).toBe('?stored');
	expect(await names()).toEqual(['Main', 'The bay']);
	const deleted = await outcomeOf(one.actions['delete'], of('north-bay'));
	expect(deleted.location).toBe(`/lakes/${id}/sites?deleted=north-bay`);
	expect(await names()).toEqual(['Main']);
	const page = (await list.load(at({ query: 'deleted=north-bay' }))) as Page;
	expect(page).toMatchObject({ deleted: [{ id: 'north-bay' }], justDeleted: 'north-bay' });
	await outcomeOf(list.actions['restore'], at({ fields: { id: 'north-bay' } }));
	expect(await names()).toEqual(['Main', 'The bay']);
});

test.each([
	[{ ...BAY, name: '' }, ['name']],
	[{ ...BAY, name: 'Main' }, ['name']],
	[{ ...BAY, siteKind: 'track', parent: '' }, ['parent']]
])('%j is refused at its field', async (fields, wrong) => {
	const { add, names } = await lakeOfSites();
	const outcome = await add(fields);
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual(wrong);
	expect(outcome.data.values).toEqual(fields);
	expect(await names()).toEqual(['Main']);
});

test('what a track was made on is not deleted under it', async () => {
	const { add, of } = await lakeOfSites();
	await add(BAY);
	await add({ name: 'Track', siteKind: 'track', parent: 'north-bay' });
	const outcome = await outcomeOf(one.actions['delete'], of('north-bay'));
	expect(fieldsOf(outcome)).toEqual(['sure']);
	expect(outcome.data.issues?.[0]?.message).toContain('Track');
});

test('the list says each site’s ice with its doubt, and the thinnest first', async () => {
	const { at, add } = await lakeOfSites();
	await add(BAY);
	await add({ name: 'Track', siteKind: 'track', parent: 'main' });
	const page = (await list.load(at())) as Page;
	expect(page.rows.map(({ id, day }) => [id, day !== null])).toEqual([
		['main', true],
		['north-bay', false],
		['track', true]
	]);
	const units = { measure: 'metric', mass: 'kg' };
	const data = { ...page, units, site: 'main', sites: [] };
	const rendered = render(SitesPage, { props: { data, form: null } as never }).body;
	const body = rendered.replace(/\s/g, ' ');
	expect(body).toMatch(
		/3 sites: \S+ may be the thinnest, \d+ cm at its lower bound; 1 without an estimate\./
	);
	expect(body).toContain('Track on the ice of Main');
	expect(body).toMatch(
		/About \d+ cm of ice on 28 Jan 2027, but one hole in ten may have shown less/
	);
	expect(body).toContain('No freeze-up recorded for this winter');
});

test('a track that was cleared says what that brings with it, once', () => {
	const units = { measure: 'metric', mass: 'kg' } as const;
	const head = { parentName: 'Main', lakeId: 'a', site: 'track', winter: '2026-27', units };
	const cleared = [{ kind: 'cleared', on: '2027-01-12', snow_m: 0.01 } as const];
	const text = (props: { events: typeof cleared; hasPlan: boolean }) =>
		render(Work, { props: { ...head, ...props } }).body;
	expect(text({ events: cleared, hasPlan: false })).toMatch(
		/What a track brings with it[\s\S]*Beside the track and under its banks/
	);
	expect(text({ events: cleared, hasPlan: true })).not.toContain('What a track brings with it');
	expect(text({ events: [], hasPlan: false })).not.toContain('What a track brings with it');
});

test('a plan is worked out from its address alone', async () => {
	const { of } = await lakeOfSites();
	const page = (await one.load(of('main', { query: PLAN }))) as SitePage;
	expect(page.plan?.issues).toEqual([]);
	expect(page.plan?.answer).toMatchObject({
		plan: { from: '2027-02-13', left_m: 0, afterSnow_m: 0.05 },
		width_m: 8
	});
	expect(page.plan?.answer?.cleared).not.toEqual(page.plan?.answer?.asIs);
	expect(page.plan?.answer?.rules.map(({ code }) => code)).toContain('bankLoad');
	const answer = page.plan?.answer;
	if (!answer) throw new Error('no plan');
	const props = {
		answer,
		loadId: 'on-foot',
		asOf: '2027-02-10',
		units: { measure: 'metric', mass: 'kg' } as const
	};
	const text = render(PlanResult, { props }).body.replace(/\s+/g, ' ');
	expect(text).toContain('whoever clears on foot is held against. A machine is held against less');
	expect(page.events).toEqual([]);
	expect((await one.load(of('main'))) as SitePage).toMatchObject({
		plan: null,
		saturday: '2027-02-13'
	});
});

test.each([
	['firstOn=2027-01-13&left_cm=0&width_m=8', ['firstOn']],
	['firstOn=2027-08-13&left_cm=0&width_m=8', ['firstOn']],
	['firstOn=&left_cm=x&width_m=', ['firstOn', 'left_cm', 'width_m']],
	['firstOn=2027-02-13&left_cm=0&width_m=8&again=yes&over_cm=', ['over_cm']]
])('a plan of %s is refused at its fields', async (query, wrong) => {
	const { of } = await lakeOfSites();
	const page = (await one.load(of('main', { query }))) as SitePage;
	expect(page.plan?.issues.map(({ field }) => field)).toEqual(wrong);
	expect(page.plan?.answer).toBeNull();
	const refused = await outcomeOf(note.load as never, of('main', { query }));
	expect(refused).toMatchObject({ status: 303 });
});

test('the note has the same plan', async () => {
	const { of } = await lakeOfSites();
	expect(await note.load(of('main', { query: PLAN }))).toMatchObject({
		answer: { plan: { from: '2027-02-13' } },
		loadId: 'half-ton'
	});
});
