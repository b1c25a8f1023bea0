import { expect, test } from 'vitest';
import { lakeView, outlookInput } from '../../../src/lib/server/services/lake-view.ts';
import { getForecast } from '../../../src/lib/server/services/forecast.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { updateLake } from '../../../src/lib/server/services/lakes.ts';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { startRefresh } from '../../../src/lib/server/services/refresh/refresh-lake.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	measuredAsColdAs,
	orderOf,
	useSource,
	type Answer
} from '../../support/invented-source.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const NOW = '2027-01-20T12:20:00Z';

async function lake({ answer = measuredAsColdAs(-8) }: { answer?: Answer } = {}) {
	const { ctx, service, setNow } = await contextWithService(NOW, answer);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2026-12-10' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id);
	const refresh = async () => {
		await startRefresh(ctx, id);
		await whenIdle(ctx);
	};
	return { ctx, id, service, setNow, refresh };
}

test('a refreshed lake tells the ages of its weather in hours, and whose it is', async () => {
	const { ctx, id, setNow, refresh } = await lake();
	await refresh();
	setNow('2027-01-20T17:00:00Z');
	const { asOf, upkeep } = await lakeView(ctx, id);
	expect(asOf).toBe('2027-01-19');
	expect(upkeep).toMatchObject({
		forecastIssuedAt: new Date(NOW),
		forecastAge_h: 4,
		isForecastUsed: true,
		forecastTo: '2027-01-30',
		lastObservedAt: new Date('2027-01-20T12:00:00Z'),
		lastObservedAge_h: 5,
		sentences: []
	});
	expect(upkeep.attributions).toEqual([
		{
			source: 'invented-weather',
			name: 'Invented Weather',
			text: 'Weather by Invented Weather',
			url: null,
			licence: null
		}
	]);
});

test('the forecast reaches the estimate as forecast days, then past winters go on', async () => {
	const { ctx, id, refresh } = await lake();
	await refresh();
	const { outlook } = await lakeView(ctx, id, { until: '2027-02-05' });
	const sources = new Map(outlook?.forecast.days.map(({ on, source }) => [on, source]));
	expect(sources.get('2027-01-19')).toBe('observed');
	expect(sources.get('2027-01-20')).toBe('forecast');
	expect(sources.get('2027-01-29')).toBe('forecast');
	expect(sources.get('2027-02-04')).toBe('climate');
	const input = await outlookInput(ctx, id, { until: '2027-02-05' });
	expect(input.forecastIssuedOn).toBe('2027-01-20');
	expect(input.weather.find(({ on }) => on === '2027-01-20')).toMatchObject({
		source: 'forecast',
		air_degC: expect.closeTo(-8, 5)
	});
});

test('today is told from what has been measured of it, and the forecast for the rest', async () => {
	const { ctx, id, service, refresh } = await lake();
	const measured = service.answer;
	const warm = measuredAsColdAs(4);
	service.answer = (source, ask) => (ask.part === 'history' ? measured : warm)(source, ask);
	await refresh();
	const { weather } = await outlookInput(ctx, id, { until: '2027-02-05' });
	const today = weather.find(({ on }) => on === '2027-01-20');
	// Twelve hours about -8 and twelve about +4.
	expect(today?.air_degC).toBeGreaterThan(-4);
	expect(today?.air_degC).toBeLessThan(0);
	expect(today?.aboveFreezing_h).toBe(12);
});

test('warm hours seen of a day stand against a forecast of frost for it', async () => {
	const { ctx, id, refresh, setNow } = await lake();
	await refresh();
	const hours = Array.from({ length: 10 }, (_, hour) => `2027-01-20T0${hour}:00Z,3`);
	const file = `time,temperature_c\n${hours.join('\n')}\n`;
	await importWeather(ctx, id, inPieces(file));
	setNow('2027-01-20T13:00:00Z');
	const rulesOn = async (options: { asOf?: string }) =>
		(await getForecast(ctx, id, options)).loads[0]?.rules.map(({ code }) => code);
	expect(await rulesOn({})).toContain('warmSpell');
	expect(await rulesOn({ asOf: '2027-01-20' })).toContain('warmSpell');
	const { weather } = await outlookInput(ctx, id, { asOf: '2027-01-20' });
	const today = weather.find(({ on }) => on === '2027-01-20');
	expect(today).toMatchObject({ source: 'forecast', aboveFreezing_h: 10 });
});

