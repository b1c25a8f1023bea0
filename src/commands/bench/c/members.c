/*
 * Many winters of one site at once: see time-ensemble.c. One array a quantity, as the model keeps
 * them; every member's ice is taken from the arrays, carried through the day and put back.
 */
#include <stdlib.h>
#include <string.h>

#include "draws.c"
#include "season.c"

#define UNCERTAIN 10
#define POOL 4096
#define MEMBER_STEPS 1

struct members {
	int count;
	double *snow_m, *density_kg_m3, *slush_m, *white_m, *clear_m, *liquid, *crust_m, *water_J_m2;
};

/* How a parameter differs between members; `at` is its place in struct parameters. */
struct uncertain {
	double at, is_share, site, winter;
};

struct spots {
	double *ice, *tape, *snow, *thinnest;
};

struct ensemble {
	struct members members;
	struct parameters base;
	const struct uncertain *uncertain;
	double *site[UNCERTAIN], *winter[UNCERTAIN], *bent[UNCERTAIN];
	double *frost, *thaw, *pool;
	struct spots spots;
	struct random random;
	int last_read;
	double *memory, *free_memory;
};

static double *array(struct ensemble *e, int count)
{
	double *start = e->free_memory;
	e->free_memory += count;
	return start;
}

static double *drawn(struct ensemble *e, int count)
{
	double *draws = array(e, count);
	normal_draws(draws, count, &e->random);
	return draws;
}

static void open_members(struct ensemble *e, int count)
{
	struct members *m = &e->members;
	double **all[] = {&m->snow_m,  &m->density_kg_m3, &m->slush_m, &m->white_m,
					  &m->clear_m, &m->liquid,		  &m->crust_m, &m->water_J_m2};
	m->count = count;
	for (int k = 0; k < 8; k++) *all[k] = array(e, count);
}

static void draw_spots(struct ensemble *e, int count)
{
	double *five[5];
	for (int k = 0; k < 5; k++) five[k] = drawn(e, count);
	e->spots.ice = drawn(e, count);
	e->spots.tape = drawn(e, count);
	e->spots.snow = drawn(e, count);
	e->spots.thinnest = array(e, count);
	for (int i = 0; i < count; i++) {
		double least = five[0][i];
		for (int k = 1; k < 5; k++) least = fmin(least, five[k][i]);
		e->spots.thinnest[i] = least;
	}
}

static void bend_parameters(struct ensemble *e)
{
	for (int k = 0; k < UNCERTAIN; k++) {
		const struct uncertain *u = &e->uncertain[k];
		double centre = ((const double *)&e->base)[(int)u->at];
		for (int i = 0; i < e->members.count; i++) {
			double factor = exp(u->site * e->site[k][i] + u->winter * e->winter[k][i]);
			double odds = centre / (1 - centre) * factor;
			e->bent[k][i] = u->is_share ? odds / (1 + odds) : centre * factor;
		}
	}
}

/* Draws come in the order in which the model draws; what the bench leaves out is drawn all the same. */
static struct ensemble begin(int count, uint32_t seed, const struct parameters *base,
							 const struct uncertain *uncertain)
{
	struct ensemble e = {.base = *base, .uncertain = uncertain, .random = seeded(seed)};
	e.memory = e.free_memory = calloc((size_t)count * 64 + POOL, sizeof(double));
	if (!e.memory) abort();
	draw(&e.random); /* the day of freeze-up */
	open_members(&e, count);
	for (int k = 0; k < UNCERTAIN; k++) e.site[k] = drawn(&e, count);
	for (int k = 0; k < UNCERTAIN; k++) e.winter[k] = drawn(&e, count);
	for (int k = 0; k < UNCERTAIN; k++) e.bent[k] = array(&e, count);
	e.frost = drawn(&e, count);
	e.thaw = drawn(&e, count);
	e.pool = drawn(&e, POOL);
	drawn(&e, count); /* days without a temperature */
	drawn(&e, count); /* days without precipitation */
	draw_spots(&e, count);
	bend_parameters(&e);
	return e;
}

static void advance_pace(struct ensemble *e, double *pace)
{
	const double kept = exp(-1.0 / 5), fresh = sqrt(1 - kept * kept);
	int at = (int)(draw(&e->random) * POOL);
	int stride = 2 * (int)(draw(&e->random) * (POOL / 2)) + 1;
	for (int i = 0; i < e->members.count; i++) {
		pace[i] = kept * pace[i] + fresh * e->pool[at];
		at = (at + stride) % POOL;
	}
}

static double factor(double pace, double spread) { return exp(spread * pace - spread * spread / 4); }

static struct site take_member(const struct members *m, int i)
{
	return (struct site){.snow_m = m->snow_m[i],
						 .density_kg_m3 = m->density_kg_m3[i],
						 .slush_m = m->slush_m[i],
						 .white_m = m->white_m[i],
						 .clear_m = m->clear_m[i],
						 .liquid = m->liquid[i],
						 .crust_m = m->crust_m[i],
						 .water_J_m2 = m->water_J_m2[i]};
}

static void put_member(struct members *m, int i, const struct site *s)
{
	m->snow_m[i] = s->snow_m;
	m->density_kg_m3[i] = s->density_kg_m3;
	m->slush_m[i] = s->slush_m;
	m->white_m[i] = s->white_m;
	m->clear_m[i] = s->clear_m;
	m->liquid[i] = s->liquid;
	m->crust_m[i] = s->crust_m;
	m->water_J_m2[i] = s->water_J_m2;
}

static void pass_day(struct ensemble *e, const struct forcing *day)
{
	advance_pace(e, e->frost);
	advance_pace(e, e->thaw);
	struct day_rates rates = day_rates(day, &e->base, MEMBER_STEPS);
	struct parameters own = e->base;
	for (int i = 0; i < e->members.count; i++) {
		for (int k = 0; k < UNCERTAIN; k++)
			((double *)&own)[(int)e->uncertain[k].at] = e->bent[k][i];
		struct forcing weather = *day;
		if (day->freezing_degCd > 0) weather.freezing_degCd *= factor(e->frost[i], 0.45);
		if (day->thawing_degCd > 0) weather.thawing_degCd *= factor(e->thaw[i], 0.5);
		struct site s = take_member(&e->members, i);
		advance_day(&s, &weather, &rates, &own);
		put_member(&e->members, i, &s);
	}
}
