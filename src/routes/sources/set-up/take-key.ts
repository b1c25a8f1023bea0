import type { Context } from '#lib/server/context.ts';
import { heldKey, holdKey } from '#lib/server/services/sources/held-keys.ts';
import { sourceKey } from '#lib/server/services/sources/input.ts';
import type { FormValues } from '#lib/ui/forms/form-input.ts';
import type { ReadCall } from './read-call.ts';

/**
 * The key of a form, typed now or in an earlier try. In the values, which go back to the page, a
 * ticket stands for it; where the address has moved to another host it has to be typed again, and so
 * where what was typed can be no key.
 */
export function takeKey(
	context: Context,
	typed: string | undefined,
	values: FormValues,
	call: ReadCall
): string | null {
	const key = sourceKey.safeParse(typed);
	if (key.success) values['held'] = holdKey(context, key.data, call);
	const known = heldKey(context, values['held'] ?? '', call);
	if (known === null) values['held'] = '';
	return known;
}
