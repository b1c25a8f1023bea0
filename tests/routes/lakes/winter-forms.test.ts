import { expect, test } from 'vitest';
import { getSiteWinter, saveSiteWinter } from '../../../src/lib/server/services/winters.ts';
import { SHOWN } from '../../../src/lib/ui/forms/merge-shown.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/winter/+page.server.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function lakeWithFreezeUp() {
	const context = await freshContext();
	const { id } = await inventedLake(context);
	const event = { context, params: { lake: id }, query: '/dates&winter=2026-27' };
	const fields = { freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-04', iceOutOn: '' };
	const outcome = await outcomeOf(actions['dates'], formEvent({ ...event, fields }));
	return { context, event, outcome, read: () => getSiteWinter(context, id, 'main', '2026-27') };
}

const CLEARED = { kind: 'cleared', on: '2027-01-03', snow_cm: '1' };

test('freeze-up between two days is stored for the chosen winter', async () => {
	const { outcome, read, event } = await lakeWithFreezeUp();
	expect(outcome).toMatchObject({ status: 303, location: '?winter=2026-27&stored=dates' });
	expect(await read()).toMatchObject({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-04' });
	expect(await load(formEvent({ ...event, query: 'winter=2026-27&stored' }))).toMatchObject({
		winters: ['2026-27', '2025-26', '2024-25'],
		isStored: true,
		hasWeather: false
	});
});

test('no day at all is stored only where it takes back one that was', async () => {
	const { event, read } = await lakeWithFreezeUp();
	const fields = { freezeUpOn: '', freezeUpBy: '', iceOutOn: '' };
	expect((await outcomeOf(actions['dates'], formEvent({ ...event, fields }))).status).toBe(303);
	expect(await read()).toMatchObject({ freezeUpOn: null, freezeUpBy: null });
	const again = await outcomeOf(actions['dates'], formEvent({ ...event, fields }));
	expect(again.status).toBe(400);
	expect(fieldsOf(again)).toEqual(['freezeUpOn']);
});

test('an event is added, removed and brought back', async () => {
	const { read, event } = await lakeWithFreezeUp();
	const added = await outcomeOf(actions['addEvent'], formEvent({ ...event, fields: CLEARED }));
	expect(added.status).toBe(303);
	const stored = { kind: 'cleared', on: '2027-01-03', snow_m: 0.01 };
	expect((await read()).events).toEqual([stored]);

	const fields = { event: JSON.stringify(stored) };
	const removed = await outcomeOf(actions['removeEvent'], formEvent({ ...event, fields }));
	expect((await read()).events).toEqual([]);
	const query = new URLSearchParams(removed.location.slice(1, removed.location.indexOf('#')));
	expect(query.get('removed')).toBe(fields.event);

	await outcomeOf(actions['restoreEvent'], formEvent({ ...event, fields }));
	expect((await read()).events).toEqual([stored]);
});

test('what is only planned is stored by no way: left undone it would thicken the ice', async () => {
	const { context, read, event } = await lakeWithFreezeUp();
	const add = (fields: Record<string, string>) =>
		outcomeOf(actions['addEvent'], formEvent({ ...event, fields }));
	// It is 10 February.
	expect(fieldsOf(await add({ ...CLEARED, on: '2027-02-11' }))).toEqual(['on']);
	const refreezing = { kind: 'reopened', on: '2027-02-09', refrozeOn: '2027-02-12' };
	expect(fieldsOf(await add(refreezing))).toEqual(['refrozeOn']);
	const events = [{ kind: 'cleared' as const, on: '2027-02-11', snow_m: 0 }];
	const { winter, ...record } = await read();
	const planned = saveSiteWinter(context, event.params.lake, 'main', { winter, ...record, events });
	await expect(planned).rejects.toThrow('2027-02-11 is after today at the lake, 2027-02-10');
	expect((await read()).events).toEqual([]);
});

test('of two events stored at the same moment none is lost', async () => {
	const { read, event } = await lakeWithFreezeUp();
	const opened = { kind: 'reopened', on: '2027-01-10', refrozeOn: '' };
	const add = (fields: Record<string, string>) =>
		outcomeOf(actions['addEvent'], formEvent({ ...event, fields }));
	await Promise.all([add(opened), add(CLEARED), add({ ...CLEARED, on: '2027-01-04' })]);
	expect((await read()).events.map(({ kind }) => kind).toSorted()).toEqual([
		'cleared',
		'cleared',
		'reopened'
	]);
});

test('days that another has stored since the page was opened are not written over unasked', async () => {
	const { read, event } = await lakeWithFreezeUp();
	const values = { freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-04', iceOutOn: '' };
	const shown = { [SHOWN]: JSON.stringify({ values }) };
	const send = (fields: Record<string, string>) =>
		outcomeOf(actions['dates'], formEvent({ ...event, fields: { ...shown, ...fields } }));
	// Another has found out that it froze over later.
	await send({ freezeUpOn: '2026-12-12', freezeUpBy: '', iceOutOn: '' });
	// Left as the page showed it, it is no wish to go back.
	await send({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-04', iceOutOn: '2027-04-20' });
	expect(await read()).toMatchObject({
		freezeUpOn: '2026-12-12',
		freezeUpBy: null,
		iceOutOn: '2027-04-20'
	});
	const mine = { freezeUpOn: '2026-11-20', freezeUpBy: '2026-12-04', iceOutOn: '' };
	const asked = await send(mine);
	expect(asked.status).toBe(400);
	expect(fieldsOf(asked)).toEqual(['freezeUpOn']);
	expect((await read()).freezeUpOn).toBe('2026-12-12');
	await send({ ...mine, 'keep.freezeUpOn': '2026-11-20' });
	expect((await read()).freezeUpOn).toBe('2026-11-20');
});

test('events stand in the order of their days', async () => {
	const { read, event } = await lakeWithFreezeUp();
	for (const fields of [CLEARED, { kind: 'pumped', on: '2026-12-20', water_in: '2' }]) {
		await outcomeOf(actions['addEvent'], formEvent({ ...event, fields }));
	}
	expect((await read()).events).toEqual([
		{ kind: 'pumped', on: '2026-12-20', water_m: 0.0508 },
		{ kind: 'cleared', on: '2027-01-03', snow_m: 0.01 }
	]);
});

test.each([
	['dates', { freezeUpOn: '2026-12-09', freezeUpBy: '2026-12-05' }, ['freezeUpBy']],
	['dates', { freezeUpOn: 'Advent' }, ['freezeUpOn']],
	['dates', { freezeUpOn: '2026-12-01', iceOutOn: '2026-11-01' }, ['iceOutOn']],
	['addEvent', { kind: 'cleared', on: '2027-01-03', snow_cm: 'none' }, ['snow_cm']],
	['addEvent', { kind: 'cleared', on: '2026-11-03', snow_cm: '0' }, ['on']],
	['restoreEvent', { event: 'not JSON' }, ['on']]
])('%s refuses %j at its field and stores nothing', async (action, change, wrong) => {
	const { read, event } = await lakeWithFreezeUp();
	const before = await read();
	const fields = change as Record<string, string>;
	const outcome = await outcomeOf(actions[action], formEvent({ ...event, fields }));
	expect(outcome.status).toBe(400);
	expect(fieldsOf(outcome)).toEqual(wrong);
	expect(outcome.data.values).toEqual(fields);
	expect(await read()).toEqual(before);
});

test('a freeze-up after an event says to remove the event first', async () => {
	const { read, event } = await lakeWithFreezeUp();
	await outcomeOf(actions['addEvent'], formEvent({ ...event, fields: CLEARED }));
	const fields = { freezeUpOn: '2027-01-10' };
	const outcome = await outcomeOf(actions['dates'], formEvent({ ...event, fields }));
	expect(outcome.data.issues?.[0]).toMatchObject({
		field: 'freezeUpOn',
		message: expect.stringContaining('remove the event first')
	});
	expect((await read()).freezeUpOn).toBe('2026-12-01');
});
