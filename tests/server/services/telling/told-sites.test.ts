import { expect, test } from 'vitest';
import { nothingTold } from '#lib/model/telling/told.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../../src/lib/server/services/readings.ts';
import { createSite } from '../../../../src/lib/server/services/sites.ts';
import { makeFeed } from '../../../../src/lib/server/services/telling/feeds.ts';
import { lookAt } from '../../../../src/lib/server/services/telling/look.ts';
import { toldMessages } from '../../../../src/lib/server/services/telling/messages.ts';
import { updateTellingOf } from '../../../../src/lib/server/services/telling/settings.ts';
import {
	dateKey,
	storedTold,
	toldBySite
} from '../../../../src/lib/server/services/telling/told-sites.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { listDateRows } from '../../../../src/lib/server/storage/telling-dates.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	contextWithService,
	measuredAsColdAs,
	useSource
} from '../../../support/invented-source.ts';
import { enqueueDue } from '../../../../src/lib/server/services/refresh/schedule.ts';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';

const siteOfKey = (key: string) => (/^[\w-]+(?=:)/.exec(key) ?? ['main'])[0];

/** A basin that froze over on 1 December, and a bay of it on 10 November. */
async function basinAndBay() {
	const { ctx, setNow } = await contextWithService('2027-01-10T12:20:00Z', measuredAsColdAs(-8));
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await createSite(ctx, id, { name: 'Narrow bay', kind: 'bay', parent: null });
	const froze = (site: string, freezeUpOn: string) =>
		saveSiteWinter(ctx, id, site, { winter: '2026-27', ...winterInput.parse({ freezeUpOn }) });
	await froze('main', '2026-12-01');
	await froze('narrow-bay', '2026-11-10');
	await useSource(ctx, id);
	await enqueueDue(ctx);
	await whenIdle(ctx);
	await makeFeed(ctx, id, 'calendar');
	const shownDays = async () =>
		(await listDateRows(ctx.db, id)).filter(({ is_shown }) => is_shown === 1);
	return { ctx, id, setNow, shownDays };
}

test('the ice of every chosen site is told of by its name, and what is of the lake once', async () => {
	const { ctx, id, setNow, shownDays } = await basinAndBay();
	await updateTellingOf(ctx, id, { sites: ['main', 'narrow-bay'], loads: ['on-foot', 'car'] });
	setNow('2027-01-10T13:00:00Z');
	await lookAt(ctx, id);
	const ofSite = async (site: string) =>
		(await shownDays()).filter(({ key }) => siteOfKey(key) === site);
	const titleOfIceOut = async (site: string) =>
		(await ofSite(site)).find(({ key }) => key.endsWith('/iceOut'))?.title;
	expect(await titleOfIceOut('main')).toMatch(/^Main, /);
	expect(await titleOfIceOut('narrow-bay')).toMatch(/^Narrow bay, /);
	// Nothing came in for days: of the weather, which is the lake's, is told once.
	setNow('2027-01-15T13:00:00Z');
	await lookAt(ctx, id);
	const kinds = (await toldMessages(ctx, id, 100)).map(({ kind }) => kind);
	expect(kinds.filter((kind) => kind === 'weatherStale')).toHaveLength(1);
	expect((await shownDays()).filter(({ key }) => key.includes('stale'))).toHaveLength(1);
	// A site that is no longer chosen takes its days along.
	await updateTellingOf(ctx, id, { sites: ['narrow-bay'] });
	await lookAt(ctx, id);
	expect(await ofSite('main')).toEqual([]);
	expect(await ofSite('narrow-bay')).not.toEqual([]);
});

test('that the weather is stale is told where the first site has no ice to tell of', async () => {
	const { ctx, id, setNow } = await basinAndBay();
	const later = winterInput.parse({ freezeUpOn: '2027-02-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...later });
	await updateTellingOf(ctx, id, { sites: ['main', 'narrow-bay'], loads: [] });
	setNow('2027-01-15T13:00:00Z');
	await lookAt(ctx, id);
	const kinds = (await toldMessages(ctx, id, 100)).map(({ kind }) => kind);
	expect(kinds.filter((kind) => kind === 'weatherStale')).toHaveLength(1);
});

test('a reading that is due is told of the site that lacks it', async () => {
	const { ctx, id, setNow } = await basinAndBay();
	await updateTellingOf(ctx, id, { sites: ['main', 'narrow-bay'], loads: [] });
	const hole = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }] };
	await addReadings(ctx, id, 'narrow-bay', [readingInput.parse(hole)]);
	await addReadings(ctx, id, 'main', [readingInput.parse({ ...hole, on: '2026-12-20' })]);
	setNow('2027-01-10T13:00:00Z');
	await lookAt(ctx, id);
	const overdue = (await toldMessages(ctx, id, 100)).filter(
		({ kind }) => kind === 'readingOverdue'
	);
	expect(overdue.map(({ title }) => title)).toEqual([
		'Main, Reading overdue: a drilled hole decides'
	]);
});

test('what was stored when only the main site was told of counts as told of it', () => {
	const before = nothingTold('2026-27');
	expect(toldBySite({ state: JSON.stringify(before) })).toEqual({ main: before });
	expect(toldBySite({ state: storedTold({ bay: before }) })).toEqual({ bay: before });
	expect(toldBySite({ state: '{"version":99}' })).toEqual({});
	expect(toldBySite({ state: null })).toEqual({});
});

test('the days of the main site keep their keys, those of others tell whose they are', () => {
	const key = '2026-27/expected/own-a:b';
	expect(dateKey('main', key)).toBe(key);
	expect(siteOfKey(key)).toBe('main');
	expect(siteOfKey(dateKey('narrow-bay', key))).toBe('narrow-bay');
});
