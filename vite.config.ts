import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
	test: {
		include: ['tests/**/*.test.ts'],
		globalSetup: ['tests/support/browser-setup.ts'],
		setupFiles: ['tests/support/fail-on-console.ts'],
		testTimeout: 30_000,
		hookTimeout: 120_000
	}
});
