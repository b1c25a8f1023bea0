import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { stripData } from '#lib/ui/charts/strip-data.ts';
import WinterStrip from '#lib/ui/components/WinterStrip.svelte';
import { inventedFuture } from '../../support/invented-future.ts';

const FACTS = { today: '2027-01-26', snowKnown: true, isOpen: false, climate: 'past winters' };
const METRIC = { measure: 'metric', mass: 'kg' } as const;

function shown(forecast = inventedFuture()): string {
	const strip = stripData(forecast, FACTS);
	if (!strip) throw new Error('the invented winter has days');
	const readings = [
		{ on: '2026-12-20', kind: 'measured' as const },
		{ on: '2027-01-09', kind: 'wentThrough' as const }
	];
	return render(WinterStrip, { props: { strip, readings, units: METRIC } }).body;
}

function text(html: string): string {
	return html
		.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<[^>]*>/g, '')
		.replace(/\s+/g, ' ');
}

test('the strip is a picture with a label, a sentence for each load and a table', () => {
	const body = shown();
	expect(body).toMatch(
		/<svg[^>]*role="img"[^>]*aria-label="For each load and each day from 27 Nov/
	);
	expect(text(body)).toContain(
		'Snowmobile: asks 25 cm. Expected since 31 Dec, likely since 9 Jan, until 10 Apr. Chance on 26 Jan: over 9 in 10.'
	);
	expect(body.match(/<th scope="col"/g)).toHaveLength(7);
	expect(body).not.toMatch(/NaN|undefined|Infinity/);
});

test('loads of one fate share a sentence', () => {
	const future = inventedFuture();
	const [, group] = future.loads;
	const loads = future.loads.map((load) =>
		load.id === 'snowmobile' ? { ...load, ...group, id: load.id, name: load.name } : load
	);
	const page = text(shown({ ...future, loads }));
	expect(page).toContain('Group, spread out; Snowmobile: asks 20 cm. Expected since ');
});

test('it tells what it cannot do', () => {
	expect(text(shown())).toContain('they permit nothing, and a drilled hole decides on the day');
});

test('a winter without any estimate of dates still has its rows', () => {
	const future = inventedFuture();
	const loads = future.loads.map((load) => ({
		...load,
		expectedFrom: null,
		likelyFrom: null,
		until: null,
		days: load.days.map(({ on }) => ({ on, pThickness: null, pThaw: null }))
	}));
	const page = text(shown({ ...future, loads }));
	expect(page).toContain('Car: asks 38 cm. No dates are estimated.');
	expect(page).not.toContain('warm spell closes');
});
