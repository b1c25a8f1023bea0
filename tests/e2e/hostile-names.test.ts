import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath } from '../support/browser.ts';
import { hostile } from '../support/hostile-texts.ts';
import { csvOf, FROZE_OVER, INVENTED_LAKE, PAST_WINTER } from '../support/past-winter.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

/** Of the texts those that are markup, or turn what is around them. */
const SHOWN = hostile.filter(([what]) => /end of script|title|handler|entities|turned/.test(what));

const PAGES = [
	'',
	'/readings',
	'/weak-spots',
	'/trip',
	'/sites',
	'/loads',
	'/telling',
	'/edit',
	'/at-the-hole'
];

async function lakeNamed(text: string): Promise<string> {
	const { id } = await app.ask<{ id: string }>('POST', '/lakes', { ...INVENTED_LAKE, name: text });
	await app.ask('PUT', `/lakes/${id}/winters/${PAST_WINTER}`, { freezeUpOn: FROZE_OVER });
	await app.ask('POST', `/lakes/${id}/weather`, csvOf(['air', 'water']));
	const of = { place: text, by: text, remark: text };
	const reading = { on: FROZE_OVER, kind: 'measured', holes: [{ total_m: 0.1 }], ...of };
	await app.ask('POST', `/lakes/${id}/readings`, reading);
	const spot = { name: text, kind: 'current', latitude: 47.4, longitude: -38.2, remark: text };
	await app.ask('POST', `/lakes/${id}/weak-spots`, spot);
	await app.ask('POST', `/lakes/${id}/loads`, { name: text, mass_kg: 300 });
	return id;
}

const ran = (page: Page) => page.evaluate(() => 'ran' in window);

test.runIf(browserPath).each(SHOWN)(
	'%s is shown as the text that it is on every page of a lake',
	async (_, typed, stored) => {
		const id = await lakeNamed(typed);
		const page = await app.open('/');
		for (const path of PAGES) {
			await page.goto(`/lakes/${id}${path}?winter=${PAST_WINTER}`);
			expect(await ran(page), path).toBe(false);
			expect(await page.title(), path).toContain(stored.replace(/\s+/g, ' '));
			expect(await page.locator('main script, main svg[onload], main img').count(), path).toBe(0);
		}
		await page.goto('/');
		await page.getByText(stored, { exact: true }).first().waitFor();
		expect(await ran(page)).toBe(false);
	}
);
