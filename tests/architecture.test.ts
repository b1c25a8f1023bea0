import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

/**
 * Who may import whom: for each layer, the project folders it may reach besides itself.
 * `packages` says whether it may use anything from npm or Node.
 */
const LAYERS = {
	'src/lib/model': { reaches: [], packages: false },
	'src/lib/server/weather': { reaches: ['src/lib/model'], packages: true },
	'src/lib/server/storage': { reaches: ['src/lib/model'], packages: true },
	'src/lib/server/services': {
		reaches: [
			'src/lib/model',
			'src/lib/server/weather',
			'src/lib/server/storage',
			'src/lib/server/context.ts',
			'data/charts'
		],
		packages: true
	},
	'src/lib/server/context.ts': {
		reaches: [
			'src/lib/model',
			'src/lib/server/storage',
			'src/lib/server/weather',
			'src/lib/server/public-address.ts'
		],
		packages: true
	},
	'src/lib/server/public-address.ts': { reaches: [], packages: true },
	'src/lib/ui': { reaches: ['src/lib/model'], packages: true },
	'src/routes': {
		reaches: [
			'src/lib/model',
			'src/lib/ui',
			'src/lib/server/services',
			'src/lib/server/context.ts',
			'data/charts'
		],
		packages: true
	},
	'src/commands': {
		reaches: [
			'src/lib/model',
			'src/lib/server/services',
			'src/lib/server/context.ts',
			'src/lib/server/public-address.ts',
			'data/charts'
		],
		packages: true
	}
} as const;

type Layer = keyof typeof LAYERS;

const sources = files('src').filter((path) => /\.(ts|svelte)$/.test(path));

test('each layer imports only what lies below it', () => {
	const offences = sources.flatMap((path) => {
		const layer = layerOf(path);
		if (!layer) return [];
		return imports(path).flatMap((target) => {
			const { folder, name } = target;
			if (folder === null) {
				return LAYERS[layer].packages ? [] : [`${path} imports the package ${name}`];
			}
			const allowed = [layer, ...LAYERS[layer].reaches];
			return allowed.some((place) => isWithin(folder, place)) ? [] : [`${path} imports ${folder}`];
		});
	});
	expect(offences).toEqual([]);
});

test('a screen takes only types from the server, and only through the routes', () => {
	const offences = sources
		.filter((path) => path.endsWith('.svelte'))
		.flatMap((path) =>
			imports(path)
				.filter((target) => target.folder?.startsWith('src/lib/server') && !target.isType)
				.map((target) => `${path} imports ${target.folder}`)
		);
	expect(offences).toEqual([]);
});

test('the model has no clock and no dice', () => {
	const offences = sources
		.filter((path) => path.startsWith('src/lib/model'))
		.filter((path) => /Math\.random|Date\.now|new Date\(\)/.test(code(path)));
	expect(offences).toEqual([]);
});

test('every source that the model cites is listed in its bibliography', () => {
	const listed = new Set(keys(readFileSync('src/lib/model/references.md', 'utf8')));
	const missing = sources
		.filter((path) => path.startsWith('src/lib/model'))
		.flatMap((path) => keys(comments(path)).map((key) => ({ path, key })))
		.filter(({ key }) => !listed.has(key))
		.map(({ path, key }) => `${path} cites [${key}]`);
	expect(missing).toEqual([]);
});

test('no two files import each other in a circle', () => {
	expect(circles()).toEqual([]);
});

test('no file grows past 250 lines', () => {
	const long = sources.map((path) => ({ path, lines: text(path).split('\n').length - 1 }));
	expect(long.filter(({ lines }) => lines > 250)).toEqual([]);
});

test('no screen and no answer calls ice safe', () => {
	const spoken = sources.filter((path) => /\b(un)?safe(ly|ty|r|st)?\b/i.test(wordsOf(path)));
	expect(spoken).toEqual([]);
});

/** Text that a person can read: comments, imports and published titles are left out. */
function wordsOf(path: string): string {
	return code(path)
		.replace(/^import .*$/gm, '')
		.replace(/safeParse(Async)?/g, '');
}

function layerOf(path: string): Layer | undefined {
	return (Object.keys(LAYERS) as Layer[]).find((layer) => isWithin(path, layer));
}

function isWithin(path: string, place: string): boolean {
	return path === place || path.startsWith(`${place}/`);
}

interface Target {
	name: string;
	/** Path from the project's root; `null` for a package. */
	folder: string | null;
	isType: boolean;
}

function imports(path: string): Target[] {
	const pattern = /(?:^|\n)\s*(?:import|export)\s+(type\s+)?[^'"`;]*?from\s+['"]([^'"]+)['"]/g;
	const bare = /(?:^|\n)\s*import\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;
	const source = code(path);
	const named = [...source.matchAll(pattern)].map((hit) => ({
		name: hit[2] ?? '',
		isType: Boolean(hit[1])
	}));
	const plain = [...source.matchAll(bare)].map((hit) => ({
		name: hit[1] ?? hit[2] ?? '',
		isType: false
	}));
	return [...named, ...plain].map((hit) => ({ ...hit, folder: resolveImport(path, hit.name) }));
}

function resolveImport(path: string, name: string): string | null {
	if (name.startsWith('#lib/')) return `src/lib/${name.slice(5)}`;
	if (name === '$data' || name.startsWith('$data/')) return name.replace('$data', 'data');
	if (!name.startsWith('.')) return null;
	const target = relative('.', resolve(dirname(path), name));
	return target.includes('/$types') || target.endsWith('$types') ? dirname(path) : target;
}

function circles(): string[] {
	const graph = new Map(
		sources.map((path) => [
			path,
			imports(path).flatMap(({ folder, isType }) => (folder && !isType ? [folder] : []))
		])
	);
	const found: string[] = [];
	const state = new Map<string, 'open' | 'done'>();
	const visit = (path: string, trail: string[]): void => {
		if (state.get(path) === 'done') return;
		if (state.get(path) === 'open') {
			found.push([...trail.slice(trail.indexOf(path)), path].join(' > '));
			return;
		}
		state.set(path, 'open');
		for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
		state.set(path, 'done');
	};
	for (const path of graph.keys()) visit(path, []);
	return found;
}

function keys(words: string): string[] {
	return [...words.matchAll(/\[([A-Z][A-Za-z]+\d{4}[a-z]?)\]/g)].map((hit) => hit[1] ?? '');
}

function text(path: string): string {
	return readFileSync(path, 'utf8');
}

function code(path: string): string {
	return text(path)
		.replace(/\/\*[\s\S]*?\*\//g, '')
		.replace(/<!--[\s\S]*?-->/g, '')
		.replace(/(^|\s)\/\/.*$/gm, '$1');
}

function comments(path: string): string {
	return [...text(path).matchAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm)].map((hit) => hit[0]).join('\n');
}

function files(folder: string): string[] {
	return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
		const path = join(folder, entry.name);
		return entry.isDirectory() ? files(path) : [path];
	});
}
