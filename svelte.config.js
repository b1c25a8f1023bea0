import adapter from '@sveltejs/adapter-node';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** The one style attribute on a page: the line that Kit itself reads new titles out by. */
const KITS_ANNOUNCER = 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo=';

/** The one script that stands in the template: Kit knows its own alone. */
const [, ofTemplate = ''] =
	/<script>(.*?)<\/script>/s.exec(readFileSync('src/app.html', 'utf8')) ?? [];
const TEMPLATES_SCRIPT = `sha256-${createHash('sha256').update(ofTemplate).digest('base64')}`;

/** @type {import('@sveltejs/kit').Config} */
export default {
	preprocess: vitePreprocess({ script: false }),
	kit: {
		adapter: adapter(),
		// A page's own styles come within it: a dozen small files would each hold up its first words.
		inlineStyleThreshold: 16_384,
		// Registered by a page that stands already: what it fetches must not get in the way of the first visit.
		serviceWorker: { register: false },
		// Our own hook refuses other origins, for the API and forms alike, and says so in its own words.
		csrf: { trustedOrigins: ['*'] },
		csp: {
			// Rendered pages are kept and told again, with their headers: a nonce would be told twice.
			mode: 'hash',
			directives: {
				'default-src': ['self'],
				'script-src': ['self', TEMPLATES_SCRIPT],
				'style-src': ['self'],
				'style-src-attr': ['unsafe-hashes', KITS_ANNOUNCER],
				'img-src': ['self'],
				'font-src': ['self'],
				'connect-src': ['self'],
				'worker-src': ['self'],
				'manifest-src': ['self'],
				'object-src': ['none'],
				'frame-src': ['none'],
				'frame-ancestors': ['none'],
				'base-uri': ['none'],
				'form-action': ['self']
			}
		}
	}
};
