import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { getForecast } from '../../../src/lib/server/services/forecast.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../src/lib/server/services/refresh/refresh-lake.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import {
	contextWithService,
	measuredAsColdAs,
	useSource,
	type Answer
} from '../../support/invented-source.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const WINTER = '2026-27';
const TODAY = '2027-01-20';
const TODAY_S = Date.parse(`${TODAY}T00:00:00Z`) / 1000;
const frost: Answer = async (source, ask) => {
	const told = await measuredAsColdAs(-12)(source, ask);
	return { ...told, hours: told.hours.map((hour) => ({ ...hour, precipitation_kg_m2: 0 })) };
};

/** Frost up to today, of which every ended hour is as warm as told. */
const warmToday =
	(air_degC: number): Answer =>
	async (source, ask) => {
		const told = await frost(source, ask);
		if (ask.part === 'forecast') return told;
		const hours = told.hours.map((hour) => (hour.at_s >= TODAY_S ? { ...hour, air_degC } : hour));
		return { ...told, hours };
	};

async function hourlyLake(answer: Answer, now = `${TODAY}T18:20:00Z`) {
	const { ctx, service } = await contextWithService(now, answer);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await freezeUp(ctx, id);
	await useSource(ctx, id);
	await startRefresh(ctx, id);
	await whenIdle(ctx);
	await drill(ctx, id, '2027-01-18');
	return { ctx, id, service };
}

async function freezeUp(ctx: Context, id: string): Promise<void> {
	const record = winterInput.parse({ freezeUpOn: '2026-12-10' });
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...record });
}

function drill(ctx: Context, id: string, on: string, change: object = {}) {
	const holes = Array.from({ length: 5 }, () => ({ total_m: 0.45, clear_m: 0.45, snow_m: 0.01 }));
	const reading = readingInput.parse({ on, place: 'bay', kind: 'measured', holes, ...change });
	return addReadings(ctx, id, 'main', [reading]);
}

async function onFoot(ctx: Context, id: string) {
	const { loads, cautions, asOf, weatherTo } = await getForecast(ctx, id, {});
	const load = loads.find(({ id }) => id === 'on-foot');
	return { ...load, asOf, weatherTo, codes: cautions.map(({ code }) => code) };
}

test('a hard frost goes on: what was drilled counts, and the weather is told to the hour', async () => {
	const { ctx, id } = await hourlyLake(frost);
	expect(await onFoot(ctx, id)).toMatchObject({
		status: 'reached',
		asOf: '2027-01-19',
		weatherTo: '2027-01-20T18:00:00.000Z'
	});
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep.lastObservedAge_h).toBe(0);
});

test('eighteen hours at +6 °C today double what is asked for, at once', async () => {
	const { ctx, id } = await hourlyLake(warmToday(6));
	const load = await onFoot(ctx, id);
	expect(load.required_m).toBeCloseTo(0.3, 9);
	expect(load.codes).toContain('warmSpell');
});

test('a day asked for is not told what came after it', async () => {
	const { ctx, id } = await hourlyLake(warmToday(6));
	const { cautions } = await getForecast(ctx, id, { asOf: '2027-01-19' });
	expect(cautions.map(({ code }) => code)).not.toContain('warmSpell');
});

test.each([
	['a candled core', { core: 'candled' }, 'withheld', 'badCore'],
	['a hole of 5 cm', { holes: [{ total_m: 0.05 }] }, 'notYet', 'readingNotIn'],
	['broken ice', { kind: 'wentThrough', holes: [] }, 'expectedNotDrilled', 'wentThrough']
])('%s of today takes the status that yesterday’s holes gave', async (_, read, status, code) => {
	const { ctx, id } = await hourlyLake(frost);
	await drill(ctx, id, TODAY, read);
	const load = await onFoot(ctx, id);
	expect(load.status).toBe(status);
	expect(load.codes).toContain(code);
});

test('loose hours after a break act against the ice, and do not make the weather younger', async () => {
	const broken: Answer = async (source, ask) => {
		const told = await warmToday(6)(source, ask);
		if (ask.part === 'forecast') return told;
		const isIn = (at_s: number) => at_s < TODAY_S + 2 * 3600 || at_s >= TODAY_S + 12 * 3600;
		return { ...told, hours: told.hours.filter(({ at_s }) => isIn(at_s)) };
	};
	const { ctx, id } = await hourlyLake(broken);
	const load = await onFoot(ctx, id);
	expect(load.required_m).toBeCloseTo(0.3, 9);
	expect(load.weatherTo).toBe('2027-01-20T02:00:00.000Z');
	expect((await lakeView(ctx, id)).upkeep.lastObservedAge_h).toBe(16);
});

test('hours of a part of today that came in a file count as well', async () => {
	const ctx = await freshContext(`${TODAY}T12:20:00Z`);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await freezeUp(ctx, id);
	await importWeather(ctx, id, inPieces(winterCsv('2026-12-01', 50, () => -12)));
	await drill(ctx, id, '2027-01-18');
	expect((await onFoot(ctx, id)).status).toBe('reached');
	const rows = Array.from({ length: 9 }, (_, at) => `${TODAY} 0${at}:00,5.5`);
	await importWeather(ctx, id, inPieces(`time,temp_c\n${rows.join('\n')}\n`));
	const load = await onFoot(ctx, id);
	expect(load).toMatchObject({ asOf: '2027-01-19', weatherTo: '2027-01-20T09:00:00.000Z' });
	expect(load.required_m).toBeCloseTo(0.3, 9);
});

test('weather is called old once 36 hours have passed, and not before', async () => {
	const codesAt = async (now: string) => {
		const ctx = await freshContext(now);
		const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
		await freezeUp(ctx, id);
		await importWeather(ctx, id, inPieces(winterCsv('2026-12-01', 50, () => -12)));
		return (await onFoot(ctx, id)).codes;
	};
	expect(await codesAt('2027-01-21T11:00:00Z')).not.toContain('weatherOld');
	expect(await codesAt('2027-01-21T13:00:00Z')).toContain('weatherOld');
});
