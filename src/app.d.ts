import type { Context } from '#lib/server/context.ts';

declare global {
	namespace App {
		interface Locals {
			context: Context;
		}
		interface Error {
			message: string;
			/** Under which the log has the whole story. */
			id?: string;
		}
	}
}
