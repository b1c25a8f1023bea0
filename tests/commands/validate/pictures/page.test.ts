import { describe, expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { Findings } from '../../../../src/commands/validate/findings.ts';
import type { Case, LakeWinter } from '../../../../src/commands/validate/lake-winter.ts';
import { casesOf } from '../../../../src/commands/validate/lake-winter.ts';
import type { EnsemblePrediction } from '../../../../src/commands/validate/modes.ts';
import { reportPage } from '../../../../src/commands/validate/pictures/page.ts';
import { report } from '../../../../src/commands/validate/report.ts';

const READINGS_cm = [12, 25, 40, 33];
const TURN = 2;

function winter(dataset: string): LakeWinter {
	return {
		dataset,
		lakeKey: `${dataset}/A`,
		lake: {
			latitude: 62,
			longitude: 25,
			elevation_m: 100,
			area_km2: 2,
			meanDepth_m: 5,
			water: 'lake'
		},
		winter: '2001-02',
		freezeUpOn: '2001-12-01',
		iceOutOn: '2002-05-01',
		weather: [],
		readings: READINGS_cm.map((total_cm, index) => ({
			on: addDays('2001-12-20', index * 10),
			phase: index <= TURN ? 'growth' : 'decay',
			total_m: total_cm / 100,
			clear_m: null,
			white_m: null,
			snow_m: null,
			layersDisagree: false,
			plainFdd_degCd: 100,
			plainTdd_degCd: 0
		}))
	};
}

/** Every estimate is 4 cm too thick. */
function said(of: Case): EnsemblePrediction {
	const total_m = of.reading.total_m + 0.04;
	return {
		of,
		total_m,
		white_m: null,
		snow_m: null,
		p05_m: total_m - 0.05,
		p10_m: total_m - 0.03,
		p95_m: total_m + 0.05,
		crps_m: 0.02,
		rank: 0.07
	};
}

function pageOf(folder: string, ...datasets: string[]): string {
	const winters = datasets.map(winter);
	const cases = casesOf(winters);
	const iceOut = winters.map((winter) => ({
		winter,
		lead_d: 0,
		error_d: 3,
		isReached: true,
		isInside80: true
	}));
	const first = { predictions: cases.map(said), iceOut };
	const later = cases.filter(({ previous }) => previous !== null);
	const findings: Findings = {
		prior: first,
		learned: first,
		recalibrated: { predictions: later.map(said), iceOut }
	};
	const leftOut = { ...leftNothingOut(), doubtful: 2 };
	return reportPage(folder, report({ winters, leftOut }, 'shipped', findings), findings);
}

const page = pageOf('invented', 'hill', 'dale');

function sectionOf(id: string): string {
	return page.slice(page.indexOf(`<section id="${id}"`)).split('</section>')[0] ?? '';
}

test('the page needs nothing else: no script, no other address, no file', () => {
	expect(page).toMatch(/^<!doctype html>/);
	expect(page).not.toMatch(/<script|https?:|src=|@import|url\(/i);
	expect(page).toContain('light-dark(');
});

test('names from the folder stand in it as text', () => {
	const named = pageOf('<i>mine</i>', '<b>"bold"</b>', "it's & co");
	expect(named).not.toMatch(/<b>|<i>mine/);
	expect(named).toContain('“&lt;i&gt;mine&lt;/i&gt;”');
	expect(named).toContain('&lt;b&gt;&quot;bold&quot;&lt;/b&gt;, growth');
	expect(named).toContain('it&#39;s &amp; co, decay');
});

describe.each([
	['reliability', 6],
	['ranks', 6],
	['scatter', 3],
	['by-group', 3],
	['by-measured', 3],
	['by-estimated', 3],
	['by-age', 1],
	['ice-out', 3]
])('the pictures of %s', (id, count) => {
	test(`are ${count}, each with a sentence and a name that says it, and a table under them`, () => {
		const pictures = [
			...sectionOf(id).matchAll(
				/<svg[^>]*role="img" aria-label="([^"]+)">[\s\S]*?<figcaption>([^<]+)<\/figcaption>/g
			)
		];
		expect(pictures).toHaveLength(count);
		for (const [, label = '', says = ''] of pictures) {
			expect(says.length).toBeGreaterThan(20);
			expect(label).toContain(says.replace(/\.$/, ''));
		}
		expect(sectionOf(id)).toMatch(/<details>[\s\S]*<caption>[\s\S]*<th scope="row">/);
	});

	test('hold only numbers', () => {
		expect(sectionOf(id)).not.toMatch(/NaN|Infinity|undefined|null/);
	});
});

test('sentences and tables tell the errors that went in', () => {
	expect(sectionOf('scatter')).toContain(
		'Growth: 6 readings, in the mean 4.0 cm too thick, RMSE 4.0 cm'
	);
	expect(sectionOf('by-group')).toContain('all, growth 4.0 cm too thick');
	expect(sectionOf('by-group')).toContain(
		'<th scope="row">prior, hill, early</th><td>1</td><td>4.0</td>'
	);
	expect(sectionOf('by-age')).toContain(
		'<th scope="row">recalibrated, growth, 8 to 14 days</th><td>4</td><td>4.0</td>'
	);
	expect(sectionOf('ice-out')).toContain('all, at the thickest reading 3.0 days too late');
});

test('readings thinner than their lower bound show in both pictures of the distribution', () => {
	expect(sectionOf('reliability')).toContain('100 % were thinner than the 10 % bound');
	expect(sectionOf('ranks')).toContain('100 % of the readings fell into the thinnest tenth');
});

test('it says what was left out and why, in words', () => {
	expect(page).toContain(
		'2 winters with 8 readings scored; left out: 2 readings marked as doubtful'
	);
});

test('nothing is called safe, and a drilled hole decides', () => {
	expect(page).not.toMatch(/\b(un)?safe/i);
	expect(page).toContain('a drilled hole decides');
});

test('modes without a single reading are drawn empty', () => {
	const none = { predictions: [], iceOut: [] };
	const findings: Findings = { prior: none, learned: none, recalibrated: none };
	const empty = reportPage(
		'nothing',
		report({ winters: [], leftOut: leftNothingOut() }, 'shipped', findings),
		findings
	);
	expect(empty).toContain('No reading was foretold.');
	expect(empty).toContain('no reading was left out');
	expect(empty).not.toMatch(/NaN|Infinity|undefined/);
});

function leftNothingOut() {
	return {
		noThickness: 0,
		doubtful: 0,
		unknownLake: 0,
		noFreezeUp: 0,
		opened: 0,
		notAfterFreezeUp: 0,
		weatherGaps: 0,
		littleFrost: 0
	};
}
