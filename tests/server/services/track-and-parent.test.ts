/** What happens to the ice that a track was made on happens to the track. */
import { expect, test } from 'vitest';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { createSite } from '../../../src/lib/server/services/sites.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { drilledLake } from '../../support/drilled-lake.ts';

const WINTER = '2026-27';
const FROZEN = { freezeUpOn: '2026-11-20' };

async function lakeWithTrack() {
	const { ctx, id } = await drilledLake();
	const made = await createSite(ctx, id, { name: 'Road', kind: 'track', parent: 'main' });
	if (made.status !== 'stored') throw new Error(made.status);
	const site = made.site.id;
	const events = [{ kind: 'cleared', on: '2027-01-05', snow_m: 0 }];
	const work = winterInput.parse({ freezeUpOn: null, events });
	await saveSiteWinter(ctx, id, site, { winter: WINTER, ...work });
	const view = () => lakeView(ctx, id, { site, toWinterEnd: true });
	const parent = (record: object) =>
		saveSiteWinter(ctx, id, 'main', {
			winter: WINTER,
			...winterInput.parse({ ...FROZEN, ...record })
		});
	const today = (await view()).asOf;
	return { ctx, id, view, parent, today };
}

test('ice that broke beside a track is a caution on it', async () => {
	const { ctx, id, view, today } = await lakeWithTrack();
	const codes = async () => (await view()).outlook?.forecast.cautions.map(({ code }) => code);
	expect(await codes()).not.toContain('wentThrough');
	const broke = { on: today, kind: 'wentThrough', place: 'North point', holes: [] };
	await addReadings(ctx, id, 'main', [readingInput.parse(broke)]);
	expect(await codes()).toContain('wentThrough');
});

test.each([
	['opened again', (on: string) => ({ events: [{ kind: 'reopened', on, refrozeOn: null }] })],
	['went out', (on: string) => ({ iceOutOn: on })]
])('where its parent %s there is no ice on a track', async (_, record) => {
	const { view, parent, today } = await lakeWithTrack();
	const day = async () => {
		const { outlook } = await view();
		const on = outlook?.forecast.days.find((each) => each.on === today);
		return { lower_m: on?.bound?.total_m ?? 0, loads: outlook?.forecast.loads ?? [] };
	};
	expect((await day()).lower_m).toBeGreaterThan(0.1);
	await parent(record(today));
	const { lower_m, loads } = await day();
	expect(lower_m).toBe(0);
	expect(
		loads.filter(({ status }) => status === 'reached' || status === 'expectedNotDrilled')
	).toEqual([]);
});
