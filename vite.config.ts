import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
	test: {
		testTimeout: 30_000,
		hookTimeout: 120_000,
		setupFiles: ['tests/support/fail-on-console.ts'],
		projects: [
			{
				extends: true,
				test: { name: 'node', include: ['tests/**/*.test.ts'], exclude: ['tests/e2e/**'] }
			},
			{
				extends: true,
				test: {
					name: 'browser',
					include: ['tests/e2e/**/*.test.ts'],
					globalSetup: ['tests/support/browser-setup.ts'],
					fileParallelism: false,
					testTimeout: 120_000
				}
			}
		]
	}
});
