import adapter from '@sveltejs/adapter-node';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
	preprocess: vitePreprocess({ script: false }),
	kit: {
		adapter: adapter(),
		// Our own hook refuses other origins, for the API and forms alike, and says so in its own words.
		csrf: { trustedOrigins: ['*'] }
	}
};
