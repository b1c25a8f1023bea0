import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { spawnSync } from 'node:child_process';
import { expect, onTestFinished, test } from 'vitest';
import { inventedFolder } from '../commands/validate/tidy-winters.ts';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { browserPath, DESK, launch, openPage } from '../support/browser.ts';

test.runIf(browserPath)(
	'the report of validate opens from a file, asks for nothing else, and axe finds nothing in it',
	async () => {
		const browser = await launch();
		onTestFinished(() => browser.close());
		const page = await openPage(browser, DESK);
		const asked: string[] = [];
		page.on('request', (request) => asked.push(request.url()));
		const address = pathToFileURL(writtenReport()).href;
		await page.goto(address);
		expect(await page.locator('section').count()).toBe(9);
		expect(await page.locator('figure svg').first().isVisible()).toBe(true);
		await page.evaluate(() => {
			for (const each of document.querySelectorAll('details')) each.open = true;
		});
		await bringAxe(page);
		for (const { width, colorScheme } of LOOKS) {
			await page.setViewportSize({ width, height: 800 });
			await page.emulateMedia({ colorScheme });
			expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([]);
			expect(await overhang_px(page), `${width} px wide, scrolled sideways`).toBe(0);
		}
		expect(asked).toEqual([address]);
		expect(page.problems).toEqual([]);
	}
);

function writtenReport(): string {
	const folder = mkdtempSync(join(tmpdir(), 'validation-report-'));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	const readings = [
		{ on: '2002-01-10', total_cm: 30 },
		{ on: '2002-02-10', total_cm: 41 },
		{ on: '2002-03-30', total_cm: 35 }
	];
	const lake = { freezeUpOn: '2001-12-01', iceOutOn: '2002-05-01', readings };
	const lakes = [
		{ ...lake, code: 'A' },
		{ ...lake, code: 'B' }
	];
	const winters = inventedFolder({ lakes, air_degC: (on) => (on < '2002-03-15' ? -8 : 7) });
	const file = join(folder, 'report.html');
	const { stderr } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/validate.ts', winters, '--report', file],
		{ encoding: 'utf8' }
	);
	expect(stderr).toBe('');
	return file;
}
