import { StorageRefusal } from '../storage/refusal.ts';
import { storageTrouble, troubleSentence } from '../storage/trouble.ts';

/**
 * Whether something failed for want of room, rights or a sound disk, in a sentence with what to do
 * and without its full stop; `null` for every other failure.
 */
export function troubleOf(cause: unknown): string | null {
	if (cause instanceof StorageRefusal) return cause.message;
	const trouble = storageTrouble(cause);
	return trouble && troubleSentence(trouble);
}

export { StorageRefusal };
