import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { lakeCard, homeCards, type HomeCards } from '../../src/routes/lake-card.ts';
import { actions, load } from '../../src/routes/+page.server.ts';
import { digestOf, type LakeDigest } from '../../src/lib/server/services/digests/digest.ts';
import { deleteLake, listLakes } from '../../src/lib/server/services/lakes.ts';
import HomePage from '../../src/routes/+page.svelte';
import { formEvent, outcomeOf } from '../support/form-event.ts';
import { freshContext, inventedLake } from '../support/fresh-context.ts';
import { inventedForecast, inventedOutlook, inventedView } from '../support/invented-view.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const NOW = new Date('2027-02-12T12:00:00Z');

function shown(cards: Partial<HomeCards>, deleted: { id: string; name: string }[] = []): string {
	const empty = { attention: [], rest: [], waiting: [] };
	const props = { data: { units: METRIC, ...empty, ...cards, deleted }, params: {}, form: null };
	return render(HomePage, { props: props as never })
		.body.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/<(?!a )[^>]*>/g, ' ')
		.replace(/\s+/g, ' ');
}

const homeOf = (...digests: LakeDigest[]) =>
	homeCards(
		digests.map((digest) => ({ ...digest, sites: [{ id: 'main', name: 'Main' }] })),
		digests.map((digest) => ({ kind: 'known', digest })),
		NOW
	);

test('a lake is told in its answer, what has changed, where loads stand, cautions and ages', () => {
	const page = shown({ rest: [lakeCard(digestOf(inventedView(), null), NOW)] });
	expect(page).toContain('Pinder Lake (invented)');
	expect(page).toContain('About 41 cm of ice, lower bound 31 cm on 10 Feb 2027.');
	expect(page).toMatch(/In the last day: estimate \+4 mm, lower bound [+−]?/);
	expect(page).toContain('Chart minimum reached, drilled:');
	expect(page).toContain('4 cm more snow floods the ice');
	expect(page).toContain('As of 10 Feb. Observed 57 hours ago. No forecast. Reading: 3 days ago.');
	expect(page).toContain('href="/lakes/pinder-lake"');
});

test('a load of one’s own is told by its name, never as one of the charts that may ask for less', () => {
	const digest = digestOf(inventedView(), null);
	const [first] = digest.loads;
	if (!first) throw new Error('the digest must hold a load');
	const pickup = {
		...first,
		id: 'pickup',
		name: 'SUV or half-ton pickup',
		use: 'lightTruck' as const
	};
	const own = { ...pickup, id: 'own-1', name: 'Pickup and trailer', status: 'notYet' as const };
	const loaded = {
		...pickup,
		id: 'loaded-pickup',
		name: 'Loaded pickup',
		status: 'notYet' as const
	};
	const page = (...loads: LakeDigest['loads']) =>
		shown({ rest: [lakeCard({ ...digest, loads }, NOW)] });
	expect(page({ ...pickup, status: 'reached' }, own)).toMatch(
		/reached, drilled: pickup .*Not yet: “Pickup and trailer”/
	);
	expect(page({ ...pickup, status: 'reached' }, loaded)).toMatch(
		/reached, drilled: SUV or half-ton pickup .*Not yet: loaded pickup/
	);
});

test('the age of the weather goes on while its digest is kept, but for an invented lake', () => {
	const lake = { ...inventedView().lake, isInvented: false };
	const digest = digestOf(inventedView({ lake }), null);
	const age = (now: string) => lakeCard(digest, new Date(now)).observed;
	expect([age('2027-02-10T03:00:00Z'), age('2027-02-10T05:59:00Z')]).toEqual([
		'less than an hour ago',
		'2 hours ago'
	]);
	expect(lakeCard(digestOf(inventedView(), null), new Date('2030-01-01T00:00:00Z')).observed).toBe(
		'57 hours ago'
	);
});