test('a stale forecast is dropped and said, and comes back with the next one', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	await refresh();
	service.answer = () =>
		answered({ outcome: 'failed', faults: [{ code: 'serverFailed', text: 'It failed.' }] });
	setNow('2027-01-21T13:00:00Z');
	await refresh();
	await refresh();
	const broken = await lakeView(ctx, id, { until: '2027-02-05' });
	expect(broken.upkeep).toMatchObject({
		forecastIssuedAt: new Date(NOW),
		forecastAge_h: 24,
		isForecastUsed: false,
		forecastTo: null,
		lastObservedAge_h: 25
	});
	expect(broken.upkeep.sentences.map(({ code }) => code)).toEqual(['forecastOld', 'sourceFails']);
	const told = broken.outlook?.forecast.days ?? [];
	expect(told.find(({ on }) => on === '2027-01-22')?.source).toBe('climate');
	expect((await getForecast(ctx, id, {})).cautions.map(({ code }) => code)).toContain(
		'forecastOld'
	);
	service.answer = measuredAsColdAs(-8.1);
	await refresh();
	const { upkeep } = await lakeView(ctx, id, { until: '2027-02-05' });
	expect(upkeep).toMatchObject({ isForecastUsed: true, forecastAge_h: 0, sentences: [] });
});

test('observed days replace what was forecast for them', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	await refresh();
	service.answer = measuredAsColdAs(-15);
	setNow('2027-01-22T12:20:00Z');
	await refresh();
	const { weather } = await outlookInput(ctx, id, {});
	expect(weather.find(({ on }) => on === '2027-01-21')).toMatchObject({
		source: 'observed',
		air_degC: expect.closeTo(-15, 5)
	});
});

test('a past day is answered from the forecast issued by then', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	await refresh();
	const options = { asOf: '2027-01-20', until: '2027-02-05' };
	const before = await outlookInput(ctx, id, options);
	service.answer = measuredAsColdAs(-20);
	setNow('2027-01-25T12:20:00Z');
	await refresh();
	const after = await outlookInput(ctx, id, options);
	const ahead = (input: typeof before) => input.weather.filter(({ on }) => on > '2027-01-20');
	expect(ahead(after)).toEqual(ahead(before));
	expect(ahead(after)[0]).toMatchObject({ source: 'forecast', air_degC: expect.closeTo(-8, 5) });
});

test('a source without precipitation makes the snow unknown, and that is said', async () => {
	const dry: Answer = async (source, ask) => {
		const told = await measuredAsColdAs(-8)(source, ask);
		const hours = told.hours.map((hour) => ({ ...hour, precipitation_kg_m2: null }));
		return { ...told, hours, hasPrecipitation: false };
	};
	const { ctx, id, refresh } = await lake({ answer: dry });
	await refresh();
	const { upkeep, outlook } = await lakeView(ctx, id);
	expect(outlook?.snowKnown).toBe(false);
	expect(upkeep.sentences).toMatchObject([{ code: 'noPrecipitation' }]);
	expect(upkeep.sentences[0]?.text).toContain('Invented Weather gives no precipitation');
	expect(outlook?.forecast.loads.map(({ status }) => status)).not.toContain('expectedNotDrilled');
});

test('a lake of files alone tells the age of its last day, and no more', async () => {
	const { ctx } = await contextWithService(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await importWeather(ctx, id, inPieces(winterCsv('2026-12-01', 45)));
	expect((await lakeView(ctx, id)).upkeep).toEqual({
		forecastIssuedAt: null,
		forecastAge_h: null,
		isForecastUsed: false,
		forecastTo: null,
		lastObservedAt: new Date('2027-01-15T00:00:00Z'),
		lastObservedAge_h: 132,
		attributions: [],
		sentences: []
	});
});

test('a station that sticks makes the last observation older, not newer', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	await refresh();
	const before = service.answer;
	setNow('2027-01-22T12:20:00Z');
	service.answer = async (source, ask) => {
		const told = await before(source, ask);
		if (ask.part === 'forecast') return told;
		const from_s = Date.parse('2027-01-20T12:00:00Z') / 1000;
		const hours = told.hours.map((hour) =>
			hour.at_s >= from_s ? { ...hour, air_degC: -31.4 } : hour
		);
		return { ...told, hours };
	};
	await refresh();
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep.lastObservedAge_h).toBe(48);
});

