import { z } from 'zod';
import { name } from './fields.ts';

const kind = z
	.enum(['basin', 'bay', 'track'])
	.meta({ description: 'A track was made on the ice of another site' });

const parent = z
	.string()
	.min(1)
	.max(80)
	.nullable()
	.meta({ description: 'Of a track: the site whose ice it was before its first work' });

export const newSite = z
	.strictObject({ name, kind, parent: parent.default(null) })
	.meta({ id: 'NewSite' });

/** What is absent stays as it is. */
export const siteChange = z
	.strictObject({
		name: name.exactOptional(),
		kind: kind.exactOptional(),
		parent: parent.exactOptional()
	})
	.meta({ id: 'SiteChange' });

export type NewSite = z.output<typeof newSite>;
export type SiteChange = z.output<typeof siteChange>;