test('a lake without an estimate says what is missing', () => {
	const view = inventedView({ status: 'noFreezeUp', outlook: null, readings: [] });
	const page = shown(homeOf(digestOf(view, null)));
	expect(page).toContain('No freeze-up day yet.');
	expect(page).toContain('href="/lakes/pinder-lake/early-ice"');
	expect(page).toContain('No reading this winter.');
});

test('where nothing was observed no age is told', () => {
	const upkeep = { ...inventedView().upkeep, lastObservedAt: null, lastObservedAge_h: null };
	const page = shown(homeOf(digestOf(inventedView({ upkeep, outlook: null }), null)));
	expect(page).toContain('Nothing observed yet.');
	expect(page).not.toContain('Observed');
});

test('a lake whose weather has ended says so, and shows no number', () => {
	const outlook = inventedOutlook({ forecast: inventedForecast({ days: [] }) });
	const page = shown(homeOf(digestOf(inventedView({ outlook }), null)));
	expect(page).toContain('The weather ends before this day.');
	expect(page).toContain('Needs attention (1)');
	expect(page).not.toContain('In the last day');
});

test('without a lake the two first steps are shown', () => {
	const page = shown({});
	expect(page).toContain('No lake yet.');
	expect(page).toContain('href="/lakes/new"');
});

test('a lake that is being worked out, and one that failed, are named and can be opened', () => {
	const sites = [{ id: 'main', name: 'Main' }];
	const lake = (id: string) => ({ id, name: `Lake ${id}`, isInvented: false, sites });
	const cards = homeCards(
		[lake('a'), lake('b')],
		[{ kind: 'comingUp' }, { kind: 'failed', logged: 'ab12cd34' }],
		NOW
	);
	const page = shown(cards);
	expect(page).toContain('Not told yet (2)');
	expect(page).toMatch(/href="\/lakes\/a".* is being worked out/);
	expect(page).toContain('could not be worked out: the log has it as ab12cd34');
	expect(page).not.toContain('No lake yet.');
});

test('of several sites the one that most needs somebody is shown, by its name', () => {
	const sites = [
		{ id: 'main', name: 'Main' },
		{ id: 'bay', name: 'Narrow bay' }
	];
	const calm = { ...digestOf(inventedView(), null), loads: [], cautions: [], wentThroughOn: null };
	const broke = { ...calm, site: 'bay', wentThroughOn: calm.today };
	const lake = { id: calm.id, name: calm.name, isInvented: false, sites };
	const known = (digest: LakeDigest) => ({ kind: 'known' as const, digest });
	const page = shown(homeCards([lake], [known(calm), known(broke)], NOW));
	expect(page).toMatch(/href="\/lakes\/pinder-lake\?site=bay".*Narrow bay.*The ice broke here/);
	expect(page).toContain('2 sites');
	// One that is not told yet may need somebody more than one that needs nobody.
	const half = homeCards([lake], [known(calm), { kind: 'comingUp' }], NOW);
	expect(half).toMatchObject({ attention: [], rest: [], waiting: [{ id: calm.id, logged: null }] });
	expect(homeCards([lake], [known(broke), { kind: 'comingUp' }], NOW).attention).toHaveLength(1);
});

test('a site that is not told yet is named beside the one that is, before those that need nobody', () => {
	const names = { main: 'Main', bay: 'Reed Bay', cove: 'Far cove', road: 'Road' };
	const sites = Object.entries(names).map(([id, name]) => ({ id, name }));
	const calm = { ...digestOf(inventedView(), null), loads: [], cautions: [], wentThroughOn: null };
	const broke = { ...calm, wentThroughOn: calm.today };
	const known = (digest: LakeDigest) => ({ kind: 'known' as const, digest });
	const lake = { id: calm.id, name: calm.name, isInvented: false, sites };
	const states = [
		known({ ...broke, site: 'main' }),
		{ kind: 'comingUp' as const },
		{ kind: 'failed' as const, logged: 'ab12cd34' },
		known({ ...calm, site: 'road' })
	];
	const page = shown(homeCards([lake], states, NOW));
	expect(page).toMatch(
		/Beside it: Reed Bay, still being worked out; Far cove, could not be worked out; Road, lower bound \d+ cm\./
	);
	const twice = [states[0], states[1], states[2], known({ ...broke, site: 'road' })];
	expect(
		shown(
			homeCards(
				[lake],
				twice.flatMap((state) => state ?? []),
				NOW
			)
		)
	).toMatch(/Beside it: \w+, the ice broke here; Reed Bay, still being worked out;/);
});

