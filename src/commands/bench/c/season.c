/*
 * The model's winter in C, for the speed comparison of the benchmark: the same equations as
 * src/lib/model for a site without events and readings, whose days all report a mean temperature,
 * precipitation and snowfall. Sources and reasons stand there. Not used by the product.
 */
#include "cover.c"

static double grown_m(double start_m, double freezing_degCd, double cover)
{
	if (freezing_degCd <= 0) return start_m;
	double offset_m = CLEAR_ICE_W_mK * cover, from_m = start_m + offset_m;
	double gain_m2 = 2 * CLEAR_ICE_W_mK * DAY_s / CLEAR_ICE_FUSION_J_m3 * freezing_degCd;
	return sqrt(from_m * from_m + gain_m2) - offset_m;
}

/* Returns the share of the step that is left for ice to form in. */
static double cool_water(struct site *s, const struct forcing *f, const struct parameters *p)
{
	double per_degree_day = p->exchange_W_m2K * DAY_s;
	double sun = f->sun_W_m2 * p->cloudFraction * (1 - 0.07) * f->duration_d * DAY_s;
	double warmed = s->water_J_m2 + f->thawing_degCd * per_degree_day + sun * f->warm;
	double left = f->freezing_degCd - warmed / per_degree_day;
	s->water_J_m2 = fmax(0, -left) * per_degree_day;
	return left > 0 ? left / f->freezing_degCd : 0;
}

static double snow_resistance(double snow_m, double density_kg_m3, double warmth,
							  const struct parameters *p)
{
	if (snow_m <= 0) return 0;
	double rho = fmin(0.6, fmax(0, density_kg_m3) / 1000);
	double land = rho < 0.156 ? 0.023 + 0.234 * rho : 0.138 - 1.01 * rho + 3.233 * rho * rho;
	return snow_m / (warmth * p->snowConductivityRatio * land);
}

/* Freezes slush from its top and returns the frost that is left. */
static double freeze_slush(struct site *s, double freezing_degCd, double film,
						   const struct parameters *p)
{
	if (s->slush_m <= 0) return freezing_degCd;
	double phi = 1 - p->slushMatrix_kg_m3 / CLEAR_ICE_kg_m3, heat = WATER_kg_m3 * phi * FUSION_J_kg;
	double cover = film + s->crust_m / WHITE_ICE_W_mK, offset = WHITE_ICE_W_mK * cover;
	double gain = 2 * WHITE_ICE_W_mK * DAY_s * freezing_degCd / heat;
	double possible_m = freezing_degCd <= 0 ? 0 : sqrt(offset * offset + gain) - offset;
	double frozen_m = fmin(s->slush_m, possible_m);
	double used = freezing_degCd;
	if (frozen_m < possible_m)
		used = heat * (frozen_m * frozen_m / (2 * WHITE_ICE_W_mK) + frozen_m * cover) / DAY_s;
	double white_m = frozen_m * slush_kg_m3(p) / WHITE_ICE_kg_m3;
	s->slush_m -= frozen_m;
	s->white_m += white_m;
	s->crust_m = s->slush_m > 0 ? s->crust_m + white_m : 0;
	return freezing_degCd - used;
}

static double frost_degCd(const struct forcing *f, const struct parameters *p)
{
	if (f->freezing_degCd <= 0) return 0;
	double sun_W_m2 = (1 - p->snowAlbedo) * p->cloudFraction * f->sun_W_m2;
	double colder_K = (p->skyLoss_W_m2 - sun_W_m2) / p->exchange_W_m2K;
	double time_d = (1 - f->warm) * f->duration_d, added_degCd = colder_K * time_d;
	if (added_degCd <= 0) return fmax(0, f->freezing_degCd + added_degCd);
	return f->freezing_degCd + added_degCd * fmin(1, f->freezing_degCd / time_d);
}

static double thinned_part(const struct site *s, const struct parameters *p)
{
	double most_m = p->thinSnowRatio * (s->clear_m + s->white_m);
	return s->snow_m > most_m ? most_m / s->snow_m : 1;
}

static double grown_under(double start_m, double half, double bare, double first, double rise)
{
	double early = 0.5 - sqrt(3) / 6;
	return grown_m(grown_m(start_m, half, bare + first + early * rise), half,
				   bare + first + (1 - early) * rise);
}

static void freeze(struct site *s, double before_m, double before_kg_m3, const struct forcing *f,
				   const struct rates *r, const struct parameters *p)
{
	double film = 1 / p->exchange_W_m2K, warmth = r->snow_warmth;
	double first = snow_resistance(before_m, before_kg_m3, warmth, p);
	double rise = snow_resistance(s->snow_m, s->density_kg_m3, warmth, p) - first;
	double half = freeze_slush(s, frost_degCd(f, p), film + first + rise / 2, p) / 2;
	double melted_m = p->waterHeat_W_m2 * f->duration_d * DAY_s / CLEAR_ICE_FUSION_J_m3;
	double start_m = fmax(0, s->clear_m - melted_m / 2);
	double bare = film + s->white_m / WHITE_ICE_W_mK, part = thinned_part(s, p);
	double grown = grown_under(start_m, half, bare, first, rise);
	double thin = grown_under(start_m, half, bare, part * first, part * rise);
	grown += p->thinSnowFraction * (thin - grown);
	double thickness_m = s->clear_m + s->white_m;
	double healed_m = fmin(grown - start_m, s->liquid * thickness_m);
	if (healed_m > 0)
		s->liquid -= healed_m / thickness_m;
	else
		healed_m = 0;
	s->clear_m = fmax(0, grown - healed_m - melted_m / 2);
}

