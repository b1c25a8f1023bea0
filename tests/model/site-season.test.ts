import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { siteEstimate } from '#lib/model/site-estimate.ts';
import { siteSeason, type SiteSeasonInput } from '#lib/model/site-season.ts';
import { LAKE, asked, record, weatherDay } from '../support/invented-winter.ts';

const FROST = Array.from({ length: 40 }, () => -10);

function season(change: Parameters<typeof asked>[1] = {}) {
	const site = siteSeason(asked(FROST, change));
	if (!site) throw new Error('no season');
	return site;
}

test('a day built from hours is told from one that is not', () => {
	const days = [weatherDay('2026-12-01', -5, { aboveFreezing_h: 0 }), weatherDay('2026-12-02', -5)];
	const site = season({ weather: days, asOf: '2026-12-02', until: '2026-12-02' });
	expect(site.hasHours('2026-12-01')).toBe(true);
	expect(site.hasHours('2026-12-02')).toBe(false);
});

test('an ice-out, an event and a refreezing of later days are not known yet', () => {
	const events = [
		{ kind: 'reopened', on: '2026-12-20', refrozeOn: '2026-12-25' },
		{ kind: 'reopened', on: '2027-01-05', refrozeOn: null }
	] as const;
	const known = record({ iceOutOn: '2027-01-01', events: [...events] });
	const site = season({ record: known, asOf: '2026-12-22', until: '2026-12-22' });
	expect(site.iceOutOn).toBeNull();
	const heights = site.days.map((day) => day.column.clear_m);
	expect(heights.at(18)).toBeGreaterThan(0.05);
	expect(heights.slice(19)).toEqual([0, 0, 0]);
});

test('the last observed day is told', () => {
	expect(season().lastWeatherOn).toBe('2027-01-09');
	expect(season({ weather: [] }).lastWeatherOn).toBeNull();
});

const FOLDER = '../shared/winters/fi_kallavesi';

const rows = (file: string) =>
	readFileSync(`${FOLDER}/${file}`, 'utf8')
		.trim()
		.split('\n')
		.slice(1)
		.map((line) => line.split(','));
const number = (text: string | undefined) => (text ? Number(text) : null);

describe.runIf(existsSync(FOLDER))('measured winters', () => {
	/** Columns: date, mean, minimum, maximum, precipitation, snow depth 10:1, on land, as water. */
	const days = rows('weather.csv').map(([on = '', mean, min, max, rain, , , snow]) =>
		weatherDay(on, number(mean), {
			min_degC: number(min),
			max_degC: number(max),
			precipitation_kg_m2: number(rain),
			snowfall_kg_m2: number(snow)
		})
	);

	function shares() {
		const below: boolean[] = [];
		for (const [, winter = '', freezeUpOn = '', , notes = ''] of rows('freezeup.csv')) {
			if (!freezeUpOn || notes.includes('open')) continue;
			const end = `${Number(winter.slice(0, 4)) + 1}-06-01`;
			const input: SiteSeasonInput = {
				lake: { ...LAKE, latitude: 62.83, longitude: 27.77, area_km2: 316, meanDepth_m: 9.7 },
				record: record({ winter, freezeUpOn }),
				weather: days.filter((day) => day.on >= freezeUpOn && day.on <= end),
				readings: [],
				asOf: end,
				until: end
			};
			const site = siteSeason(input);
			if (site === null) continue;
			const { days: estimated } = siteEstimate(site, { ...input, members: 200 });
			for (const [, on = '', total = ''] of rows('ice.csv')) {
				const p10_m = estimated.get(on)?.quantiles.total_m.p10 ?? null;
				if (p10_m === null || total === '') continue;
				below.push(Number(total) / 100 < p10_m);
			}
		}
		return { n: below.length, share: below.filter(Boolean).length / below.length };
	}

	test('at most one measured thickness in ten lies below the tenth percentile', () => {
		const { n, share } = shares();
		expect(n).toBeGreaterThan(300);
		expect(share).toBeLessThan(0.1);
	});
});
