import { expect, test } from 'vitest';
import { listReadings } from '../../../src/lib/server/services/readings.ts';
import { createSite } from '../../../src/lib/server/services/sites.ts';
import { getSiteWinter } from '../../../src/lib/server/services/winters.ts';
import * as layout from '../../../src/routes/lakes/[lake]/+layout.server.ts';
import * as lakePage from '../../../src/routes/lakes/[lake]/+page.server.ts';
import * as howGood from '../../../src/routes/lakes/[lake]/how-good/+page.server.ts';
import * as readings from '../../../src/routes/lakes/[lake]/readings/+page.server.ts';
import * as winter from '../../../src/routes/lakes/[lake]/winter/+page.server.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { formEvent, outcomeOf } from '../../support/form-event.ts';

async function lakeWithBay() {
	const { ctx: context, id } = await drilledLake();
	await createSite(context, id, { name: 'Bay', kind: 'bay', parent: null });
	await createSite(context, id, { name: 'Track', kind: 'track', parent: 'main' });
	const params = { lake: id };
	return {
		context,
		id,
		at: (query: string, fields = {}) => formEvent({ context, params, query, fields })
	};
}

test('a bay’s freeze-up and readings are stored for it alone, and its pages keep it', async () => {
	const { context, id, at } = await lakeWithBay();
	const dates = await outcomeOf(
		winter.actions['dates'],
		at('/dates&winter=2026-27&site=bay', { freezeUpOn: '2026-11-10', freezeUpBy: '', iceOutOn: '' })
	);
	expect(dates.location).toBe('?winter=2026-27&stored=dates&site=bay');
	expect((await getSiteWinter(context, id, 'bay', '2026-27')).freezeUpOn).toBe('2026-11-10');
	expect((await getSiteWinter(context, id, 'main', '2026-27')).freezeUpOn).toBe('2026-11-20');
	const fields = { on: '2027-01-05', kind: 'measured', 'holes.0.total_cm': '31' };
	const added = await outcomeOf(readings.actions['add'], at('/add&site=bay', fields));
	expect(added.location).toMatch(/^\?winter=2026-27&stored=r-\w+&site=bay$/);
	expect(await listReadings(context, id, 'bay')).toHaveLength(1);
	expect(await listReadings(context, id, 'main')).toHaveLength(4);
	const page = (await lakePage.load(at('site=bay'))) as { page: { site: string } };
	expect(page.page).toMatchObject({ site: 'bay', freezeUpOn: '2026-11-10' });
	const good = await howGood.load(at('site=bay'));
	expect(good).toMatchObject({ good: { readings: [{ on: '2027-01-05' }] } });
	expect(await layout.load(at('site=bay'))).toMatchObject({
		site: 'bay',
		sites: [{ id: 'main' }, { id: 'bay' }, { id: 'track' }]
	});
});

test('a track shows its parent’s freeze-up and its own work, and lists its own readings', async () => {
	const { at } = await lakeWithBay();
	const fields = { kind: 'cleared', on: '2027-01-03', snow_cm: '0' };
	const added = await outcomeOf(
		winter.actions['addEvent'],
		at('/addEvent&winter=2026-27&site=track', fields)
	);
	expect(added.location).toBe('?winter=2026-27&stored=event1&site=track');
	expect(await winter.load(at('winter=2026-27&site=track'))).toMatchObject({
		parent: 'main',
		frozeOver: '2026-11-20',
		record: { freezeUpOn: null, events: [{ kind: 'cleared' }] }
	});
	expect(await readings.load(at('winter=2026-27&site=track'))).toMatchObject({ readings: [] });
});

test('a site that is not there is a page that says so', async () => {
	const { at } = await lakeWithBay();
	await expect(lakePage.load(at('site=nowhere'))).rejects.toMatchObject({ status: 404 });
	await expect(winter.load(at('site=nowhere'))).rejects.toMatchObject({ status: 404 });
});
