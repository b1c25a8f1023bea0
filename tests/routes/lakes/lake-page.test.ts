import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import { lakePage } from '../../../src/routes/lakes/[lake]/lake-page.ts';
import { load } from '../../../src/routes/lakes/[lake]/+page.server.ts';
import LakePage from '../../../src/routes/lakes/[lake]/+page.svelte';
import { formEvent } from '../../support/form-event.ts';
import { MEMBERS } from '#lib/model/site-estimate.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import {
	inventedForecast,
	inventedLoad,
	inventedOutlook,
	inventedView
} from '../../support/invented-view.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

function shown(changes: Partial<LakeView> = {}, units: object = METRIC): string {
	const data = { units, page: lakePage(inventedView(changes)) };
	const props = { data, params: { lake: 'pinder-lake' }, form: null };
	return render(LakePage, { props: props as never }).body;
}

/** What a person reads: tags, styles and gaps taken out. */
function text(html: string): string {
	return html
		.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

test('the answer comes first, before cautions, loads and pictures', () => {
	const page = text(shown());
	const order = [
		'About 41 cm of ice on 10 Feb 2027, but one hole in ten may have shown less than 31.',
		'Before anybody goes',
		'What the charts ask for',
		'The ice column on 10 Feb',
		'Thickness through the winter',
		'Degree-days since freeze-up',
		'Snow on the ice'
	].map((words) => page.indexOf(words));
	expect(order).toEqual(order.toSorted((a, b) => a - b));
	expect(order[0]).toBeGreaterThan(-1);
});

test('there is one first heading and no level is left out', () => {
	const levels = [...shown().matchAll(/<h([1-6])/g)].map((hit) => Number(hit[1]));
	expect(levels.filter((level) => level === 1)).toHaveLength(1);
	levels.slice(1).forEach((level, index) => {
		expect(level - (levels[index] ?? 0)).toBeLessThanOrEqual(1);
	});
});

test('a load with a trailer has the mass of both', () => {
	const loads = [inventedLoad({ name: 'Pickup and trailer', mass_kg: 2500, counted_kg: 3300 })];
	const outlook = inventedOutlook({ forecast: inventedForecast({ loads }) });
	expect(text(shown({ outlook }))).toContain('Pickup and trailer 3,300 kg');
});

test('it tells when the answer is of, and how old weather and reading are', () => {
	const page = text(shown());
	expect(page).toContain('10 Feb 2027, 2 days ago');
	expect(page).toContain('3 days ago (9 Feb)');
	expect(page).toContain('3 days ago (9 Feb), narrow bay, 1 hole');
});

test('each load shows both charts, its own bound and its status with the reason', () => {
	const page = text(shown());
	expect(page).toContain('Snowmobile 400 kg asks 25 cm Expected, not drilled common 18 cm');
	expect(page).toContain('Withheld: stay off common 20 cm');
	expect(page).toContain('Nine spots in ten count as 27 cm or more.');
	expect(page).toContain('the thinnest of five spots on the way counts as 27 cm or more.');
	expect(page).toContain('Three holes on 9 February support it');
	expect(page).toContain('Truck with shelter, parked 6,000 kg asks engineer');
	expect(page).toContain('New Hampshire Fish and Game');
});

test('with the common charts deciding, the strict stand beside them', () => {
	const lake = { ...inventedView().lake, chartSet: 'common' as const };
	const forecast = inventedForecast({
		loads: [inventedLoad({ required_m: 0.1, requiredOther_m: 0.15 })]
	});
	const page = text(shown({ lake, outlook: inventedOutlook({ forecast }) }));
	expect(page).toContain('On foot, alone 100 kg asks 10 cm Reached, drilled strict 15 cm');
});

test('the numbers of each picture are on the page as a table', () => {
	const page = shown();
	for (const caption of [
		'Layers of the ice column on 10 Feb, from the top down',
		'Ice thickness week by week',
		'Readings of this winter',
		'Frost, thaw and snow week by week'
	]) {
		expect(page).toContain(`${caption}</caption>`);
	}
	expect(page.match(/<noscript>/g)).toHaveLength(3);
});

test('inches and pounds reach every number', () => {
	// What the model says in words has its units from elsewhere: it is left out here.
	const loads = inventedForecast().loads.map((load) => ({ ...load, reason: '', rules: [] }));
	const outlook = inventedOutlook({ forecast: inventedForecast({ loads, cautions: [] }) });
	const page = text(shown({ outlook }, IMPERIAL));
	expect(page).toContain(
		'About 16 in of ice on 10 Feb 2027, but one hole in ten may have shown less than 12.'
	);
	expect(page).toContain('Snowmobile 882 lb asks 10 in Expected, not drilled common 7.5 in');
	expect(page).not.toMatch(/\d (cm|kg|°C)/);
});

test('an invented lake is marked, and its fixed today is told', () => {
	const page = text(shown());
	expect(page).toContain('Pinder Lake (invented)');
	expect(page).toContain('its today stays 12 Feb 2027');
	const real = text(shown({ lake: { ...inventedView().lake, isInvented: false } }));
	expect(real).not.toContain('invented');
});

test('unknown snow is said beside the answer and beside the picture', () => {
	const page = text(shown({ outlook: inventedOutlook({ snowKnown: false }) }));
	expect(page).toContain('The snow on it is not known.');
	expect(page).toContain('not a record');
});

test.each([
	['noWeather', 'Add its weather', '/lakes/pinder-lake/weather'],
	['noFreezeUp', 'Record freeze-up', '/lakes/pinder-lake/winter?winter=2026-27'],
	['beforeFreezeUp', 'Correct freeze-up', '/lakes/pinder-lake/winter?winter=2026-27']
] as const)('where nothing can be estimated (%s) the next step is named', (status, words, href) => {
	const page = shown({ status, outlook: null, readings: [] });
	expect(text(page)).toContain(words);
	expect(page).toContain(`href="${href}"`);
	expect(page).not.toContain('cm of ice');
});

test('after ice-out the answer is open water', () => {
	const record = { ...inventedView().record, iceOutOn: '2027-02-08' };
	const page = text(shown({ record }));
	expect(page).toContain('Open water: ice-out was on 8 Feb 2027.');
	expect(page).not.toContain('cm of ice');
});

test('ice that went after the last weather is open water too, without a thickness of before', () => {
	const record = { ...inventedView().record, iceOutOn: '2027-02-12' };
	const page = text(shown({ record }));
	expect(page).toContain('Open water: ice-out was on 12 Feb 2027.');
	expect(page).not.toContain('cm of ice');
	const past = text(shown({ record, isPresent: false }));
	expect(past).not.toContain('Open water');
});

test('a day past the weather is not answered', () => {
	const page = text(shown({ asOf: '2027-02-14' }));
	expect(page).toContain('Not known for 14 Feb 2027: the weather ends before that day.');
});

test('the page never calls the ice by a permission', () => {
	expect(text(shown())).not.toMatch(/\bsafe|unsafe|safely\b/i);
});

test('what is sent to the browser leaves out what it does not draw', () => {
	const { ice } = lakePage(inventedView());
	expect(ice?.days).toHaveLength(76);
	expect(ice?.loads.every((load) => !('days' in load))).toBe(true);
	expect(JSON.stringify(ice).length).toBeLessThan(40_000);
});

test('a new lake answers with its first step, through the real services', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const data = await load(formEvent({ context, params: { lake: id } }));
	expect(data).toMatchObject({ page: { status: 'noWeather', ice: null, today: '2027-02-10' } });
});

