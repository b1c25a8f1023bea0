import type { SubmitFunction } from '@sveltejs/kit';

/**
 * For `use:enhance`: what was typed stays while there is something to mend, and is cleared once it
 * is stored.
 */
export const keepTyped: SubmitFunction =
	() =>
	async ({ result, formElement, update }) => {
		if (result.type === 'redirect') formElement.reset();
		await update({ reset: false });
	};
