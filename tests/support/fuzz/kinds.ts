import fc from 'fast-check';
import { API_CALLS, QUERIES } from './api-calls.ts';
import { openApiLake } from './api-lake.ts';
import { CSV_TEXTS, GPX_TEXTS, READING_TABLES } from './good-files.ts';
import { kind, type Kind } from './kind.ts';
import { forms } from './forms.ts';
import { mutatedJson } from './mutate-json.ts';
import { mutated } from './mutate-text.ts';
import { sourceAnswers } from './source-answers.ts';

const LAKE = '/api/v1/lakes/{lake}';

/** Weather files; some are stored, which takes far longer than reading them. */
const csv = kind({
	inputs: fc.record({
		text: mutated(fc.constantFrom(...CSV_TEXTS)),
		isDry: fc.nat(14).map((one) => one > 0)
	}),
	async open() {
		const lake = await openApiLake();
		return {
			take: ({ text, isDry }) =>
				lake.call('POST', lake.fill(`${LAKE}/weather${isDry ? '?dryRun=1' : ''}`), { text }),
			close: lake.close
		};
	}
});

const gpx = kind({
	inputs: mutated(fc.constantFrom(...GPX_TEXTS)),
	async open() {
		const lake = await openApiLake();
		const headers = { 'content-type': 'application/gpx+xml' };
		return {
			take: (text) => lake.call('POST', lake.fill(`${LAKE}/places.gpx`), { text, headers }),
			close: lake.close
		};
	}
});

const body = kind({
	inputs: fc
		.constantFrom(...API_CALLS)
		.chain((call) => fc.record({ call: fc.constant(call), text: mutatedJson([call.body]) })),
	async open() {
		const lake = await openApiLake();
		const headers = { 'content-type': 'application/json' };
		return {
			take: ({ call: { method, path }, text }) =>
				lake.call(method, lake.fill(`/api/v1${path}`), { text: lake.fill(text), headers }),
			close: lake.close
		};
	}
});

const query = kind({
	inputs: mutated(fc.constantFrom(...QUERIES)),
	async open() {
		const lake = await openApiLake();
		return {
			async take(text) {
				const address = lake.fill(`/api/v1${text.replace(/^\/api\/v1/, '')}`);
				if (!URL.canParse(address, 'http://localhost') || isMalformed(address)) {
					return { status: 400, text: 'Kit itself refuses it' };
				}
				return lake.call('GET', address, {});
			},
			close: lake.close
		};
	}
});

/** Readings as a table, by the page's own form. */
const table = kind({
	inputs: mutated(fc.constantFrom(...READING_TABLES)),
	async open() {
		const lake = await openApiLake();
		return {
			take: (text) => forms.importReadings(lake, text),
			close: lake.close
		};
	}
});

export const KINDS: Readonly<Record<string, Kind>> = {
	csv,
	gpx,
	body,
	query,
	table,
	form: forms.kind,
	source: sourceAnswers
};

function isMalformed(address: string): boolean {
	try {
		const { pathname, origin } = new URL(address, 'http://localhost');
		decodeURIComponent(pathname);
		return origin !== 'http://localhost' || !pathname.startsWith('/api/');
	} catch {
		return true;
	}
}
