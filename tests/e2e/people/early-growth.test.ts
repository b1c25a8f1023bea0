import { afterAll, beforeAll, expect, test } from 'vitest';
import type { EarlyIce } from '#lib/model/early/early-ice.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import { browserPath } from '../../support/browser.ts';
import { startingAt } from '../../support/clock.ts';
import { ask, arrive, makeLake, PLACES, recordFreezeUp, told } from '../../support/first-steps.ts';
import { localWeather, type LocalWeather } from '../../support/local-weather.ts';
import { cm, dayOf } from '../../support/person-winter.ts';
import { story } from '../../support/story.ts';

/** A Tuesday; the lake, made here, froze over a week ago. */
const NOW = '2026-12-08T15:00:00Z';
const FROZE_OVER = '2026-12-01';
const FROST_h = Date.parse(FROZE_OVER) / 3_600_000;

const app = story({
	...startingAt(NOW),
	FROSTLEDGER_REFRESH: 'off',
	FROSTLEDGER_SOURCE_HOSTS: '127.0.0.1'
});
let service: LocalWeather;

beforeAll(async () => {
	const started_ms = Date.now();
	service = await localWeather(0, {
		// Autumn cools from 8 °C to none, then frost comes and stays.
		air_degC: (hour) =>
			(hour < FROST_h ? Math.max(0, (FROST_h - hour) / 60) : -8) +
			2.5 * Math.cos((Math.PI * (hour - 17)) / 12),
		now_ms: () => Date.parse(NOW) + Date.now() - started_ms
	});
});
afterAll(() => service.close());

test.runIf(browserPath).each(PLACES)(
	'watching early growth from home, from nothing to whether a test is worth the trip, $name',
	async (place) => {
		const person = await arrive(app, place, NOW);
		const { page, hands } = person;
		const id = await makeLake(person, {
			name: `First Ice ${place.screen.viewport.width}`,
			latitude: '58.4',
			longitude: '-38.2',
			area: '0.8',
			depth: '4'
		});

		// Its weather, with a forecast, from a service that is known by its address only.
		await hands.press(page.getByRole('link', { name: 'Its weather' }));
		await hands.press(page.getByRole('link', { name: 'Set up a source by its address' }));
		await hands.type(page.getByLabel('Address', { exact: true }), service.address);
		await hands.press(page.getByRole('button', { name: 'Try it' }));
		await page.getByRole('heading', { name: 'It was understood' }).waitFor();
		await hands.type(page.getByLabel('Name', { exact: true }), `Ridge of ${id}`);
		await hands.type(page.getByLabel('Whose data they are'), 'Weather by Ridge Station');
		await hands.press(page.getByLabel('Use it for the lake above'));
		await hands.press(page.getByRole('button', { name: 'Store the source' }));
		await page.getByText(/ is in use here\.$/).waitFor();
		await page.getByText(/issued 3 hours ago, up to/).waitFor();

		// Before it is known to have frozen over: how likely that is, and how cold it has been.
		const before = await app.ask<EarlyIce>('GET', `/lakes/${id}/early-ice`);
		expect(before.phase).toBe('beforeFreezeUp');
		expect(await ask(person, 'Early ice', /early-ice/)).toMatch(/8 Dec|skim|froz/);
		const cooled = await told(person, 'Cooling so far');
		expect(cooled).toContain(`${before.cooling?.week_degC?.toFixed(0).replace('-', '−')} °C`);

		await hands.press(page.getByRole('link', { name: 'Record the freeze-up' }));
		await recordFreezeUp(person, FROZE_OVER);
		await hands.press(page.getByRole('link', { name: 'See the lake' }));
		await page.getByRole('heading', { level: 1, name: /^About \d+ cm of ice/ }).waitFor();

		const answer = await ask(person, 'Early ice', /early-ice/);
		const { growth } = await app.ask<EarlyIce>('GET', `/lakes/${id}/early-ice`);
		const { days } = await app.ask<Forecast>('GET', `/lakes/${id}/forecast`);
		if (!growth?.test || !growth.forecast) throw new Error('nothing is told of growth');

		// When a test with a chisel is worth the trip, and what a hole would have to show.
		const { on, lowest_m } = growth.test;
		expect(on).not.toBeNull();
		expect(answer).toContain('worth the trip');
		expect(answer).toContain(on && on > '2026-12-08' ? dayOf(on) : `${cm(lowest_m)} cm`);
		const main = (await page.locator('main').innerText()).replace(/\s+/g, ' ');
		const now = days.find(({ on }) => on === '2026-12-07')?.total_m;
		expect(main).toContain(`About ${cm(now?.p50)} cm of ice`);
		expect(main).toMatch(/differs|varies/i);

		// The chance for the coming weekend, the frost that is lacking, what snow would do.
		const loads = await told(person, 'The first loads');
		const onFoot = growth.loads.find(({ id }) => id === 'on-foot');
		const [saturday] = onFoot?.weekend ?? [];
		expect(saturday?.on).toBe('2026-12-12');
		const tenths = Math.floor(10 * (saturday?.pThickness ?? Number.NaN));
		expect(loads).toContain(`Sat 12 Dec: ${tenths < 1 ? 'under 1' : tenths} in 10`);
		const { estimate = Number.NaN, bound = Number.NaN } = onFoot?.frostToGo_degCd ?? {};
		expect(bound).toBeGreaterThan(estimate);
		expect(loads).toContain(`${Math.ceil(bound)} °C·d`);
		expect(loads).toContain(
			`the forecast brings ${Math.floor(growth.forecast.frost_degCd)} °C·d by 17 Dec`
		);
		const snow = await told(person, 'What snow would do');
		expect(snow).toContain(`${cm(growth.snow?.with.p50_m)} cm of ice are estimated for 18 Dec`);
		expect(await told(person, 'What a test has to show')).toContain('10 cm of clear ice');
	}
);
