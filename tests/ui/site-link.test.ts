import { expect, test } from 'vitest';
import { withSite } from '#lib/ui/site-link.ts';

test.each([
	['/lakes/pond', 'main', '/lakes/pond'],
	['/lakes/pond', 'bay', '/lakes/pond?site=bay'],
	['?/add', 'bay', '?/add&site=bay'],
	['?winter=2026-27#events', 'a bay', '?winter=2026-27&site=a%20bay#events'],
	['?winter=2026-27#events', 'main', '?winter=2026-27#events']
])('%s of the site %s is %s', (address, site, expected) => {
	expect(withSite(address, site)).toBe(expected);
});
