import { expect, test } from 'vitest';
import { knownForecast } from '../../../../src/lib/server/services/known-forecast.ts';
import { storeForecast } from '../../../../src/lib/server/services/refresh/store-forecast.ts';
import { readTrust } from '../../../../src/lib/server/services/trust.ts';
import type { SourceAnswer } from '../../../../src/lib/server/weather/source/contract.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	answered,
	askingOf,
	contextWithService,
	hoursFrom,
	useSource
} from '../../../support/invented-source.ts';

/** A lake on UTC that uses one source, at noon. */
async function lake() {
	const { ctx, setNow } = await contextWithService('2027-01-20T12:00:00Z');
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	const store = async (changes: Partial<SourceAnswer>) =>
		storeForecast(ctx, await askingOf(ctx), answered({ issuedAt: ctx.now(), ...changes }));
	const known = async () =>
		knownForecast(ctx, await readTrust(ctx, id), { lastOn: '2027-01-19', by: ctx.now() });
	const airs = async () =>
		Object.fromEntries((await known()).days.map(({ on, air_degC }) => [on, air_degC]));
	return { ctx, setNow, store, known, airs };
}

/** So many hours of one temperature from noon of the twentieth on. */
const from = (hour: string, count: number, air_degC: number | null) =>
	hoursFrom(
		`2027-01-${hour}:00:00Z`,
		Array.from({ length: count }, () => air_degC)
	);

test('hours that a new issue leaves open are not filled from the one before', async () => {
	const { store, airs, setNow } = await lake();
	await store({ hours: from('20T12', 84, -20) });
	setNow('2027-01-20T18:00:00Z');
	const hours = [...from('20T18', 30, -4), ...from('22T00', 24, null), ...from('23T00', 24, -4)];
	await store({ hours });
	const told = await airs();
	expect(told['2027-01-21']).toBe(-4);
	expect(told).not.toHaveProperty('2027-01-22');
	expect(told['2027-01-23']).toBe(-4);
});

test('hours that a new issue does not reach are gone with the one before', async () => {
	const { store, airs, setNow } = await lake();
	await store({ hours: from('20T12', 84, -20) });
	setNow('2027-01-20T18:00:00Z');
	await store({ hours: [...from('20T18', 6, -4), ...from('21T20', 28, -4)] });
	const told = await airs();
	expect(told).not.toHaveProperty('2027-01-21');
	expect(told['2027-01-22']).toBe(-4);
});

test('hours of today that have ended stand as they were last forecast', async () => {
	const { store, airs, setNow } = await lake();
	setNow('2027-01-20T00:00:00Z');
	await store({ hours: from('20T00', 48, -20) });
	setNow('2027-01-20T12:00:00Z');
	await store({ hours: from('20T12', 36, -10) });
	expect((await airs())['2027-01-20']).toBe(-15);
});