test('a forecast for another place than the station’s is corrected by its own elevation', async () => {
	const { ctx, id, service, refresh } = await lake();
	await updateLake(ctx, id, { elevation_m: 100 });
	const at = (elevation_m: number) => ({
		name: null,
		latitude: 47.4,
		longitude: -38.2,
		elevation_m
	});
	const [past, ahead] = [
		measuredAsColdAs(-8, { station: at(500) }),
		measuredAsColdAs(-8, { station: at(300) })
	];
	service.answer = (source, ask) => (ask.part === 'history' ? past : ahead)(source, ask);
	await refresh();
	const { weather } = await outlookInput(ctx, id, { until: '2027-02-05' });
	const airOn = (on: string) => weather.find((day) => day.on === on)?.air_degC;
	expect(airOn('2027-01-15')).toBeCloseTo(-8 + 2.6, 5);
	expect(airOn('2027-01-25')).toBeCloseTo(-8 + 1.3, 5);
	await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: false });
	const off = (await outlookInput(ctx, id, { until: '2027-02-05' })).weather;
	expect(off.find(({ on }) => on === '2027-01-15')?.air_degC).toBeCloseTo(-8, 5);
	expect(off.find(({ on }) => on === '2027-01-25')?.air_degC).toBeCloseTo(-8, 5);
});

test('a station whose elevation is told beside a lake without one is a caution, and asked for', async () => {
	const station = { name: 'Ridge', latitude: null, longitude: null, elevation_m: 812.4 };
	const { ctx, id, refresh } = await lake({ answer: measuredAsColdAs(-8, { station }) });
	await refresh();
	const { upkeep } = await lakeView(ctx, id);
	expect(upkeep.sentences).toMatchObject([{ code: 'elevationUnknown' }]);
	expect(upkeep.sentences[0]?.text).toMatch(/812 m above the sea.*thinner than estimated/);
	const cautions = (await getForecast(ctx, id, {})).cautions.map(({ code }) => code);
	expect(cautions).toContain('elevationUnknown');
	await updateLake(ctx, id, { elevation_m: 300 });
	expect((await lakeView(ctx, id)).upkeep.sentences).toEqual([]);
	await updateLake(ctx, id, { elevation_m: null });
	await orderOf(ctx, id, ['csv', 'invented-weather'], { correctsElevation: false });
	expect((await lakeView(ctx, id)).upkeep.sentences).toEqual([]);
});

test('the elevation of the place that a forecast is made for counts where the station tells none', async () => {
	const { ctx, id, service, refresh } = await lake();
	const measured = service.answer;
	const station = { name: null, latitude: null, longitude: null, elevation_m: 500 };
	const ahead = measuredAsColdAs(-8, { station });
	service.answer = (source, ask) => (ask.part === 'history' ? measured : ahead)(source, ask);
	await refresh();
	expect((await lakeView(ctx, id)).upkeep.sentences).toMatchObject([{ code: 'elevationUnknown' }]);
});

test.each([
	[-13, 'Where Invented Weather tells nothing, Second Weather stands in'],
	[-3, 'The colder one is trusted more']
])(
	'a second source at %s °C beside one at −8 °C is told of with what it may cost',
	async (air_degC, harm) => {
		const { ctx, id, service, refresh } = await lake();
		const second = inventedSource({ id: 'second-weather', name: 'Second Weather' });
		await useSource(ctx, id, second, ['csv', 'invented-weather', 'second-weather']);
		const answers = [measuredAsColdAs(-8), measuredAsColdAs(air_degC)] as const;
		service.answer = (source, ask) => answers[source.id === 'second-weather' ? 1 : 0](source, ask);
		await refresh();
		const { upkeep } = await lakeView(ctx, id);
		const [told, ...others] = upkeep.sentences.filter(({ code }) => code === 'sourcesDiffer');
		expect(others).toEqual([]);
		expect(told?.text).toContain('By Second Weather it was 5 °C');
		expect(told?.text).toContain(harm);
	}
);

