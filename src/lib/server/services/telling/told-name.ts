import type { LakeRecord } from '../lakes.ts';

/** What a lake is called where nobody sees the app around it. */
export function toldName({ name, isInvented }: Pick<LakeRecord, 'name' | 'isInvented'>): string {
	return isInvented ? `${name} (invented)` : name;
}
