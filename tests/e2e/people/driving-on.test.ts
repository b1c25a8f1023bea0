import { expect, test } from 'vitest';
import type { Forecast } from '#lib/model/forecast.ts';
import { browserPath } from '../../support/browser.ts';
import { startingAt } from '../../support/clock.ts';
import {
	arrive,
	ask,
	bringWeather,
	makeLake,
	PLACES,
	recordFreezeUp,
	told
} from '../../support/first-steps.ts';
import { asked_cm, cm, dayOf, weatherFile } from '../../support/person-winter.ts';
import { story } from '../../support/story.ts';

/** The lake, made here, froze over four weeks ago; its weather ends yesterday. */
const NOW = '2027-01-08T15:00:00Z';
const TODAY = '2027-01-08';
const FROZE_OVER = '2026-12-10';

const app = story({ ...startingAt(NOW), FROSTLEDGER_REFRESH: 'off' });

const WEATHER = weatherFile('2026-11-01', TODAY, (on, index) => {
	const mean_degC = on < FROZE_OVER ? 1 : -8 + 4 * Math.sin(index / 6);
	return {
		min_degC: mean_degC - 4,
		max_degC: mean_degC + 4,
		water_mm: index % 8 === 5 ? 1.2 : 0
	};
});

const HUT = { name: 'Truck with our hut', mass_kg: 1200, parked_h: 30 };
const SNOWMOBILE = 'Snowmobile and rider';

test.runIf(browserPath).each(PLACES)(
	'timing when to drive on, from nothing to the day for their own loads, $name',
	async (place) => {
		const person = await arrive(app, place, NOW);
		const { page, hands } = person;
		const id = await makeLake(person, {
			name: `Hut Bay ${place.screen.viewport.width}`,
			latitude: '58.4',
			longitude: '-38.2',
			area: '3',
			depth: '6'
		});
		await recordFreezeUp(person, FROZE_OVER);
		await bringWeather(person, WEATHER);
		await hands.press(page.getByRole('link', { name: 'See the lake' }));
		await page.getByRole('heading', { level: 1, name: /^About \d+ cm of ice/ }).waitFor();

		// What goes onto it: two of the ready-made loads, and one of their own.
		await ask(person, 'Going on', /going-on/);
		await hands.press(page.getByRole('link', { name: /Choose the loads/ }));
		const ticks = page.getByRole('group', { name: 'What goes onto this lake' });
		await ticks.waitFor();
		for (const tick of await ticks.getByRole('checkbox').all()) {
			const label = await tick.evaluate((node) => node.closest('label')?.textContent ?? '');
			const isWanted = label.includes(SNOWMOBILE) || label.includes('One person with gear');
			if ((await tick.isChecked()) !== isWanted) await hands.press(tick);
		}
		await hands.press(page.getByRole('button', { name: 'Show these' }));
		await page.getByText('Stored.', { exact: true }).waitFor();
		await hands.type(page.getByLabel('Name', { exact: true }), HUT.name);
		await hands.type(page.getByLabel(/^Mass/), String(HUT.mass_kg));
		await hands.type(page.getByLabel(/^Stands in one place/), String(HUT.parked_h));
		await hands.press(page.getByRole('button', { name: 'Add it' }));
		await page.getByRole('link', { name: `Edit ${HUT.name}` }).waitFor();

		const answer = await ask(person, 'Going on', /going-on/);
		const forecast = await app.ask<Forecast>('GET', `/lakes/${id}/forecast?until=2027-06-01`);
		const hut = forecast.loads.find(({ name }) => name === HUT.name);
		const snowmobile = forecast.loads.find(({ name }) => name === SNOWMOBILE);
		if (!hut?.parts || !snowmobile) throw new Error('a load is missing');

		// From which day, how sure, and today's chance.
		const main = (await page.locator('main').innerText()).replace(/\s+/g, ' ');
		const { expectedFrom, likelyFrom } = snowmobile;
		expect(expectedFrom && expectedFrom < TODAY && likelyFrom && likelyFrom > TODAY).toBe(true);
		expect(answer).toBe(
			`Next, snowmobile: expected since ${dayOf(expectedFrom)}, likely from ${dayOf(likelyFrom)}.`
		);
		const onDay = snowmobile.days.find(({ on }) => on === forecast.asOf);
		const tenths = Math.floor(10 * (onDay?.pThickness ?? Number.NaN));
		expect(tenths).toBeGreaterThan(4);
		expect(main).toContain(`On 7 Jan the chance is ${tenths} in 10.`);
		expect(main).toContain('Met at the lower bound on 7 Jan but not drilled: on foot.');

		// Both sets of charts, the formula and the freeboard, and which of them decides.
		await hands.press(page.locator('summary', { hasText: HUT.name }));
		const opened = page.locator('details[open]', { hasText: HUT.name });
		await opened.getByText('Held against').waitFor();
		const sum = (await opened.innerText()).replace(/\s+/g, ' ');
		expect(sum).toContain(`asks ${asked_cm(hut.required_m)} cm`);
		expect(sum).toMatch(new RegExp(`Held against ${cm(hut.bound_m)} cm: nine times in ten`));
		expect(sum).toContain(`Gold’s formula, 1,200 kg ${asked_cm(hut.parts.gold_m)} cm`);
		expect(hut.parts.decides).toBe('afloat');
		expect(sum).toContain(
			`To stay above the water for 30 hours ${asked_cm(hut.parts.afloat_m)} cm, which decides`
		);
		const lacks_m = (hut.required_m ?? 0) - (hut.bound_m ?? 0);
		expect(sum).toContain(`${asked_cm(lacks_m)} cm short of that.`);
		expect(sum).toContain(`Keep ${Math.ceil(hut.spacing_m ?? 0)} m from the next.`);

		// What would change it, by each load; and how fast over which water.
		const changes = await told(person, 'What would change it');
		expect(hut.expectedFrom).toBeNull();
		expect(changes).toMatch(new RegExp(`${HUT.name}.* not expected`));
		expect(changes).toMatch(/The snow cleared, and kept so.*expected from \d+ (Jan|Feb|Mar)/);
		expect(await told(person, 'On the way')).toContain('the mean depth here is 6 m');

		// The same days beside the strip, in words.
		expect(main).toContain(
			`${SNOWMOBILE}: asks 25 cm. Expected since ${dayOf(expectedFrom)}, likely from ${dayOf(likelyFrom)}`
		);
	}
);
