import { expect, test } from 'vitest';
import { enqueueDue } from '../../../../src/lib/server/services/refresh/schedule.ts';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import { makeFeed, revokeFeed } from '../../../../src/lib/server/services/telling/feeds.ts';
import { lookAt } from '../../../../src/lib/server/services/telling/look.ts';
import { toldMessages } from '../../../../src/lib/server/services/telling/messages.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../../src/lib/server/services/readings.ts';
import { createSite } from '../../../../src/lib/server/services/sites.ts';
import { updateTellingOf } from '../../../../src/lib/server/services/telling/settings.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import {
	contextWithService,
	measuredAsColdAs,
	useSource,
	type Answer
} from '../../../support/invented-source.ts';
import { permissionsIn } from '../../../support/permission-words.ts';

type Hours = Awaited<ReturnType<Answer>>['hours'];

/** Frost with hardly any snow, so that no flood is ahead; `change` bends the hours to come. */
function frost(change: (hour: Hours[number]) => Partial<Hours[number]> = () => ({})): Answer {
	const cold = measuredAsColdAs(-8);
	return async (source, ask) => {
		const answer = await cold(source, ask);
		const hours = answer.hours.map((hour) => ({
			...hour,
			precipitation_kg_m2: 0.005,
			...(ask.part === 'forecast' ? change(hour) : {})
		}));
		return { ...answer, hours };
	};
}

/** A warm spell from a day on. */
function thawFrom(day: string): Answer {
	return frost(({ at_s }) => (at_s >= Date.parse(day) / 1000 ? { air_degC: 6 } : {}));
}

/** A lake that froze over on 1 December, told of by its feed, looked at with fresh weather each time. */
async function lake() {
	const { ctx, service, setNow } = await contextWithService('2027-01-10T12:20:00Z', frost());
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2026-12-01' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id);
	await updateTellingOf(ctx, id, { loads: [] });
	const refresh = async (at: string) => {
		setNow(at);
		await enqueueDue(ctx);
		await whenIdle(ctx);
	};
	await refresh('2027-01-10T12:20:00Z');
	await makeFeed(ctx, id, 'changes');
	const look = async (at: string) => {
		setNow(at);
		await lookAt(ctx, id);
		return kinds();
	};
	const kinds = async () => (await toldMessages(ctx, id, 100)).map(({ kind }) => kind).toReversed();
	return { ctx, id, service, setNow, refresh, look, kinds };
}

test('a thaw that the forecast brings is told once, ahead and not again when it has come', async () => {
	const { ctx, id, service, refresh, look } = await lake();
	expect(await look('2027-01-10T13:00:00Z')).toEqual([]);
	service.answer = thawFrom('2027-01-14T00:00:00Z');
	await refresh('2027-01-11T12:20:00Z');
	expect(await look('2027-01-11T13:00:00Z')).toEqual(['thawAhead']);
	const [told] = await toldMessages(ctx, id, 1);
	expect(told?.title).toBe('Thaw ahead from 14 Jan: a drilled hole decides');
	expect(permissionsIn(told?.text ?? '')).toEqual([]);
	expect(await look('2027-01-11T18:00:00Z')).toEqual(['thawAhead']);
	// A day later the next issue has it a day later: that is not told.
	service.answer = thawFrom('2027-01-15T00:00:00Z');
	await refresh('2027-01-12T12:20:00Z');
	expect(await look('2027-01-12T13:00:00Z')).toEqual(['thawAhead']);
	// It has moved by four days in all: that is told, with the day that was told before.
	service.answer = thawFrom('2027-01-18T00:00:00Z');
	await refresh('2027-01-13T12:20:00Z');
	expect(await look('2027-01-13T13:00:00Z')).toEqual(['thawAhead', 'thawAhead']);
	expect((await toldMessages(ctx, id, 1))[0]?.text).toContain('Before, 14 Jan was told.');
});

test('snow that floods the ice is told ahead, with what it takes', async () => {
	const { ctx, id, service, refresh, look } = await lake();
	service.answer = frost(() => ({ precipitation_kg_m2: 0.6 }));
	await refresh('2027-01-11T12:20:00Z');
	expect(await look('2027-01-11T13:00:00Z')).toEqual(['floodAhead']);
	const [told] = await toldMessages(ctx, id, 1);
	expect(told?.text).toMatch(/About \d+ cm more snow than today is enough\./);
});

