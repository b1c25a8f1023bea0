import type { SubmitFunction } from '@sveltejs/kit';

/**
 * For `use:enhance`: leaves the fields as they are. A reset would empty fields that show what is
 * stored; a form for adding is made anew by its page once the address says that it was stored.
 */
export const keepTyped: SubmitFunction =
	() =>
	({ update }) =>
		update({ reset: false });
