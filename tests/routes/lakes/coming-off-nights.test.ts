import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { enqueueDue } from '../../../src/lib/server/services/refresh/schedule.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { load } from '../../../src/routes/lakes/[lake]/coming-off/+page.server.ts';
import Page from '../../../src/routes/lakes/[lake]/coming-off/+page.svelte';
import { formEvent } from '../../support/form-event.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import { contextWithService, measuredAsColdAs, useSource } from '../../support/invented-source.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const NOW = '2027-01-28T12:20:00Z';
const METRIC = { measure: 'metric', mass: 'kg' } as const;

/** Frost to the day after today, then a thaw. */
async function lake() {
	const cold = measuredAsColdAs(-6);
	const { ctx } = await contextWithService(NOW, async (source, ask) => {
		const answer = await cold(source, ask);
		if (ask.part === 'history') return answer;
		const thaws_s = Date.parse('2027-01-30T00:00:00Z') / 1000;
		const hours = answer.hours.map((hour) =>
			hour.at_s < thaws_s ? hour : { ...hour, air_degC: 3 }
		);
		return { ...answer, hours };
	});
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 117)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await useSource(ctx, id);
	await enqueueDue(ctx);
	await whenIdle(ctx);
	return { ctx, id };
}

test('with a stored forecast the nights that freeze again are counted and listed, those past apart', async () => {
	const { ctx, id } = await lake();
	const event = formEvent({ context: ctx, params: { lake: id } });
	const data = await load(event);
	const props = { data: { ...data, sites: [], units: METRIC }, params: { lake: id }, form: null };
	const page = render(Page, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
	expect(page).toMatch(/2 of the next 7 days have six hours of frost or more/);
	expect(page).toContain('Frost day by day, the nights included');
	expect(page).toMatch(/27 Jan, observed yes −8 °C 24 h 6 °C·d 0 °C·d/);
	expect(page).toMatch(/29 Jan, forecast yes −8 °C 24 h 6 °C·d 0 °C·d/);
	expect(page).toMatch(/30 Jan, forecast no 3 °C 0 h 0 °C·d 3 °C·d/);
	expect(page).not.toMatch(/NaN|undefined|\bnull\b/);
});
