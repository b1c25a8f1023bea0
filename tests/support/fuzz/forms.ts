import { isActionFailure, isHttpError, isRedirect } from '@sveltejs/kit';
import fc from 'fast-check';
import { formEvent } from '../form-event.ts';
import { API_CALLS } from './api-calls.ts';
import { openApiLake, type ApiLake } from './api-lake.ts';
import { kind, type Outcome } from './kind.ts';
import { mutated } from './mutate-text.ts';

type Action = (event: never) => unknown;
interface Page {
	actions?: Record<string, Action>;
}

const pages = import.meta.glob<Page>('/src/routes/**/+page.server.ts', { eager: true });

/** What calls another server, or makes a file, waits for something that is no part of this. */
const LEFT_OUT = /try|test|refresh|earlierWinters|backup|use$/;

const actions = Object.entries(pages).flatMap(([file, page]) =>
	Object.entries(page.actions ?? {})
		.filter(([name]) => !LEFT_OUT.test(name))
		.map(([name, action]) => ({ route: file.slice(11, -16), name, action }))
);

/** Names that the forms of the pages use. */
const NAMES = [
	'id name kind parent on place by remark core secondHand sure form at source way station corrects',
	'winter freezeUpOn freezeUpBy iceOutOn event refrozeOn snow_cm density_kg_m3 water_cm latitude',
	'longitude position elevation_m area_km2 meanDepth_m water timeZone chartSet mass_kg use parked_h',
	'wetCracks current group trailer_kg count spacing_m holes.0.total_cm holes.0.clear_cm',
	'holes.0.white_cm holes.0.snow_in holes.1.total_cm total_cm points.0.name points.0.spot',
	'points.1.name points.1.latitude add remove up startsAtShore endsAtShore checkedOn emergency party',
	'back told keep removalOn lead.on-foot loads readingAfter_d kinds address feed text key terms',
	'map.base map.air.path map.time.path perDay perMinute minInterval_min attribution homepage note',
	'isOn shown.on-foot __proto__'
].flatMap((names) => names.split(' '));

const VALUES: readonly string[] = [
	'yes no on main csv up {lake} {reading} {load} {spot} {route} {source} 2027-01-20 2026-12-01',
	'2026-27 0 1 -1 31 31,5 1e999 NaN measured atLeast wentThrough basin track current calendar',
	'changes lake 47.4 =1+1 <b> \0 __proto__ null [] {}'
]
	.flatMap((values) => values.split(' '))
	.concat('', '47° 24′ N', 'x'.repeat(3000))
	.concat(API_CALLS.slice(0, 12).map(({ body }) => JSON.stringify(body)));

const fields = fc.dictionary(
	fc.oneof(
		{ weight: 9, arbitrary: fc.constantFrom(...NAMES) },
		{ weight: 1, arbitrary: fc.string() }
	),
	fc.oneof(
		{ weight: 9, arbitrary: fc.constantFrom(...VALUES) },
		{ weight: 1, arbitrary: mutated(fc.constantFrom(...VALUES)) }
	),
	{ maxKeys: 12 }
);

const VISITOR = {
	cookies: { get: () => undefined, set: () => undefined, delete: () => undefined },
	getClientAddress: () => '127.0.0.1'
};

async function send(action: Action, event: object): Promise<Outcome> {
	try {
		const result = await action({ ...event, ...VISITOR } as never);
		return { status: isActionFailure(result) ? result.status : 200, text: '' };
	} catch (thrown) {
		if (isRedirect(thrown)) return { status: thrown.status, text: thrown.location };
		if (isHttpError(thrown)) return { status: thrown.status, text: thrown.body.message };
		throw thrown;
	}
}

function paramsOf(route: string, fill: ApiLake['fill']): Record<string, string> {
	const names: Record<string, string> = {
		lake: '{lake}',
		reading: '{reading}',
		load: '{load}',
		spot: '{spot}',
		route: '{route}',
		source: '{source}',
		site: 'main',
		address: '0'
	};
	const used = [...route.matchAll(/\[(\w+)\]/g)].map((hit) => hit[1] ?? '');
	return Object.fromEntries(used.map((name) => [name, fill(names[name] ?? name)]));
}

export const forms = {
	kind: kind({
		inputs: fc.record({
			of: fc.constantFrom(...actions),
			fields,
			query: fc.constantFrom(
				'',
				'winter=2026-27',
				'site=main',
				'site=nowhere',
				'winter=x',
				'from=y'
			)
		}),
		async open() {
			const lake = await openApiLake();
			return {
				take: ({ of: { route, action }, fields: typed, query }) => {
					const filled = Object.fromEntries(
						Object.entries(typed).map(([name, value]) => [name, lake.fill(value)])
					);
					const params = paramsOf(route, lake.fill);
					return send(action, formEvent({ context: lake.context, params, fields: filled, query }));
				},
				close: lake.close
			};
		}
	}),

	importReadings(lake: ApiLake, text: string): Promise<Outcome> {
		const page = pages['/src/routes/lakes/[lake]/readings/+page.server.ts'];
		const action = Object.entries(page?.actions ?? {}).find(([name]) =>
			/upload|import|csv|table/i.test(name)
		)?.[1];
		if (!action) throw new Error('the page of readings takes no file');
		const params = paramsOf('/lakes/[lake]', lake.fill);
		const file = new File([text], 'readings.csv');
		return send(action, formEvent({ context: lake.context, params, fields: { file } }));
	}
};