test('weather that stops is told as stale after two days, once', async () => {
	const { look } = await lake();
	expect(await look('2027-01-11T12:30:00Z')).toEqual([]);
	expect(await look('2027-01-12T11:30:00Z')).toEqual([]);
	expect(await look('2027-01-12T15:30:00Z')).toEqual(['weatherStale']);
	expect(await look('2027-01-13T15:30:00Z')).toEqual(['weatherStale']);
	expect(await look('2027-01-20T15:30:00Z')).toEqual(['weatherStale']);
});

test('where nothing has changed since, no estimate is made for three hours', async () => {
	const { ctx, id, setNow } = await lake();
	const lookedAt = async (at: string) => {
		setNow(at);
		return lookAt(ctx, id);
	};
	expect(await lookedAt('2027-01-10T13:00:00Z')).toBe(true);
	expect(await lookedAt('2027-01-10T13:05:00Z')).toBe(false);
	await updateTellingOf(ctx, id, { loads: ['car'] });
	expect(await lookedAt('2027-01-10T13:06:00Z')).toBe(true);
	expect(await lookedAt('2027-01-10T16:00:00Z')).toBe(false);
	expect(await lookedAt('2027-01-10T16:06:00Z')).toBe(true);
});

test('two looks at once tell everything once', async () => {
	const { ctx, id, service, refresh, setNow, kinds } = await lake();
	service.answer = thawFrom('2027-01-14T00:00:00Z');
	await refresh('2027-01-11T12:20:00Z');
	setNow('2027-01-11T13:00:00Z');
	await Promise.all([lookAt(ctx, id), lookAt(ctx, id), lookAt(ctx, id)]);
	expect(await kinds()).toEqual(['thawAhead']);
});

test('switched off and on again, what holds then is told as new', async () => {
	const { ctx, id, service, refresh, look } = await lake();
	service.answer = thawFrom('2027-01-14T00:00:00Z');
	await refresh('2027-01-11T12:20:00Z');
	expect(await look('2027-01-11T13:00:00Z')).toEqual(['thawAhead']);
	await revokeFeed(ctx, id, 'changes');
	expect(await lookAt(ctx, id)).toBe(false);
	await makeFeed(ctx, id, 'changes');
	expect(await look('2027-01-11T13:10:00Z')).toEqual(['thawAhead', 'thawAhead']);
});

test('without a freeze-up nothing is told, and nothing fails', async () => {
	const { ctx } = await contextWithService('2027-01-10T12:20:00Z');
	const { id } = await inventedLake(ctx);
	await makeFeed(ctx, id, 'changes');
	expect(await lookAt(ctx, id)).toBe(true);
	expect(await toldMessages(ctx, id, 10)).toEqual([]);
});

test('what is told is in the units that were chosen, and names the site where there are several', async () => {
	const { ctx, id, service, refresh, look } = await lake();
	await updateTellingOf(ctx, id, { units: { measure: 'imperial', mass: 'lb' } });
	await createSite(ctx, id, { name: 'Narrow bay', kind: 'bay', parent: null });
	service.answer = frost(() => ({ precipitation_kg_m2: 0.6 }));
	await refresh('2027-01-11T12:20:00Z');
	expect(await look('2027-01-11T13:00:00Z')).toEqual(['floodAhead']);
	const hole = readingInput.parse({
		on: '2027-01-11',
		kind: 'measured',
		holes: [{ total_m: 0.254 }]
	});
	await addReadings(ctx, id, 'narrow-bay', [hole]);
	await look('2027-01-11T13:05:00Z');
	const [reading, flood] = await toldMessages(ctx, id, 2);
	expect(flood?.title).toMatch(/^Main, Flood ahead/);
	expect(flood?.text).toMatch(/About [\d.]+ in more snow/);
	expect(reading?.title).toBe('Narrow bay, Reading of 11 Jan, 10 in: a drilled hole decides');
});

test('a look by a clock that was ahead keeps nobody from looking again', async () => {
	const { ctx, id, setNow } = await lake();
	setNow('2027-01-10T22:00:00Z');
	expect(await lookAt(ctx, id)).toBe(true);
	expect(await lookAt(ctx, id)).toBe(false);
	setNow('2027-01-10T13:00:00Z');
	expect(await lookAt(ctx, id)).toBe(true);
});
