/**
 * What a site is. A basin or a bay has its own freeze-up; a track was made on the ice of another site
 * and has its freeze-up.
 */
export type SiteKind = 'basin' | 'bay' | 'track';