test('of sites that need the same the thinnest stands for the lake, and the rest beside it', () => {
	const names = { main: 'Main', bay: 'Narrow bay', road: 'Cleared road', cove: 'Far cove' };
	const sites = Object.entries(names).map(([id, name]) => ({ id, name }));
	const calm = { ...digestOf(inventedView(), null), loads: [], cautions: [], wentThroughOn: null };
	const of = (site: string, lower_m: number | null, on: string): LakeDigest => ({
		...calm,
		site,
		// Good news, which the thickest site has soonest.
		removalOn: on,
		day:
			calm.day &&
			({
				...calm.day,
				bound:
					lower_m === null ? null : { ...calm.day.bound, total_m: lower_m, effective_m: lower_m }
			} as LakeDigest['day'])
	});
	const states = [
		of('main', 0.48, '2027-03-03'),
		of('bay', 0.41, '2027-04-01'),
		of('road', 0.47, '2027-03-02'),
		{ ...of('cove', 0.4, '2027-03-01'), day: null, status: 'noFreezeUp' as const }
	].map((digest) => ({ kind: 'known' as const, digest }));
	const lake = { id: calm.id, name: calm.name, isInvented: false, sites };
	const page = shown(homeCards([lake], states, NOW));
	expect(page).toMatch(/href="\/lakes\/pinder-lake\?site=bay"/);
	expect(page).toContain(
		'Beside it: Cleared road, lower bound 47 cm; Main, lower bound 48 cm; Far cove, not known.'
	);
	const unbound = [
		...states.slice(0, 3),
		{ kind: 'known' as const, digest: of('cove', null, '2027-03-01') }
	];
	expect(shown(homeCards([lake], unbound, NOW))).toMatch(/pinder-lake\?site=cove/);
});

test('every stored lake gets a card', async () => {
	const context = await freshContext();
	await inventedLake(context, { name: 'North Test Lake' });
	await inventedLake(context, { name: 'South Test Lake' });
	const data = (await load(formEvent({ context }))) as HomeCards;
	expect(data.attention.map(({ name }) => name)).toEqual(['North Test Lake', 'South Test Lake']);
	expect(data.attention.map(({ status }) => status)).toEqual(['noWeather', 'noWeather']);
	expect(data.waiting).toEqual([]);
});

test('a deleted lake stays within reach of an undo', async () => {
	const context = await freshContext();
	const { id } = await inventedLake(context, { name: 'North Test Lake' });
	await deleteLake(context, id);
	const data = (await load(formEvent({ context }))) as {
		deleted: { id: string; name: string }[];
	};
	expect(data.deleted).toEqual([{ id, name: 'North Test Lake' }]);
	expect(shown({}, data.deleted)).toContain('Deleted: North Test Lake');
	const undone = await outcomeOf(actions['restore'], formEvent({ context, fields: { id } }));
	expect(undone).toMatchObject({ status: 303, location: `/lakes/${id}` });
	expect(await listLakes(context)).toHaveLength(1);
});

test('the undo of a lake that never was is not found', async () => {
	const context = await freshContext();
	const undo = outcomeOf(actions['restore'], formEvent({ context, fields: { id: 'none' } }));
	await expect(undo).rejects.toMatchObject({ status: 404 });
});
