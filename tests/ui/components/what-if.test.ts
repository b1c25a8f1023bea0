import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import WhatIf from '#lib/ui/components/WhatIf.svelte';
import WhatIfSection from '#lib/ui/components/WhatIfSection.svelte';
import { answerOf } from '#lib/ui/what-if/answer.ts';
import { inventedFuture } from '../../support/invented-future.ts';
import minimums from '../../../data/charts/minimums.json' with { type: 'json' };
import type { LoadCase } from '#lib/model/load-case.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

const connect = () => Promise.reject(new Error('not on the server'));

function shown(loads: readonly LoadCase[]): string {
	const props = { asIs: answerOf(inventedFuture()), loads, connect, members: 600, units: METRIC };
	return render(WhatIf, { props }).body;
}

test('without JavaScript it says what it needs', () => {
	const props = {
		asIs: answerOf(inventedFuture()),
		loads: [],
		connect,
		members: 600,
		units: METRIC
	};
	const { body } = render(WhatIfSection, { props });
	expect(body).toMatch(/<noscript>.*needs JavaScript.*<\/noscript>/s);
	expect(body).toContain('is not stored');
	expect(body).not.toContain('type="range"');
});

test('what is stands there before anything is tried', () => {
	expect(shown([])).toContain('52 cm on 25 Mar');
	expect(shown([])).toContain('Nothing is changed yet.');
});

test('each slider has a name and says its value in words', () => {
	const body = shown(minimums.standardLoads as LoadCase[]);
	const sliders = [
		...body.matchAll(/<input id="([^"]+)" type="range"[^>]*aria-valuetext="([^"]+)"/g)
	];
	expect(sliders.map(([, , says]) => says)).toEqual(['as it is', 'as it is', 'nothing more']);
	for (const [, id] of sliders) expect(body).toContain(`<label for="${id}"`);
});

test('only vehicles are offered to be loaded', () => {
	const body = shown(minimums.standardLoads as LoadCase[]);
	expect(body.match(/<option[^>]*>[^<]*person[^<]*</gi)).toBeNull();
	expect(body).toMatch(/<option[^>]*>[^<]*snowmobile/i);
	expect(shown([])).not.toContain('<select');
});
