import { expect, test } from 'vitest';
import { LAKE_PAGES } from '../../src/lib/ui/lake-pages.ts';
import { PAGE_RULES } from '../../src/routes/access/page-rules.ts';

test('links of a lake are offered to whom its pages are open', () => {
	for (const { path, least } of LAKE_PAGES)
		expect(PAGE_RULES[`/lakes/[lake]/${path}`]?.GET, path).toBe(least);
});
