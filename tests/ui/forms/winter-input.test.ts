import { expect, test } from 'vitest';
import { FormInput, type FormValues } from '#lib/ui/forms/form-input.ts';
import { readEvent, readWinterDates } from '#lib/ui/forms/winter-input.ts';
import { eventWords } from '#lib/ui/forms/winter-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

function dates(values: FormValues) {
	const input = new FormInput(values);
	return { record: readWinterDates(input, '2026-27'), issues: input.issues };
}

function event(values: FormValues) {
	const input = new FormInput(values);
	return { event: readEvent(input, '2026-27', '2027-06-30'), issues: input.issues };
}

test('freeze-up is a day or lies between two', () => {
	expect(dates({ freezeUpOn: '2026-12-01', freezeUpBy: '', iceOutOn: '' })).toEqual({
		record: { freezeUpOn: '2026-12-01', freezeUpBy: null, iceOutOn: null },
		issues: []
	});
	expect(dates({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-05' }).record.freezeUpBy).toBe(
		'2026-12-05'
	);
	expect(
		dates({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-01' }).record.freezeUpBy
	).toBeNull();
});

test.each([
	[{ freezeUpOn: '2026-12-05', freezeUpBy: '2026-12-01' }, 'freezeUpBy'],
	[{ freezeUpBy: '2026-12-01' }, 'freezeUpOn'],
	[{ iceOutOn: '2027-04-20' }, 'freezeUpOn'],
	[{ freezeUpOn: '2026-12-05', iceOutOn: '2026-12-05' }, 'iceOutOn'],
	[{ freezeUpOn: '2027-12-05' }, 'freezeUpOn'],
	[{ freezeUpOn: 'in December' }, 'freezeUpOn']
])('%j is refused at %s', (values, field) => {
	const { issues } = dates(values as FormValues);
	expect(issues.map((issue) => issue.field)).toContain(field);
});

test.each([
	[
		{ kind: 'reopened', on: '2026-12-10', refrozeOn: '2026-12-12' },
		{ kind: 'reopened', on: '2026-12-10', refrozeOn: '2026-12-12' }
	],
	[
		{ kind: 'reopened', on: '2026-12-10', refrozeOn: '' },
		{ kind: 'reopened', on: '2026-12-10', refrozeOn: null }
	],
	[
		{ kind: 'cleared', on: '2027-01-03', snow_in: '1' },
		{ kind: 'cleared', on: '2027-01-03', snow_m: 0.0254 }
	],
	[
		{ kind: 'packed', on: '2027-01-03', density_kg_m3: '' },
		{ kind: 'packed', on: '2027-01-03', density_kg_m3: null }
	],
	[
		{ kind: 'pumped', on: '2027-01-03', water_cm: '4' },
		{ kind: 'pumped', on: '2027-01-03', water_m: 0.04 }
	]
])('%j is an event', (values, expected) => {
	expect(event(values as FormValues)).toEqual({ event: expected, issues: [] });
});

test.each([
	[{ kind: 'cleared', on: '2027-01-03', snow_cm: '' }, 'snow_cm'],
	[{ kind: 'cleared', on: '2027-01-03', snow_cm: 'all' }, 'snow_cm'],
	[{ kind: 'pumped', on: '2027-01-03', water_cm: '0' }, 'water_cm'],
	[{ kind: 'packed', on: '2027-01-03', density_kg_m3: '5000' }, 'density_kg_m3'],
	[{ kind: 'reopened', on: '2026-12-10', refrozeOn: '2026-12-10' }, 'refrozeOn'],
	[{ kind: 'cleared', on: '', snow_cm: '0' }, 'on'],
	[{ kind: 'cleared', on: '2025-01-03', snow_cm: '0' }, 'on'],
	[{ kind: 'burnt', on: '2027-01-03' }, 'kind']
])('%j is no event, and %s says why', (values, field) => {
	const { event: none, issues } = event(values as FormValues);
	expect(none).toBeNull();
	expect(issues.map((issue) => issue.field)).toEqual([field]);
});

test('events are told in words', () => {
	expect(eventWords({ kind: 'cleared', on: '2027-01-03', snow_m: 0.02 }, METRIC)).toBe(
		'Snow cleared on 3 Jan 2027, 2 cm left'
	);
	expect(eventWords({ kind: 'reopened', on: '2026-12-10', refrozeOn: null }, METRIC)).toBe(
		'Opened again on 10 Dec 2026, not yet refrozen'
	);
});
