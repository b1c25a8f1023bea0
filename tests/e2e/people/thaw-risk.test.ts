import { expect, test } from 'vitest';
import type { Forecast } from '#lib/model/forecast.ts';
import type { LastDays } from '#lib/model/leaving/last-days.ts';
import type { Leaving } from '#lib/model/leaving/leaving.ts';
import type { OffBy } from '#lib/model/leaving/off-by.ts';
import { browserPath } from '../../support/browser.ts';
import { startingAt } from '../../support/clock.ts';
import {
	answerOf,
	arrive,
	ask,
	bringWeather,
	makeLake,
	PLACES,
	recordFreezeUp,
	told
} from '../../support/first-steps.ts';
import { asked_cm, dayOf, weatherFile } from '../../support/person-winter.ts';
import { story } from '../../support/story.ts';

/** Late in the winter: frost held until a week ago, since then the afternoons thaw. */
const NOW = '2027-03-20T15:00:00Z';
const TODAY = '2027-03-20';
const FROZE_OVER = '2026-12-01';
const MILD_SINCE = '2027-03-13';
/** As people type them: the local rule, and how long the shelter takes to be dug out. */
const REMOVAL = '2027-03-29';
const LEAD_d = 12;
const SHELTER = 'Truck with wheeled shelter, parked';

const app = story({ ...startingAt(NOW), FROSTLEDGER_REFRESH: 'off' });

const WEATHER = weatherFile('2026-11-01', TODAY, (on, index) => {
	if (on < FROZE_OVER) return { min_degC: -2, max_degC: 4, water_mm: 0 };
	if (on < MILD_SINCE) return { min_degC: -17, max_degC: -5, water_mm: index % 10 === 5 ? 1 : 0 };
	return { min_degC: -7, max_degC: 2, water_mm: 0 };
});

type Told = Omit<Forecast, 'leaving'> & {
	leaving: Omit<Leaving, 'loads'> & { loads: (LastDays & { id: string; offBy: OffBy })[] };
};

