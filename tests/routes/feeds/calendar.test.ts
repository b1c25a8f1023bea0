import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { updateLake } from '../../../src/lib/server/services/lakes.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import { addLoad } from '../../../src/lib/server/services/own-loads.ts';
import { saveRemoval } from '../../../src/lib/server/services/removal.ts';
import { makeFeed } from '../../../src/lib/server/services/telling/feeds.ts';
import { lookAt } from '../../../src/lib/server/services/telling/look.ts';
import { toldMessages } from '../../../src/lib/server/services/telling/messages.ts';
import { updateTellingOf } from '../../../src/lib/server/services/telling/settings.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { fetchFeed } from '../../support/feed-calls.ts';
import { logReading, tellingLake } from '../../support/telling-lake.ts';

async function read(ctx: Context, path: string) {
	const response = await fetchFeed(ctx, path);
	expect(response.status).toBe(200);
	const text = await response.text();
	const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
	const events = calendar
		.getAllSubcomponents('vevent')
		.map((component) => ({ component, event: new ICAL.Event(component) }));
	return { response, text, calendar, events };
}

/** Of RFC 5545, what every component of a published calendar must have (3.6, 3.6.1). */
test('the calendar has what RFC 5545 asks for, and its days are whole days', async () => {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['on-foot', 'car'] });
	const { response, text, calendar, events } = await read(
		lake.ctx,
		await makeFeed(lake.ctx, lake.id, 'calendar')
	);
	expect(response.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
	expect(calendar.name).toBe('vcalendar');
	expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
	expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
	expect(text.endsWith('\r\n')).toBe(true);
	expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
	for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
	expect(events.length).toBeGreaterThan(4);
	for (const { component, event } of events) {
		for (const name of ['uid', 'dtstamp', 'dtstart', 'sequence']) {
			expect(component.getAllProperties(name), name).toHaveLength(1);
		}
		expect(event.startDate.isDate).toBe(true);
		expect(event.endDate.isDate).toBe(true);
		expect(event.endDate.compare(event.startDate)).toBe(1);
		expect(component.getFirstProperty('dtstart')?.getParameter('tzid')).toBeUndefined();
		expect(String(component.getFirstPropertyValue('dtstamp'))).toMatch(/Z$/);
		expect(event.summary).toMatch(/^Test Lake: .*: a drilled hole decides$/);
		expect(event.description).toMatch(/A drilled hole decides\.$/);
	}
	expect(new Set(events.map(({ event }) => event.uid)).size).toBe(events.length);
});

test('it has the days of the chosen loads, the ice-out window and the reading that is due', async () => {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['on-foot'], readingAfter_d: 10 });
	await logReading(lake);
	const { events } = await read(lake.ctx, await makeFeed(lake.ctx, lake.id, 'calendar'));
	const summaries = events.map(({ event }) => event.summary);
	for (const part of [
		'expected from here',
		'likely from here',
		'expected until here',
		'off the ice by this day',
		'Ice-out window'
	]) {
		expect(
			summaries.filter((summary) => summary.includes(part)),
			part
		).toHaveLength(1);
	}
	const due = events.find(({ event }) => event.summary.includes('Reading due'));
	expect(due?.event.startDate.toString()).toBe('2027-02-07');
	const window = events.find(({ event }) => event.summary.includes('Ice-out window'))?.event;
	expect(window?.duration.toSeconds()).toBeGreaterThan(86_400);
});

test('a day keeps its UID when it moves, and its SEQUENCE and DTSTAMP tell that it has', async () => {
	const lake = await tellingLake();
	await logReading(lake);
	await updateTellingOf(lake.ctx, lake.id, { loads: [], readingAfter_d: 7 });
	const path = await makeFeed(lake.ctx, lake.id, 'calendar');
	const dueOf = async () => {
		const { events } = await read(lake.ctx, path);
		const found = events.find(({ event }) => event.summary.includes('Reading due'));
		return {
			uid: found?.event.uid,
			sequence: found?.event.sequence,
			on: found?.event.startDate.toString(),
			stamp: String(found?.component.getFirstPropertyValue('dtstamp'))
		};
	};
	const first = await dueOf();
	expect(first).toMatchObject({ sequence: 0, on: '2027-02-04', stamp: '2027-01-29T01:00:00Z' });
	lake.setNow('2027-01-29T05:00:00Z');
	await lookAt(lake.ctx, lake.id);
	expect(await dueOf()).toEqual(first);
	await updateTellingOf(lake.ctx, lake.id, { readingAfter_d: 9 });
	await lookAt(lake.ctx, lake.id);
	expect(await dueOf()).toEqual({
		...first,
		sequence: 1,
		on: '2027-02-06',
		stamp: '2027-01-29T05:00:00Z'
	});
});

test('a day that is not expected any more is not there, and comes back with its UID', async () => {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['car'] });
	const path = await makeFeed(lake.ctx, lake.id, 'calendar');
	const expected = async () => {
		const { events } = await read(lake.ctx, path);
		return events.find(({ event }) => event.summary.includes('expected from here'))?.event;
	};
	const first = await expected();
	expect(first?.sequence).toBe(0);
	await updateTellingOf(lake.ctx, lake.id, { loads: [] });
	await lookAt(lake.ctx, lake.id);
	expect(await expected()).toBeUndefined();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['car'] });
	await lookAt(lake.ctx, lake.id);
	expect(await expected()).toMatchObject({ uid: first?.uid, sequence: 1 });
});

