import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { lakeCard } from '../../src/routes/lake-card.ts';
import { actions, load } from '../../src/routes/+page.server.ts';
import { deleteLake, listLakes } from '#lib/server/services/lakes.ts';
import HomePage from '../../src/routes/+page.svelte';
import { formEvent, outcomeOf } from '../support/form-event.ts';
import { freshContext, inventedLake } from '../support/fresh-context.ts';
import { inventedForecast, inventedOutlook, inventedView } from '../support/invented-view.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

function shown(
	cards: ReturnType<typeof lakeCard>[],
	deleted: { id: string; name: string }[] = []
): string {
	const props = { data: { units: METRIC, cards, deleted }, params: {}, form: null };
	return render(HomePage, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<(?!a )[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

test('a lake is told in its answer, on foot, its weightiest caution and its ages', () => {
	const page = shown([lakeCard(inventedView())]);
	expect(page).toContain('Pinder Lake (invented)');
	expect(page).toContain(
		'About 41 cm of ice on 10 Feb 2027, but one hole in ten may have shown less than 31.'
	);
	expect(page).toContain('On foot, alone: chart minimum reached, drilled; asks 15 cm.');
	expect(page).toContain('4 cm more snow floods the ice');
	expect(page).toContain('Weather: 3 days ago. Reading: 3 days ago.');
	expect(page).toContain('href="/lakes/pinder-lake"');
});

test('a lake without an estimate says what is missing', () => {
	const card = lakeCard(inventedView({ status: 'noFreezeUp', outlook: null, readings: [] }));
	expect(shown([card])).toContain('No freeze-up day yet.');
	expect(shown([card])).toContain('No reading this winter.');
});

test('a lake whose weather has ended says so, and shows no number', () => {
	const outlook = inventedOutlook({ forecast: inventedForecast({ days: [] }) });
	expect(shown([lakeCard(inventedView({ outlook }))])).toContain(
		'The weather ends before this day.'
	);
});

test('without a lake the two first steps are shown', () => {
	const page = shown([]);
	expect(page).toContain('No lake yet.');
	expect(page).toContain('href="/lakes/new"');
});

test('every stored lake gets a card', async () => {
	const context = await freshContext();
	await inventedLake(context, { name: 'North Test Lake' });
	await inventedLake(context, { name: 'South Test Lake' });
	const data = (await load(formEvent({ context }))) as {
		cards: { name: string; status: string }[];
	};
	expect(data.cards.map(({ name }) => name)).toEqual(['North Test Lake', 'South Test Lake']);
	expect(data.cards.map(({ status }) => status)).toEqual(['noWeather', 'noWeather']);
});

test('a deleted lake stays within reach of an undo', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context, { name: 'North Test Lake' });
	await deleteLake(context, id);
	const data = (await load(formEvent({ context }))) as {
		deleted: { id: string; name: string }[];
	};
	expect(data.deleted).toEqual([{ id, name: 'North Test Lake' }]);
	expect(shown([], data.deleted)).toContain('Deleted: North Test Lake');
	const undone = await outcomeOf(actions['restore'], formEvent({ context, fields: { id } }));
	expect(undone).toMatchObject({ status: 303, location: `/lakes/${id}` });
	expect(await listLakes(context)).toHaveLength(1);
});

test('the undo of a lake that never was is not found', async () => {
	const context = await freshContext();
	const undo = outcomeOf(actions['restore'], formEvent({ context, fields: { id: 'none' } }));
	await expect(undo).rejects.toMatchObject({ status: 404 });
});
