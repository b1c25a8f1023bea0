import { redirect } from '@sveltejs/kit';
import { KEPT_BACKUPS, listBackups, makeBackup } from '#lib/server/services/backups.ts';
import { listLakes } from '#lib/server/services/lakes.ts';
import { storedAmounts } from '#lib/server/services/stored-amounts.ts';
import { backupRow } from './backup-row.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals: { context }, url }) => ({
	stored: await storedAmounts(context),
	server: context.server,
	// Without a folder there is nowhere for backups to lie.
	hasBackups: context.kept !== null,
	backups: listBackups(context).map((file) => backupRow(file, context.now())),
	kept: KEPT_BACKUPS,
	lakes: (await listLakes(context)).map(({ id, name }) => ({ id, name })),
	made: url.searchParams.get('made')
});

export const actions: Actions = {
	backup: async ({ locals }) => {
		const { name } = await makeBackup(locals.context);
		redirect(303, `/storage?made=${encodeURIComponent(name)}#backups`);
	}
};
