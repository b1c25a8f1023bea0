import type { Context } from '#lib/server/context.ts';
import type { Viewer } from '#lib/server/services/access/viewer.ts';

declare global {
	namespace App {
		interface Locals {
			context: Context;
			/** Who asks. */
			viewer: Viewer;
			/** That nothing can be stored now, in a sentence. */
			trouble?: string;
			/** That the page is made of all that is stored, and is the same while that is. */
			mayBeKept?: boolean;
		}
		interface Error {
			message: string;
			/** Under which the log has the whole story. */
			id?: string;
			/** What the message says is no fault of the app: the disk is full, or the like. */
			isTrouble?: boolean;
		}
	}
}
