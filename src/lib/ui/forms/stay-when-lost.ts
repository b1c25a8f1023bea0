import type { SubmitFunction } from '@sveltejs/kit';

/**
 * For `use:enhance` where the connection comes and goes: leaves the fields as they are, and where no
 * answer came tells so instead of putting an error in the page's place.
 */
export function stayWhenLost(tell: (isLost: boolean) => void): SubmitFunction {
	return () => {
		tell(false);
		return async ({ result, update }) => {
			if (result.type === 'error') tell(true);
			else await update({ reset: false });
		};
	};
}
