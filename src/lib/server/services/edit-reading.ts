import type { Reading } from '#lib/model/reading.ts';
import type { Context } from '../context.ts';
import {
	contentOf,
	declineVersion,
	listChangedVersions,
	listOtherVersions,
	replaceVersion,
	setAside,
	type OtherVersion
} from '../storage/reading-versions.ts';
import { findStanding, ReadingNotFound } from './standing-reading.ts';
import { refuseAhead } from './not-ahead.ts';
import { readingInput, type ReadingChange } from './reading-input.ts';
import { nudgeTelling } from './telling/nudge.ts';

export type { OtherVersion };

export interface Edit {
	change: ReadingChange;
	/** The version that whoever wrote it had before them; `null` writes over whatever stands. */
	version: number | null;
}

export type Edited =
	| { status: 'stored'; reading: Reading; version: number }
	/** Somebody else was faster: theirs stands, and this one is kept beside it for people to choose. */
	| { status: 'aside'; id: number; stands: Reading; version: number };

/** Others that write at the same moment make it try again. */
const TRIES = 5;

/**
 * Changes a reading. What was written over an older version never goes over a newer one: both are kept.
 * @throws LakeNotFound, ReadingNotFound; ZodError when the reading would contradict itself
 * or be of a day to come.
 */
export async function editReading(
	ctx: Context,
	lakeId: string,
	id: string,
	{ change, version }: Edit
): Promise<Edited> {
	for (let tries = 1; ; tries++) {
		const stands = await findStanding(ctx, lakeId, id);
		const { id: _, ...before } = stands.reading;
		const reading = { id, ...readingInput.parse({ ...before, ...change }) };
		const isSame = contentOf(reading) === contentOf(stands.reading);
		if (isSame) return { status: 'stored', reading, version: stands.version };
		await refuseAhead(ctx, lakeId, [reading]);
		const isNewest = version === null || version === stands.version;
		const at = ctx.now();
		const now = isNewest
			? await replaceVersion(ctx.db, lakeId, { reading, version: stands.version, at })
			: null;
		if (now !== null) {
			nudgeTelling(ctx, lakeId);
			return { status: 'stored', reading, version: now };
		}
		if (version === null && tries < TRIES) continue;
		const aside = await setAside(ctx.db, { reading, version: version ?? stands.version, at });
		return { status: 'aside', id: aside, stands: stands.reading, version: stands.version };
	}
}

/** Which version of each of a lake's readings stands. */
export async function readingVersions(
	ctx: Context,
	lakeId: string
): Promise<(id: string) => number> {
	const changed = await listChangedVersions(ctx.db, lakeId);
	return (id) => changed.get(id) ?? 1;
}

/** What a reading was before, and what others wrote beside it. @throws LakeNotFound, ReadingNotFound */
export async function otherVersions(
	ctx: Context,
	lakeId: string,
	id: string
): Promise<OtherVersion[]> {
	await findStanding(ctx, lakeId, id);
	return listOtherVersions(ctx.db, id);
}

/** Those that wait for somebody to choose. @throws LakeNotFound, ReadingNotFound */
export async function versionsAside(
	ctx: Context,
	lakeId: string,
	id: string
): Promise<OtherVersion[]> {
	return (await otherVersions(ctx, lakeId, id)).filter(({ kind }) => kind === 'aside');
}

/** Lets a version that was set aside stand. @throws LakeNotFound, ReadingNotFound */
export async function takeVersion(
	ctx: Context,
	lakeId: string,
	id: string,
	versionId: number
): Promise<void> {
	const chosen = await findAside(ctx, lakeId, id, versionId);
	const { id: _, ...change } = chosen.reading;
	await editReading(ctx, lakeId, id, { change, version: null });
	await declineVersion(ctx.db, id, versionId);
}

/** Leaves what stands; the other is kept, and not asked about any more. @throws LakeNotFound, ReadingNotFound */
export async function leaveVersion(
	ctx: Context,
	lakeId: string,
	id: string,
	versionId: number
): Promise<void> {
	await findAside(ctx, lakeId, id, versionId);
	await declineVersion(ctx.db, id, versionId);
	nudgeTelling(ctx, lakeId);
}

async function findAside(
	ctx: Context,
	lakeId: string,
	id: string,
	versionId: number
): Promise<OtherVersion> {
	const aside = await versionsAside(ctx, lakeId, id);
	const found = aside.find((each) => each.id === versionId);
	if (!found) throw new ReadingNotFound(lakeId, `${id}, version ${versionId}`);
	return found;
}