test.runIf(browserPath).each(PLACES)(
	'thaw risk late in the season, from nothing to the day to have everything off, $name',
	async (place) => {
		const person = await arrive(app, place, NOW);
		const { page, hands } = person;
		const id = await makeLake(person, {
			name: `Late Water ${place.screen.viewport.width}`,
			latitude: '58.4',
			longitude: '-38.2',
			area: '3',
			depth: '6'
		});
		await recordFreezeUp(person, FROZE_OVER);
		await bringWeather(person, WEATHER);
		await hands.press(page.getByRole('link', { name: 'See the lake' }));
		await page.getByRole('heading', { level: 1, name: /cm of ice/ }).waitFor();

		// What the warm hours have done, and what strength is left.
		expect(await ask(person, 'Coming off', /coming-off/)).toMatch(
			/^By the ice alone everything off today/
		);
		const forecast = await leavingOf(id);
		const { leaving, loads, iceOut } = forecast;
		expect(leaving.strength.state).toBe('weakened');
		const strength = await told(person, 'How strong the ice still is');
		expect(strength).toMatch(/^How strong the ice still is Weakened by warm hours/);
		expect(strength).toContain(`${Math.ceil(leaving.warmLast_h ?? 0)} h`);
		expect(leaving.warmLast_h).toBeGreaterThanOrEqual(6);
		expect(strength).toContain(`${Math.round(leaving.thawSincePeak_degCd)} °C·d`);
		expect(strength).toContain(`since ${dayOf(leaving.peakOn)}`);
		expect(leaving.isSunOnBareIce).toBe(true);
		expect(strength).toContain('Sun on bare ice yes');
		const nights = await told(person, 'Do the nights freeze again?');
		for (const night of leaving.nights) expect(nights).toContain(dayOf(night.on));

		// Until when each load is met at the warm end, those alike together, and when the ice goes.
		const off = await told(person, 'By when each load has to be off');
		const onFoot = loads.find(({ id }) => id === 'on-foot');
		expect(onFoot?.rules.map(({ code }) => code)).toContain('warmSpell');
		expect(off).toContain(`One person with gear asks ${asked_cm(onFoot?.required_m)} cm now`);
		const days = leaving.loads.find(({ id }) => id === 'on-foot');
		if (days?.median.kind !== 'until' || days.warmEnd.kind !== 'until')
			throw new Error('no last day is told');
		expect(off).toContain(
			`Thick enough to ${dayOf(days.warmEnd.on)} in nine cases of ten, to ${dayOf(days.median.on)} as likely as not.`
		);
		expect(days.warmEnd.on < days.median.on).toBe(true);
		expect(off).toMatch(/Snowmobile and rider, ATV and rider, Side-by-side asks/);
		expect(off).toContain(`${SHELTER} for an engineer`);
		expect(off).toContain('Begin now: 7 days to free it, our choice.');
		expect(off).toContain(`between ${dayOf(iceOut?.p10)} and ${dayOf(iceOut?.p90)}`);

		// A slip is refused at its field, and nothing that was typed is lost.
		const removal = page.getByRole('form', { name: 'The local removal date' });
		await hands.typeDay(removal.getByLabel(/^Everything off by/), REMOVAL);
		await hands.press(removal.locator('summary'));
		const lead = removal.getByLabel(new RegExp(`^${SHELTER}`));
		await hands.type(lead, 'a week');
		await hands.press(removal.getByRole('button', { name: 'Store the days' }));
		await removal.getByRole('alert').waitFor();
		expect(await lead.inputValue()).toBe('a week');
		expect(await removal.getByLabel(/^Everything off by/).inputValue()).toBe(REMOVAL);
		await hands.type(lead, String(LEAD_d));
		await hands.press(removal.getByRole('button', { name: 'Store the days' }));
		await page.getByText('Stored.', { exact: true }).waitFor();

		// The ice is sooner than the local rule: it is said first, and the rule right after it.
		expect(await answerOf(page)).toMatch(/^By the ice alone everything off today/);
		await page.getByText('The local removal date is 29 Mar, in 9 days.').waitFor();
		expect(await told(person, 'By when each load has to be off')).toContain(
			`Begin now: ${LEAD_d} days to free it.`
		);

		// Ten days earlier, in frost: an earlier rule comes first, and the view stays one of that day.
		const before = '2027-03-10';
		await hands.typeDay(page.getByLabel('As of'), before);
		await hands.press(page.getByRole('button', { name: 'Show', exact: true }));
		await page.waitForURL(new RegExp(`asOf=${before}`));
		await hands.typeDay(removal.getByLabel(/^Everything off by/), '2027-03-15');
		await hands.press(removal.getByRole('button', { name: 'Store the days' }));
		await page.waitForURL(new RegExp(`asOf=${before}.*stored`));
		expect(await answerOf(page)).toBe(
			'Everything off by 15 Mar, in 5 days: the local removal date.'
		);
		const then = await leavingOf(id, before);
		const shelter = then.leaving.loads.find(({ id }) => id === 'truck-with-shelter');
		expect(shelter?.offBy).toEqual({
			on: '2027-03-15',
			reason: 'removalDate',
			beginOn: '2027-03-03',
			lead_d: LEAD_d
		});
		const first = await told(person, 'By when each load has to be off');
		expect(first).toContain(
			`Off by 15 Mar, in 5 days: the local removal date. Begin now: ${LEAD_d} days to free it.`
		);
		expect(first).toContain('Off by 15 Mar, in 5 days: the local removal date. Thick enough');
	}
);

function leavingOf(id: string, asOf?: string): Promise<Told> {
	const view = asOf === undefined ? '' : `asOf=${asOf}&`;
	return app.ask<Told>('GET', `/lakes/${id}/forecast?${view}until=2027-06-30`);
}
