import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import UpkeepAges from '../../../src/routes/lakes/[lake]/UpkeepAges.svelte';
import { upkeepOf } from '../../../src/routes/lakes/[lake]/upkeep.ts';
import { inventedView } from '../../support/invented-view.ts';

function ages(isPresent: boolean): string {
	const { upkeep } = inventedView();
	const told = { ...upkeep, forecastAge_h: 3, isForecastUsed: true };
	const { body } = render(UpkeepAges, {
		props: { upkeep: upkeepOf({ upkeep: told, isPresent }) }
	});
	return body;
}

test('ages are those of now, and in a look back of the day that is asked for', () => {
	expect(ages(true)).toContain('57 hours ago');
	expect(ages(true)).toContain('issued 3 hours ago');
	expect(ages(false)).toContain('57 hours before');
	expect(ages(false)).toContain('issued 3 hours before');
	expect(ages(false)).not.toContain(' ago');
});
