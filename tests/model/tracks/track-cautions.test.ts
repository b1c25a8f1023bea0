import { expect, test } from 'vitest';
import { trackCautions } from '#lib/model/tracks/track-cautions.ts';
import { groundIn } from '#lib/ui/format/ground.ts';

const CLEARING = { clear_m: 0.3, white_m: 0, snow_kg_m2: 18, cleared_kg_m2: 18, width_m: 8 };

const of = (change: Partial<typeof CLEARING> = {}) => trackCautions({ ...CLEARING, ...change });
const textOf = (code: string, change: Partial<typeof CLEARING> = {}) =>
	of(change).find((rule) => rule.code === code)?.text;

test('the bank’s load is told with how far to spread it', () => {
	expect(textOf('bankLoad')).toContain('each bank gets 72 kg of snow on every metre');
	expect(textOf('bankLoad')).toContain('Spread each over 10 m or more');
	const feet = trackCautions(CLEARING, groundIn({ measure: 'imperial', mass: 'lb' }));
	expect(feet[0]?.text).toContain(
		'Of a track 27 ft wide each bank gets 22 kg of snow on every foot'
	);
});

test('where the sheet floats no more, any bank puts the edge under water', () => {
	expect(textOf('bankLoad', { snow_kg_m2: 30 })).toContain('any bank puts the edge under water');
	expect(textOf('bankLoad', { snow_kg_m2: 25 })).toContain('any bank puts the edge under water');
});

test('a narrow track is told of, a wide one and one without snow to move are not', () => {
	expect(textOf('narrow')).toContain('13 m');
	expect(textOf('narrow', { width_m: 20 })).toBeUndefined();
	expect(textOf('bankLoad', { cleared_kg_m2: 0 })).toBeUndefined();
});

test('every caution names its source, and none is a permission', () => {
	const rules = [...of(), ...trackCautions(null)];
	expect(rules.length).toBeGreaterThan(12);
	for (const { text, source } of rules) {
		expect(source).not.toBe('');
		expect(text).not.toMatch(/\bsafe/i);
	}
});
