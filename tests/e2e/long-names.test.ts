import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { csvOf, FROZE_OVER, INVENTED_LAKE, PAST_WINTER } from '../support/past-winter.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

/** As long as a name may be, in words as people use them. */
const LONG = 'The long shallow northern arm behind the boathouse of the invented fishing club '
	.repeat(2)
	.slice(0, 119);
/** One word that does not break by itself, as long as compounds get. */
const WORD = 'Fiskarföreningensvintervägövernorraviken';

const PAGES = [
	'',
	'/early-ice',
	'/going-on',
	'/coming-off',
	'/readings',
	'/weak-spots',
	'/weak-spots/routes/new',
	'/trip',
	'/sites',
	'/loads',
	'/telling',
	'/history',
	'/how-good',
	'/edit',
	'/at-the-hole'
];

test.runIf(browserPath).each([
	['many words', LONG],
	['one long word', WORD]
])(
	'names of %s push no page of a phone sideways, its pictures and choices included',
	async (_, name) => {
		const { id } = await app.ask<{ id: string }>('POST', '/lakes', { ...INVENTED_LAKE, name });
		await app.ask('PUT', `/lakes/${id}/winters/${PAST_WINTER}`, { freezeUpOn: FROZE_OVER });
		await app.ask('POST', `/lakes/${id}/weather`, csvOf(['air', 'water']));
		const reading = { on: FROZE_OVER, kind: 'measured', holes: [{ total_m: 0.1 }] };
		await app.ask('POST', `/lakes/${id}/readings`, { ...reading, place: name, by: name });
		await app.ask('POST', `/lakes/${id}/weak-spots`, { name, kind: 'current' });
		await app.ask('POST', `/lakes/${id}/loads`, { name, mass_kg: 900 });
		await app.ask('POST', `/lakes/${id}/sites`, { name, kind: 'bay' });
		const page = await app.open('about:blank', PHONE);
		for (const path of ['/', ...PAGES.map((each) => `/lakes/${id}${each}`)]) {
			await page.goto(`${path}?winter=${PAST_WINTER}`, { waitUntil: 'networkidle' });
			// What is drawn only once it is near is pushed wide only then.
			if (path === `/lakes/${id}`) {
				await page.getByRole('heading', { name: 'What if?' }).scrollIntoViewIfNeeded();
				await page.getByLabel('A load, heavier').waitFor();
			}
			const wide = await page.evaluate(() => {
				const root = document.documentElement;
				if (root.scrollWidth <= root.clientWidth) return [];
				const all = [...document.querySelectorAll('main *')].filter(
					(each) => each.getBoundingClientRect().right > root.clientWidth + 0.5
				);
				return all
					.filter((each) => !all.some((other) => other !== each && each.contains(other)))
					.map((each) => `${each.localName}.${each.className}: ${each.textContent?.slice(0, 30)}`);
			});
			expect(wide, path).toEqual([]);
		}
	}
);