test('a third source is held against the most trusted alone', async () => {
	const { ctx, id, service, refresh } = await lake();
	const ids = ['second-weather', 'third-weather'];
	for (const each of ids)
		await useSource(ctx, id, inventedSource({ id: each, name: `The ${each}` }), [
			'csv',
			'invented-weather',
			...ids.slice(0, ids.indexOf(each) + 1)
		]);
	const cold = measuredAsColdAs(-13);
	const others = measuredAsColdAs(-8);
	service.answer = (source, ask) => (source.id === 'second-weather' ? cold : others)(source, ask);
	await refresh();
	const told = (await lakeView(ctx, id)).upkeep.sentences.map(({ text }) => text.slice(0, 32));
	expect(told).toEqual(['By The second-weather it was 5 °']);
});

test('sources that differ by little are not told of', async () => {
	const { ctx, id, service, refresh } = await lake();
	const second = inventedSource({ id: 'second-weather', name: 'Second Weather' });
	await useSource(ctx, id, second, ['csv', 'invented-weather', 'second-weather']);
	const answers = [measuredAsColdAs(-8), measuredAsColdAs(-11)] as const;
	service.answer = (source, ask) => answers[source.id === 'second-weather' ? 1 : 0](source, ask);
	await refresh();
	expect((await lakeView(ctx, id)).upkeep.sentences).toEqual([]);
});

test('the evening of a day that runs is told by its forecast, not by the hours of its morning', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	setNow('2027-01-20T20:10:00Z');
	const measured = measuredAsColdAs(-15);
	const expected = measuredAsColdAs(5);
	service.answer = (source, ask) => (ask.part === 'history' ? measured : expected)(source, ask);
	await refresh();
	const { weather } = await outlookInput(ctx, id);
	const today = weather.find(({ on }) => on === '2027-01-20');
	expect(today?.aboveFreezing_h).toBe(4);
	expect(today?.freezing_degCd).toBeLessThan(12.6);
	const { asOf, upkeep } = await lakeView(ctx, id);
	expect(asOf).toBe('2027-01-19');
	expect(upkeep.lastObservedAt).toEqual(new Date('2027-01-20T20:00:00Z'));
});

test('a day of hours counts once it is over, though its last hours have not come in', async () => {
	const { ctx, id, service, setNow, refresh } = await lake();
	setNow('2027-01-20T21:50:00Z');
	await refresh();
	setNow('2027-01-21T00:10:00Z');
	expect(service.asks.length).toBeGreaterThan(0);
	expect((await lakeView(ctx, id)).asOf).toBe('2027-01-20');
});

test.each([
	[-16, ['forecastTooCold']],
	[-10, []],
	[-1, []]
])(
	'a forecast of %s °C where it came to −8 °C for days is told of where it makes ice',
	async (air_degC, codes) => {
		const { ctx, id, service, setNow, refresh } = await lake();
		const measured = measuredAsColdAs(-8);
		// The very same figures again would be the same forecast.
		const expectedOn = (now: Date) => measuredAsColdAs(air_degC + now.getUTCDate() / 1000);
		service.answer = (source, ask) =>
			(ask.part === 'history' ? measured : expectedOn(ask.now))(source, ask);
		for (let day = 10; day <= 20; day += 1) {
			setNow(`2027-01-${day}T12:20:00Z`);
			await refresh();
		}
		const { sentences } = (await lakeView(ctx, id)).upkeep;
		expect(sentences.map(({ code }) => code)).toEqual(codes);
		if (codes.length > 0)
			expect(sentences[0]?.text).toMatch(
				/^Invented Weather has forecast the last \d+ days 8 °C colder/
			);
	}
);
