import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { winterId } from './fields.ts';
import { readingsFromCsv } from './readings-csv.ts';
import { newSite } from './site-input.ts';
import { createSite } from './sites.ts';
import { saveSiteWinter, winterInput } from './winters.ts';

export const demoWinter = z.object({ winter: winterId }).loose();

const demoSite = z.object({
	winters: z.array(demoWinter),
	/** A file of the same folder. */
	readings: z.string().nullable()
});

type DemoSite = z.output<typeof demoSite>;

/** Parts of the lake beside its main one. */
export const demoSites = z.array(demoSite.extend({ site: newSite }));

/** @throws ZodError, and Error for what cannot be stored. */
export async function loadDemoSites(
	ctx: Context,
	lakeId: string,
	sites: z.output<typeof demoSites>,
	folder: string
): Promise<void> {
	for (const { site, ...kept } of sites) {
		const stored = await createSite(ctx, lakeId, site);
		if (stored.status !== 'stored')
			throw new Error(`The demo site ${site.name} cannot be stored: ${JSON.stringify(stored)}`);
		await loadDemoSite(ctx, lakeId, stored.site.id, kept, folder);
	}
}

/** What people would have entered of one site: its winters first, that readings have a freeze-up. */
export async function loadDemoSite(
	ctx: Context,
	lakeId: string,
	site: string,
	{ winters, readings }: DemoSite,
	folder: string
): Promise<void> {
	for (const { winter, ...record } of winters) {
		await saveSiteWinter(ctx, lakeId, site, { winter, ...winterInput.parse(record) });
	}
	if (readings === null) return;
	const text = await readFile(join(folder, readings), 'utf8');
	refuseUnread(readings, await readingsFromCsv(ctx, lakeId, site, text));
}

/** @throws Error for a file of the demo that was not stored whole. */
export function refuseUnread(
	file: string,
	{ status, ...report }: { status: string; problems?: unknown[]; rejected?: unknown[] }
): void {
	const problems = report.problems ?? report.rejected ?? [];
	if (status === 'stored' && problems.length === 0) return;
	throw new Error(`Demo file ${file} cannot be read: ${JSON.stringify(problems.slice(0, 3))}`);
}
