import { expect, test } from 'vitest';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { getRemoval } from '../../../src/lib/server/services/removal.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import type { ComingOffPage } from '../../../src/routes/lakes/[lake]/coming-off/coming-off-page.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/coming-off/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const WINTER = '2026-27';

/** A winter of frost to the middle of March, then a thaw. */
const thawing = (on: string) => (on >= '2027-03-15' ? 4 : -10);

async function lake({ days = 175, record = {} as object, now = '2027-03-24T12:00:00Z' } = {}) {
	const context = await freshContext(now);
	const { id } = await inventedLake(context);
	if (days > 0) await importWeather(context, id, inPieces(winterCsv('2026-10-01', days, thawing)));
	const winter = winterInput.parse({ freezeUpOn: '2026-11-20', ...record });
	await saveSiteWinter(context, id, 'main', { winter: WINTER, ...winter });
	const sent = { context, params: { lake: id } };
	return {
		open: async (query = ''): Promise<ComingOffPage> => {
			const data = (await load(formEvent({ ...sent, query }))) as { page: ComingOffPage };
			return data.page;
		},
		store: (fields: Record<string, string>) =>
			outcomeOf(
				actions['store'],
				formEvent({ ...sent, query: `/store&winter=${WINTER}&asOf=2027-03-10`, fields })
			),
		stored: () => getRemoval(context, id, WINTER)
	};
}

test('in a thaw the ice is closed, with the rule and its source, and what has gone', async () => {
	const { open } = await lake();
	const { leaving } = await open('asOf=2027-03-17');
	expect(leaving?.strength).toMatchObject({
		state: 'closed',
		rule: { source: expect.stringContaining('Minnesota DNR') }
	});
	expect(leaving?.peakOn).toMatch(/^2027-03-1[45]$/);
	expect(leaving?.thawSincePeak_degCd).toBeGreaterThanOrEqual(8);
	expect(leaving?.warmLast_h).toBeGreaterThan(18);
	expect(leaving?.texts.nights).toMatch(/no forecast/);
	const later = (await open()).leaving;
	expect(later?.strength.state).toBe('rotten');
	expect(later?.lost.p50_m).toBeGreaterThan(0.01);
	expect(later?.thawSincePeak_degCd).toBeGreaterThan(30);
});

test('in the middle of winter nothing thaws, and dates are named all the same', async () => {
	const { leaving } = await (await lake()).open('asOf=2027-02-01');
	expect(leaving?.strength.state).toBe('inFrost');
	expect(leaving?.texts.lost).toMatch(/^No ice has been lost/);
	const foot = leaving?.loads.find(({ id }) => id === 'on-foot');
	expect(foot?.median.kind).toBe('until');
	expect(foot?.byIce.on).toMatch(/^2027-0[345]/);
	expect((foot?.byIce.on ?? '') > '2027-02-01').toBe(true);
});

test('a past winter is told as of its ice-out, and one without weather not at all', async () => {
	const gone = await (await lake({ record: { iceOutOn: '2027-03-20' } })).open();
	expect(gone).toMatchObject({ iceOutOn: '2027-03-20', leaving: null });
	expect(await (await lake({ days: 0 })).open()).toMatchObject({
		status: 'noWeather',
		leaving: null
	});
});

test('a removal date and the days to get a load free are stored and go before the estimate', async () => {
	const { store, stored, open } = await lake();
	const outcome = await store({ removalOn: '2027-03-05', 'lead.on-foot': '3', 'lead.atv': '' });
	expect(outcome).toMatchObject({
		status: 303,
		location: `?winter=${WINTER}&asOf=2027-03-10&stored`
	});
	expect(await stored()).toEqual({
		removalOn: '2027-03-05',
		leads: [{ load: 'on-foot', lead_d: 3 }]
	});
	const { leaving, removalOn, leads } = await open('asOf=2027-03-01');
	expect(removalOn).toBe('2027-03-05');
	expect(leads.find(({ id }) => id === 'on-foot')?.lead_d).toBe(3);
	expect(leaving?.loads.find(({ id }) => id === 'on-foot')).toMatchObject({
		offBy: { on: '2027-03-05', reason: 'removalDate', beginOn: '2027-03-02' },
		isLeadTyped: true
	});
});

test.each([
	['a day of another winter', { removalOn: '2028-03-05' }, ['removalOn']],
	['what is no day', { removalOn: 'Easter' }, ['removalOn']],
	['half a day', { removalOn: '', 'lead.car': '0.5' }, ['lead.car']],
	['a year', { removalOn: '', 'lead.car': '365' }, ['lead.car']],
	['a word', { removalOn: '', 'lead.car': 'some' }, ['lead.car']]
])('%s is refused beside its field, and what was typed is kept', async (_, fields, wrong) => {
	const { store, stored } = await lake({ days: 0 });
	const outcome = await store(fields as unknown as Record<string, string>);
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual(wrong);
	expect(outcome.data.values).toMatchObject(fields);
	expect(await stored()).toEqual({ removalOn: null, leads: [] });
});