test('a lake that does not exist is not found', async () => {
	const context = await freshContext();
	await expect(load(formEvent({ context, params: { lake: 'none' } }))).rejects.toMatchObject({
		status: 404
	});
});

test('a winter or day that is none is left to the default', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const query = 'winter=2026-99&asOf=yesterday';
	const data = await load(formEvent({ context, params: { lake: id }, query }));
	expect(data).toMatchObject({ page: { winter: '2026-27' } });
});

test('what may come is told with its doubt, after what is', () => {
	const forecast = inventedFuture();
	const view = {
		outlook: inventedOutlook({ forecast }),
		asOf: forecast.asOf,
		today: forecast.asOf
	};
	const page = text(shown(view));
	expect(page).toContain('The winter strip: when the ice meets the charts');
	expect(page).toContain('until 31 Mar');
	expect(page).toContain('From there to 10 May by forecast, then past winters');
	expect(page).not.toContain('Nothing is drawn past the last weather');
	expect(page).toMatch(/0 °C·d of thaw since freeze-up/);
});

test('when the ice goes and what past winters taught are told as sentences', () => {
	const iceOut = { p10: '2027-04-12', p50: '2027-04-20', p90: '2027-04-28' };
	const memoryText = '2 past winters with 9 readings: this lake grows slower than others.';
	const forecast = inventedFuture({ iceOut, memoryText });
	const climate = { pastWinters: 0, hasUsual: true, endsEarly: false };
	const view = { outlook: inventedOutlook({ forecast, climate }), asOf: forecast.asOf };
	const page = text(shown(view));
	expect(page).toContain('in eight cases of ten between 12 Apr and 28 Apr.');
	expect(page).toContain('No earlier winter’s weather is stored here');
	expect(page).toContain('usual climate from here');
	expect(page).not.toContain('past winters from here');
	expect(page).toContain('Taught by 2 past winters with 9 readings: this lake grows slower');
	expect(text(shown())).not.toContain('Ice-out:');
});

test('something can be tried out where days to come are told, and only there', () => {
	const forecast = inventedFuture();
	const view = { outlook: inventedOutlook({ forecast }), asOf: forecast.asOf };
	expect(text(shown(view))).toContain('What if?');
	expect(lakePage(inventedView(view)).ice?.whatIf?.members).toBe(MEMBERS);
	expect(text(shown())).not.toContain('What if?');
});

test('the page of a lake with weather tells days to come, to a week past its ice', async () => {
	const { ctx, id } = await drilledLake();
	const data = await load(formEvent({ context: ctx, params: { lake: id } }));
	const { ice } = (data as { page: ReturnType<typeof lakePage> }).page;
	expect(ice?.coming.length).toBeGreaterThan(60);
	expect(ice?.climate).toEqual({ pastWinters: 0, hasUsual: true, endsEarly: false });
	expect(ice?.loads[0]?.until).toMatch(/^2027-0[3-6]/);
	expect(ice?.strip?.to).toBe(ice?.coming.at(-1)?.on);
});

test('without chances there is no strip', () => {
	expect(text(shown())).not.toContain('The winter strip');
	expect(text(shown())).toContain('Nothing is drawn past the last weather');
});
