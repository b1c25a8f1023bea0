/* Pulling the members to a reading of one hole by the ensemble Kalman filter: see time-ensemble.c. */
#include "members.c"

/* One hole, with whole and white ice and the snow beside it. */
struct reading {
	double day, total_m, white_share, snow_m;
};

static double mean_of(const double *values, int count)
{
	double sum = 0;
	for (int i = 0; i < count; i++) sum += values[i];
	return sum / count;
}

static double covariance(const double *values, const double *predicted, double mean, int count)
{
	double own = mean_of(values, count), sum = 0;
	for (int i = 0; i < count; i++) sum += (values[i] - own) * (predicted[i] - mean);
	return sum / (count - 1);
}

/* What each member says, and how what was measured differs from that. */
struct measured {
	double *predicted, *perturbation, value, sd, mean, variance, sigma, off;
};

/* What lies far above what is expected counts less. */
static double believed_sd(double gap, double variance, double sd)
{
	double whole = variance + sd * sd, excess = gap * gap / whole / 9;
	return excess <= 1 ? sd : sqrt(whole * excess * excess - variance);
}

static void weigh(struct measured *y, int count)
{
	y->mean = mean_of(y->predicted, count);
	y->variance = 0;
	for (int i = 0; i < count; i++) {
		double gap = y->predicted[i] - y->mean;
		y->variance += gap * gap;
	}
	y->variance /= count - 1;
	y->off = (y->value - y->mean) / sqrt(y->variance + y->sd * y->sd);
	y->sigma = y->off > 0 ? believed_sd(y->value - y->mean, y->variance, y->sd) : y->sd;
}

static void move(double *values, double gain, const struct measured *y, int count)
{
	double pull = gain * covariance(values, y->predicted, y->mean, count) /
				  (y->variance + y->sigma * y->sigma);
	if (pull == 0) return;
	for (int i = 0; i < count; i++)
		values[i] += pull * (y->value + y->sigma * y->perturbation[i] - y->predicted[i]);
}

static double drift_m(double days) { return 0.009 * sqrt(fmin(40, days)); }

static void drift(struct ensemble *e, double days, double *noise)
{
	double *clear_m = e->members.clear_m, size_m = drift_m(days);
	normal_draws(noise, e->members.count, &e->random);
	for (int i = 0; i < e->members.count; i++)
		if (clear_m[i] > 0) clear_m[i] = fmax(0, clear_m[i] + size_m * noise[i]);
}

static void tidy(struct members *m)
{
	for (int i = 0; i < m->count; i++) {
		double total_m = fmax(0, m->clear_m[i] + m->white_m[i]);
		m->white_m[i] = fmin(total_m, fmax(0, m->white_m[i]));
		m->clear_m[i] = total_m - m->white_m[i];
		m->snow_m[i] = fmax(0, m->snow_m[i]);
		m->slush_m[i] = fmax(0, m->slush_m[i]);
		m->crust_m[i] = fmin(m->crust_m[i], m->white_m[i]);
		m->liquid[i] = fmin(1, fmax(0, m->liquid[i]));
		if (m->density_kg_m3[i] <= 0) m->density_kg_m3[i] = 250;
	}
}

static void take_total(struct ensemble *e, struct measured *y)
{
	struct members *m = &e->members;
	double *state[] = {m->clear_m, m->white_m, m->slush_m, m->snow_m, m->liquid, e->frost, e->thaw};
	for (int i = 0; i < m->count; i++) y->predicted[i] = m->clear_m[i] + m->white_m[i];
	normal_draws(y->perturbation, m->count, &e->random);
	weigh(y, m->count);
	for (int k = 0; k < 7; k++) move(state[k], 1, y, m->count);
	for (int k = 0; k < UNCERTAIN; k++) move(e->site[k], 0.15, y, m->count);
	for (int k = 0; k < UNCERTAIN; k++) move(e->winter[k], 0.15, y, m->count);
	tidy(m);
}

static void take_white_share(struct ensemble *e, struct measured *y, double *total_m)
{
	struct members *m = &e->members;
	for (int i = 0; i < m->count; i++) {
		total_m[i] = m->clear_m[i] + m->white_m[i];
		y->predicted[i] = total_m[i] > 0 ? m->white_m[i] / total_m[i] : 0;
	}
	normal_draws(y->perturbation, m->count, &e->random);
	weigh(y, m->count);
	move(m->white_m, 1, y, m->count);
	for (int i = 0; i < m->count; i++) {
		m->white_m[i] = fmin(total_m[i], fmax(0, m->white_m[i]));
		m->clear_m[i] = total_m[i] - m->white_m[i];
	}
	tidy(m);
}

static void take_snow(struct ensemble *e, struct measured *y)
{
	struct members *m = &e->members;
	memcpy(y->predicted, m->snow_m, m->count * sizeof(double));
	normal_draws(y->perturbation, m->count, &e->random);
	weigh(y, m->count);
	move(m->snow_m, 1, y, m->count);
	tidy(m);
}

/* Returns by how many standard deviations the thickness was off. */
static double recalibrate(struct ensemble *e, const struct reading *reading, int day,
						  double *scratch)
{
	int count = e->members.count;
	double *total_m = scratch + 2 * count;
	struct measured y = {.predicted = scratch, .perturbation = scratch + count};
	for (int i = 0; i < count; i++) total_m[i] = e->members.clear_m[i] + e->members.white_m[i];
	double expected_m = mean_of(total_m, count);
	drift(e, day - e->last_read, y.perturbation);
	y.value = reading->total_m;
	double reached = expected_m / (expected_m + 0.1);
	y.sd = hypot(0.035 * reached, hypot(0.03 * reached, 0.01));
	take_total(e, &y);
	double off = y.off;
	y.value = reading->white_share;
	y.sd = 0.2;
	take_white_share(e, &y, total_m);
	y.value = reading->snow_m;
	y.sd = hypot(0.02, 0.4 * reading->snow_m);
	take_snow(e, &y);
	bend_parameters(e);
	e->last_read = day;
	return off;
}