test('names that try to break out of their lines stay inside of them', async () => {
	const lake = await tellingLake();
	// Past the schemas, which make one line of a name: what was stored before they did is told too.
	const lakeName = 'Bay\r\nEND:VEVENT\r\nBEGIN:VEVENT;X=",\\n🧊';
	await lake.ctx.db.updateTable('lake').set({ name: lakeName }).execute();
	const name = 'Truck;\r\nATTENDEE:mailto:x@example.org,\\';
	const truck = { ...loadInput.parse({ name: 'Truck', mass_kg: 300 }), name };
	const load = await addLoad(lake.ctx, lake.id, truck);
	await updateTellingOf(lake.ctx, lake.id, { loads: [load.id] });
	const { calendar, events } = await read(lake.ctx, await makeFeed(lake.ctx, lake.id, 'calendar'));
	expect(calendar.getAllSubcomponents().every(({ name }) => name === 'vevent')).toBe(true);
	for (const { component, event } of events) {
		expect(component.getAllProperties('attendee')).toEqual([]);
		expect(event.summary).toContain('Bay\nEND:VEVENT\nBEGIN:VEVENT;X=",\\n🧊: ');
	}
	expect(events.some(({ event }) => event.summary.includes('Truck;\nATTENDEE'))).toBe(true);
});

test('links lead to the host that was asked, or to the address that is set', async () => {
	const lake = await tellingLake();
	const path = await makeFeed(lake.ctx, lake.id, 'calendar');
	const linkOf = async (ctx: Context) => {
		const { events } = await read(ctx, path);
		return events[0]?.component.getFirstPropertyValue('url');
	};
	expect(await linkOf(lake.ctx)).toBe('http://lake.test:3000/lakes/test-lake');
	const address = 'https://ice.example.org';
	expect(await linkOf({ ...lake.ctx, address })).toBe('https://ice.example.org/lakes/test-lake');
});

test('the days are those of the lake’s own calendar, wherever the server is', async () => {
	const lake = await tellingLake();
	await logReading(lake, { on: '2027-01-27' });
	await updateLake(lake.ctx, lake.id, { timeZone: 'Pacific/Kiritimati' });
	await updateTellingOf(lake.ctx, lake.id, { loads: [], readingAfter_d: 7 });
	const { events } = await read(lake.ctx, await makeFeed(lake.ctx, lake.id, 'calendar'));
	const due = events.find(({ event }) => event.summary.includes('Reading due'));
	expect(due?.component.getFirstProperty('dtstart')?.toICALString()).toBe(
		'DTSTART;VALUE=DATE:20270203'
	);
});

test('out of the season the calendar is empty, and once ice-out is on record it says so', async () => {
	const lake = await tellingLake();
	const path = await makeFeed(lake.ctx, lake.id, 'calendar');
	const record = winterInput.parse({ freezeUpOn: '2026-11-20', iceOutOn: '2027-01-25' });
	await saveSiteWinter(lake.ctx, lake.id, 'main', { winter: '2026-27', ...record });
	await lookAt(lake.ctx, lake.id);
	const out = (await read(lake.ctx, path)).events.find(({ event }) =>
		event.summary.includes('Ice-out:')
	);
	expect(out?.event.startDate.toString()).toBe('2027-01-25');
	lake.setNow('2027-08-01T12:00:00Z');
	await lookAt(lake.ctx, lake.id);
	expect((await read(lake.ctx, path)).events).toEqual([]);
});

test('the local removal date is there once somebody has typed it, and bounds every load', async () => {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['on-foot'] });
	const path = await makeFeed(lake.ctx, lake.id, 'calendar');
	const starts = async (part: string) =>
		(await read(lake.ctx, path)).events
			.filter(({ event }) => event.summary.includes(part))
			.map(({ event }) => event.startDate.toString());
	expect(await starts('Local removal date')).toEqual([]);
	const record = { removalOn: '2027-03-10', leads: [] };
	await saveRemoval(lake.ctx, lake.id, '2026-27', record);
	await lookAt(lake.ctx, lake.id);
	expect(await starts('Local removal date')).toEqual(['2027-03-10']);
	const [off] = await starts('off the ice by this day');
	expect(off && off <= '2027-03-10').toBe(true);
});

test.each([
	['later than all weather', '2027-01-30'],
	['taken back', null]
])('where the freeze-up day is %s no day of the ice stands, and that is told', async (_, day) => {
	const lake = await tellingLake();
	const { ctx, id, setNow } = lake;
	await updateTellingOf(ctx, id, { loads: ['on-foot'] });
	await saveRemoval(ctx, id, '2026-27', { removalOn: '2027-03-20', leads: [] });
	const path = await makeFeed(ctx, id, 'calendar');
	await lookAt(ctx, id);
	const holes = [0.5, 0.5, 0.5].map((total_m) => ({ total_m, snow_m: 0.05 }));
	await logReading(lake, { holes });
	await lookAt(ctx, id);
	setNow('2027-01-30T01:00:00Z');
	await lookAt(ctx, id);
	expect((await toldMessages(ctx, id, 1))[0]?.title).toContain('chart minimum reached');
	const record = winterInput.parse({ freezeUpOn: day });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	setNow('2027-01-30T02:00:00Z');
	await lookAt(ctx, id);
	const { events } = await read(ctx, path);
	expect(events.map(({ event }) => event.summary)).toEqual([
		'Test Lake: Local removal date, everything off: a drilled hole decides'
	]);
	const [last] = await toldMessages(ctx, id, 1);
	expect(last?.title).toContain('One person with gear, not yet');
	expect(last?.text).toContain('Nothing is estimated now');
});
