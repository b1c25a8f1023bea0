import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import Field from '#lib/ui/forms/Field.svelte';
import IssueSummary from '#lib/ui/forms/IssueSummary.svelte';
import LineProblems from '#lib/ui/forms/LineProblems.svelte';
import ReadingFields from '#lib/ui/forms/ReadingFields.svelte';
import Tick from '#lib/ui/forms/Tick.svelte';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const FIELD = { form: 'f', name: 'total_cm', label: 'Whole ice', unit: 'cm' };

test('a field is tied to its label, its hint and what is wrong with it', () => {
	const issue = { field: 'total_cm', message: 'Type a number of cm.' };
	const { body } = render(Field, {
		props: { ...FIELD, hint: 'Without slush', values: { total_cm: 'thick' }, issues: [issue] }
	});
	expect(body).toContain('<label for="f-total_cm"');
	expect(body).toContain('value="thick"');
	expect(body).toContain('aria-invalid="true"');
	expect(body).toContain('aria-describedby="f-total_cm-hint f-total_cm-issue"');
	expect(body).toMatch(/id="f-total_cm-issue"[^>]*>Type a number of cm\./);
});

test('a field with nothing wrong says nothing of it', () => {
	const { body } = render(Field, { props: { ...FIELD, start: '23', values: {}, issues: [] } });
	expect(body).toContain('value="23"');
	expect(body).not.toContain('aria-invalid');
	expect(body).not.toContain('aria-describedby');
});

test('a question brings a box that keeps just this value', () => {
	const issue = { field: 'total_cm', message: 'Is it really 250 cm?', keep: 'It is 250 cm' };
	const { body } = render(Field, {
		props: { ...FIELD, values: { total_cm: '250' }, issues: [issue] }
	});
	expect(body).toContain('name="keep.total_cm" value="250"');
});

test('the summary leads to each field and is the first to have the focus', () => {
	const issues = [{ field: 'holes.0.total_cm', message: 'Type 0 cm or more.' }];
	const { body } = render(IssueSummary, { props: { form: 'reading', issues } });
	expect(body).toContain('href="#reading-holes-0-total_cm"');
	expect(body).toContain('Hole 1, whole ice: Type 0 cm or more.');
	expect(body).toContain('autofocus');
	expect(render(IssueSummary, { props: { form: 'reading', issues: [] } }).body).not.toContain(
		'<div'
	);
});

test('a box that came back empty stays empty, whatever is stored', () => {
	const props = {
		form: 'load',
		name: 'current',
		label: 'Crosses a current',
		start: true,
		issues: []
	};
	expect(render(Tick, { props: { ...props, values: {} } }).body).toContain('checked');
	expect(render(Tick, { props: { ...props, values: { name: 'x' } } }).body).not.toContain(
		'checked'
	);
});

test('fifty lines are listed and the rest is counted', () => {
	const problems = Array.from({ length: 80 }, (_, at) => ({ line: at + 1, reason: 'no number' }));
	const { body } = render(LineProblems, { props: { problems, count: 120 } });
	expect(body.match(/<li/g)).toHaveLength(50);
	expect(body).toContain('And 70 lines more.');
});

test('a reading form shows a row for each hole that came back', () => {
	const props = { form: 'reading', units: METRIC, today: '2027-01-12', places: [], issues: [] };
	const rows = (values: Record<string, string>) =>
		render(ReadingFields, { props: { ...props, values } }).body.match(/<legend[^>]*>Hole \d/g);
	expect(rows({})).toHaveLength(1);
	expect(rows({ 'holes.2.total_cm': '' })).toHaveLength(3);
});
