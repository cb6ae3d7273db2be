// Where a reader draws the lines, and how able a learner is.
#include "engine/statistics/ability.hpp"
#include "engine/statistics/boundaries.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace matula::statistics;

namespace {

/// 36 readings of one learner, made for this project.
std::vector<GradedReading> learner() {
  const double x[] = {0.0, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3,
                      1.4, 1.6, 1.7, 1.8, 1.9, 2.0, 2.1, 2.2, 2.3, 2.4, 2.6, 2.7,
                      2.9, 3.0, 3.2, 3.3, 3.4, 3.6, 3.8, 4.0, 4.2, 4.4, 4.7, 5.0};
  const int y[] = {0, 0, 1, 0, 1, 1, 2, 1, 1, 2, 1, 2, 2, 2, 1, 2, 3, 2,
                   2, 3, 2, 3, 3, 3, 3, 3, 4, 3, 4, 4, 4, 4, 5, 4, 5, 5};
  std::vector<GradedReading> readings;
  for (std::size_t i = 0; i < std::size(x); ++i) {
    readings.push_back({x[i], y[i]});
  }
  return readings;
}

} // namespace

TEST_CASE("Plain maximum likelihood agrees with R and Python") {
  // ordinal::clm, MASS::polr, statsmodels and SciPy agree to six digits on these readings.
  BoundaryPrior none;
  none.none = true;
  const auto fitted = fit_boundaries(learner(), none);
  REQUIRE(fitted);
  const double line[] = {.338370, 1.183655, 2.152489, 3.240844, 4.334179};
  const double se[] = {.1753, .1311, .1453, .1695, .2050};
  for (std::size_t k = 0; k < lines; ++k) {
    CAPTURE(k);
    CHECK(fitted->line[k] == Approx(line[k]).margin(2e-6));
    CHECK(fitted->line_se[k] == Approx(se[k]).epsilon(0.15)); // Expected, not observed, curvature.
  }
  CHECK(fitted->spread == Approx(.323742).margin(2e-6));
  CHECK(fitted->log_posterior == Approx(-20.8157958).margin(1e-6));
}

TEST_CASE("The most probable lines agree with SciPy") {
  // The same prior and readings in SciPy and in a batched NumPy program.
  const auto fitted = fit_boundaries(learner());
  REQUIRE(fitted);
  const double line[] = {.293406, 1.198624, 2.188809, 3.247510, 4.319168};
  for (std::size_t k = 0; k < lines; ++k) {
    CAPTURE(k);
    CHECK(fitted->line[k] == Approx(line[k]).margin(2e-6));
  }
  CHECK(fitted->spread == Approx(.358686).margin(2e-6));
  CHECK(fitted->log_posterior == Approx(-21.53542174).margin(1e-6));
  CHECK(fitted->shift == Approx(-.2505).margin(0.0001));
  CHECK(fitted->shift_se == Approx(.079).margin(0.001));
}

TEST_CASE("Readings in perfect order have no plain estimate, but a most probable one") {
  std::vector<GradedReading> ordered;
  for (int grade = 0; grade < 6; ++grade) {
    ordered.push_back({static_cast<double>(grade), grade});
  }
  BoundaryPrior none;
  none.none = true;
  const auto plain = fit_boundaries(ordered, none);
  CHECK((!plain ||
         plain->spread < 0.15)); // It runs towards no spread at all, until nothing is gained any more.
  const auto probable = fit_boundaries(ordered);
  REQUIRE(probable);
  CHECK(probable->spread > 0.2);
  CHECK(probable->shift == Approx(0).margin(1e-6));
}

TEST_CASE("A grade never used does not let its two lines fall together") {
  std::vector<GradedReading> readings;
  for (const GradedReading& reading : learner()) {
    readings.push_back({reading.intensity, reading.grade == 3 ? 4 : reading.grade});
  }
  const auto fitted = fit_boundaries(readings);
  REQUIRE(fitted);
  CHECK(fitted->line[3] - fitted->line[2] > 0.2);
  CHECK_THROWS_AS(fit_boundaries(std::vector<GradedReading>{{1, 6}}), std::out_of_range);
}

TEST_CASE("Ability is the mean of its posterior") {
  // No answers: the prior. One right answer at difficulty 0: by symmetry the wrong one mirrors it; its mean
  // is the integral of x phi(x) / (1 + e^-x), twice: 0.41337 (numerical integration by hand of the
  // logistic-normal).
  CHECK(estimate_ability({}).mean == Approx(0).margin(1e-12));
  CHECK(estimate_ability({}).sd == Approx(1).margin(0.002)); // The grid ends at 4.
  const std::vector<Answer> right{{0, true}};
  const std::vector<Answer> wrong{{0, false}};
  CHECK(estimate_ability(right).mean == Approx(0.4133).margin(0.002));
  CHECK(estimate_ability(wrong).mean == Approx(-estimate_ability(right).mean));
  CHECK(estimate_ability(right).sd < 1);
  CHECK(chance_right(1.2, difficulty_for(1.2, 0.75)) == Approx(0.75));
}
