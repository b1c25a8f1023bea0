import { sveltekit } from '@sveltejs/kit/vite';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** What every page needs, and what nearly every page shows. */
const PARTS =
	/@sveltejs\/kit\/src\/(runtime|utils|exports)|preload-helper|src\/lib\/ui\/(format\/(day|length|number|moment|degrees|mass)|(is-past|status-words|alike|site-link|mark-names)|charts\/(midnight|month-name)|components\/(Key|Figure|ScrollTable|NumbersTable|StatusMark|LakeName))|src\/lib\/model\/(load-name|words|constants|ice-plate)\./;

/** What the pages of a lake share. */
const LAKE =
	/src\/routes\/lakes\/\[lake\]\/[^/]+\.(svelte|ts)|src\/lib\/ui\/((lake-pages|sentences|climate-words|load-dates)\.ts|charts\/ruler|components\/(SiteChooser|WinterStrip))/;

/** What pages with forms share. */
const FORMS = /src\/lib\/ui\/forms\//;

/** What reads dates in words, which nothing in the browser asks for: the charts take instants. */
const READERS_OF_WORDS = /\/_lib\/(match|formatDistance|formatRelative)\.js$/;

/** Keeps the reading of written dates out of the charts, of which it would be a tenth. */
const lighterCharts: Plugin = {
	name: 'lighter-charts',
	enforce: 'pre',
	applyToEnvironment: ({ name }) => name === 'client',
	resolveId(source, importer) {
		if (importer?.includes('date-fns/locale/en-US') && READERS_OF_WORDS.test(source))
			return this.resolve('/src/lib/ui/charts/no-words.ts');
		const isAdapter = source === 'date-fns' && importer?.includes('chartjs-adapter-date-fns');
		return isAdapter ? this.resolve('/src/lib/ui/charts/date-functions.ts') : null;
	}
};

/** Small parts that pages share come in three files: each file of its own costs a wait of the line. */
const fewFiles: Plugin = {
	name: 'few-files',
	configEnvironment(name) {
		if (name !== 'client') return;
		const groups = [
			{ name: 'parts', test: PARTS, minShareCount: 2, priority: 2 },
			{ name: 'lake', test: LAKE, minShareCount: 2, priority: 1 },
			{ name: 'forms', test: FORMS, minShareCount: 3 }
		];
		return { build: { rolldownOptions: { output: { codeSplitting: { groups } } } } };
	}
};

/** Tests of what has no state, no clock and no files of its own. */
const PURE = ['model', 'ui', 'validation'].map((folder) => `tests/${folder}/**/*.test.ts`);

export default defineConfig({
	plugins: [lighterCharts, fewFiles, sveltekit()],
	// For the development server, which would otherwise hand Node 20 what it cannot read yet (`using`).
	oxc: { target: 'es2023' },
	build: {
		// Scripts of other pages are not named beforehand: their names weigh more than they help.
		modulePreload: {
			resolveDependencies: (_, names) => names.filter((name) => name.endsWith('.css'))
		}
	},
	test: {
		testTimeout: 30_000,
		hookTimeout: 120_000,
		setupFiles: ['tests/support/fail-on-console.ts'],
		// All cores: by default one is left idle, which on two is half of them.
		maxWorkers: '100%',
		projects: [
			{
				extends: true,
				test: {
					name: 'node',
					include: ['tests/**/*.test.ts'],
					exclude: ['tests/e2e/**', ...PURE]
				}
			},
			{
				extends: true,
				// Nothing there keeps anything for itself, so that one file's imports serve the next.
				test: { name: 'pure', include: PURE, isolate: false }
			},
			{
				extends: true,
				test: {
					name: 'browser',
					include: ['tests/e2e/**/*.test.ts'],
					globalSetup: ['tests/support/browser-setup.ts'],
					testTimeout: 120_000
				}
			}
		]
	}
});
