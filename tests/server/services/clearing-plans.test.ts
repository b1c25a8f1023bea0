import { expect, test } from 'vitest';
import { METRIC_WORDS } from '../../../src/lib/model/words.ts';
import { planClearing } from '../../../src/lib/server/services/clearing-plans.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { saveSiteWinter, getSiteWinter } from '../../../src/lib/server/services/winters.ts';
import { drilledLake } from '../../support/drilled-lake.ts';

const SITE = { site: 'main', words: METRIC_WORDS };
const PLAN = { from: '2027-02-01', left_m: 0, afterSnow_m: 0.05 };

test('a cleared winter has less snow and more ice than the same winter as it is', async () => {
	const { ctx, id } = await drilledLake();
	const planned = await planClearing(ctx, id, SITE, PLAN, 8);
	const { asIs, cleared, clearing } = planned ?? expect.fail('nothing is estimated');
	const on = (day: string) => (each: { on: string }) => each.on === day;
	expect(cleared.days.find(on('2027-01-31'))).toEqual(asIs.days.find(on('2027-01-31')));
	const [before, after] = [asIs, cleared].map(({ days }) => days.find(on('2027-02-20')));
	expect(after?.snow_m.p50 ?? NaN).toBeLessThan(before?.snow_m.p50 ?? NaN);
	expect(after?.total_m.p50 ?? NaN).toBeGreaterThan((before?.total_m.p50 ?? NaN) + 0.02);
	expect(after?.bound?.total_m ?? NaN).toBeGreaterThan(before?.bound?.total_m ?? NaN);
	expect(clearing?.cleared_kg_m2).toBeGreaterThan(0);
	expect(clearing?.cleared_kg_m2).toBe(clearing?.snow_kg_m2);
});

test('clearing once does less than clearing after every snowfall', async () => {
	const { ctx, id } = await drilledLake();
	const peak = async (afterSnow_m: number | null) => {
		const planned = await planClearing(ctx, id, SITE, { ...PLAN, afterSnow_m }, 8);
		return Math.max(...(planned?.cleared.days ?? []).map(({ total_m }) => total_m.p50 ?? 0));
	};
	const [often, seldom, once] = [await peak(0.02), await peak(0.1), await peak(null)];
	expect(often).toBeGreaterThan(seldom);
	expect(seldom).toBeGreaterThan(once);
});

test('nothing of a plan is stored, and nothing stands otherwise by it', async () => {
	const { ctx, id } = await drilledLake();
	const before = await lakeView(ctx, id, { toWinterEnd: true });
	const planned = await planClearing(ctx, id, SITE, PLAN, 8);
	expect((await getSiteWinter(ctx, id, 'main', '2026-27')).events).toEqual([]);
	const after = await lakeView(ctx, id, { toWinterEnd: true });
	expect(after.outlook).toEqual(before.outlook);
	const statuses = (loads: { id: string; status: string }[]) =>
		loads.map(({ id, status }) => [id, status]);
	expect(statuses(planned?.cleared.loads ?? [])).toEqual(statuses(planned?.asIs.loads ?? []));
});

test('a site without a freeze-up has nothing to plan on', async () => {
	const { ctx, id } = await drilledLake();
	const record = {
		winter: '2026-27',
		freezeUpOn: null,
		freezeUpBy: null,
		iceOutOn: null,
		events: []
	};
	await saveSiteWinter(ctx, id, 'main', record);
	expect(await planClearing(ctx, id, SITE, PLAN, 8)).toBeNull();
});
