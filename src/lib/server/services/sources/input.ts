import { z } from 'zod';
import { weatherSource } from '../../weather/source/contract.ts';

export { weatherSource };

/** What a service gave its user to be let in with. Never answered, shown, logged or exported. */
export const sourceKey = z
	.string()
	.trim()
	.min(1, 'must not be empty; null forgets the key')
	.max(4000, 'must have 4000 characters at most')
	// What cannot be typed is a slip of copying, and no service would be let in with it.
	.regex(/^[^\p{Cc}\p{Cs}]*$/u, 'must hold no control characters; copy it anew')
	.meta({ writeOnly: true });

export const newSource = z
	.strictObject({
		source: weatherSource,
		key: sourceKey.nullable().default(null)
	})
	.meta({ id: 'NewSource', description: 'A weather source as JSON, and its key where it has one' });

export const sourceChange = z
	.strictObject({
		source: weatherSource.exactOptional(),
		/** Off: it is asked for nothing, and what it brought stays in use. */
		isOn: z.boolean().exactOptional(),
		key: sourceKey.nullable().exactOptional()
	})
	.meta({ id: 'SourceChange' });

/** The same, or a source alone as it was exported. */
export const newSourceOrExport = z.preprocess(
	(body) => (typeof body === 'object' && body && 'calls' in body ? { source: body } : body),
	newSource
);

export type NewSource = z.output<typeof newSource>;
export type SourceChange = z.output<typeof sourceChange>;
