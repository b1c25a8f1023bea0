import { floodsWithMoreSnow_kg_m2 } from '#lib/model/more-snow.ts';
import type { Context } from '../context.ts';
import { iceOutByNow } from './ice-out-by-now.ts';
import { lakeView, outlookInput, type LakeView, type ViewOptions } from './lake-view.ts';
import { whatChanges, type WhatChanges } from './what-changes.ts';

/** All that is told of when loads may be expected to go on. */
export interface GoingOn {
	view: LakeView;
	/** `null` where nothing ahead is estimated, or no day is named. */
	changes: WhatChanges | null;
}

/** @throws LakeNotFound, SiteNotFound */
export async function goingOn(
	ctx: Context,
	lakeId: string,
	options: Omit<ViewOptions, 'until' | 'toWinterEnd'> = {}
): Promise<GoingOn> {
	const asked = { ...options, toWinterEnd: true };
	const view = await lakeView(ctx, lakeId, asked);
	return { view, changes: await changesOf(ctx, lakeId, view, asked) };
}

async function changesOf(
	ctx: Context,
	lakeId: string,
	view: LakeView,
	asked: ViewOptions
): Promise<WhatChanges | null> {
	const { outlook } = view;
	if (outlook === null || outlook.today === null || !outlook.snowKnown) return null;
	if (iceOutByNow(view) !== null) return null;
	const { words: _, ...withoutWords } = asked;
	const input = await outlookInput(ctx, lakeId, withoutWords);
	return whatChanges(input, floodsWithMoreSnow_kg_m2(outlook.today.column));
}