static double absorbed_fraction(const struct site *s, const struct parameters *p)
{
	double hiding = fmin(1, s->white_m / 0.03), covered = fmin(1, s->snow_m / 0.02);
	double ice = p->clearAlbedo + (p->whiteAlbedo - p->clearAlbedo) * hiding;
	double albedo = ice + (p->snowAlbedo - ice) * covered;
	return (1 - albedo) * exp(-20 * s->snow_m);
}

static double take(double *depth_m, double left_J_m2, double heat_J_m3)
{
	double melted_m = fmin(*depth_m, left_J_m2 / heat_J_m3);
	*depth_m -= melted_m;
	return left_J_m2 - melted_m * heat_J_m3;
}

static void melt_top(struct site *s, double heat_J_m2, const struct parameters *p)
{
	if (heat_J_m2 <= 0) return;
	double solid = fmax(0.1, 1 - s->liquid);
	heat_J_m2 = take(&s->slush_m, heat_J_m2, p->slushMatrix_kg_m3 * FUSION_J_kg);
	heat_J_m2 = take(&s->white_m, heat_J_m2, WHITE_ICE_kg_m3 * FUSION_J_kg * solid);
	take(&s->clear_m, heat_J_m2, CLEAR_ICE_FUSION_J_m3 * solid);
}

static void melt_bottom(struct site *s, double heat_J_m2)
{
	double melted_m = heat_J_m2 / CLEAR_ICE_FUSION_J_m3, white_m = fmax(0, melted_m - s->clear_m);
	s->clear_m = fmax(0, s->clear_m - melted_m);
	s->white_m = fmax(0, s->white_m - white_m);
}

static void rot(struct site *s, double inside_J_m2)
{
	double thickness_m = s->clear_m + s->white_m;
	if (thickness_m <= 0) return;
	double melted = inside_J_m2 / (CLEAR_ICE_FUSION_J_m3 * fmax(0.02, thickness_m));
	s->liquid = fmin(1, s->liquid + melted);
}

static int has_ice(const struct site *s) { return s->clear_m + s->white_m + s->slush_m > 0; }

static void thaw(struct site *s, double thawing_degCd, const struct forcing *f,
				 const struct parameters *p)
{
	double sun_W_m2 = f->sun_W_m2 * p->cloudFraction * absorbed_fraction(s, p);
	double time_s = f->duration_d * DAY_s;
	double air_J_m2 = thawing_degCd * p->iceMelt_m_degCd * CLEAR_ICE_FUSION_J_m3;
	melt_top(s, air_J_m2, p);
	melt_bottom(s, sun_W_m2 * p->belowFraction * time_s);
	rot(s, sun_W_m2 * p->insideFraction * time_s);
	double sound_m = (s->clear_m + s->white_m) * (1 - s->liquid);
	int broken = s->liquid > 0.3 && sound_m < p->breakUp_m;
	if (broken || !has_ice(s)) *s = (struct site){0};
}

static void advance(struct site *s, const struct forcing *f, const struct rates *r,
					const struct parameters *p, int flood_first)
{
	double before_m = s->snow_m, before_kg_m3 = s->density_kg_m3;
	snow_fall(s, f, r, p);
	double left_degCd = melt_snow(s, f, p);
	soak(s, f->rain_kg_m2, p);
	if (flood_first) flood(s, r, p);
	freeze(s, before_m, before_kg_m3, f, r, p);
	if (!flood_first) flood(s, r, p);
	thaw(s, left_degCd, f, p);
}

static struct forcing share_of(struct forcing f, double share)
{
	f.duration_d *= share;
	f.freezing_degCd *= share;
	f.thawing_degCd *= share;
	f.snowfall_kg_m2 *= share;
	f.rain_kg_m2 *= share;
	return f;
}

static void freeze_over(struct site *s, const struct forcing *f, const struct parameters *p)
{
	double share = cool_water(s, f, p);
	if (share <= 0) return;
	struct forcing rest = share_of(*f, share);
	rest.thawing_degCd = 0;
	struct rates rates = step_rates(rest.air_degC, rest.duration_d, p);
	advance(s, &rest, &rates, p, 0);
}

static int is_delicate(const struct site *s, const struct forcing *f)
{
	if (s->clear_m + s->white_m < 0.1) return has_ice(s) || f->freezing_degCd > 0;
	return s->snow_m > 0 && f->thawing_degCd > 0;
}

/* Rates of a day in so many equal steps, and in twice as many. */
struct day_rates {
	int steps;
	struct rates coarse, fine;
};

static struct day_rates day_rates(const struct forcing *f, const struct parameters *p, int steps)
{
	return (struct day_rates){.steps = steps,
							  .coarse = step_rates(f->air_degC, f->duration_d / steps, p),
							  .fine = step_rates(f->air_degC, f->duration_d / (2 * steps), p)};
}

static void advance_day(struct site *s, const struct forcing *day, const struct day_rates *r,
						const struct parameters *p)
{
	int is_fine = is_delicate(s, day), parts = is_fine ? 2 * r->steps : r->steps;
	struct forcing f = share_of(*day, 1.0 / parts);
	for (int step = 0; step < parts; step++) {
		if (has_ice(s))
			advance(s, &f, is_fine ? &r->fine : &r->coarse, p, step % 2);
		else
			freeze_over(s, &f, p);
	}
}
