// What few readings can tell: how near the lines come, how often an interval holds the truth, when something
// is said. Figures to compare with: a simulation of 3,000 learners each in NumPy, made for this program.
#include "statistics_support.hpp"

#include "engine/statistics/ability.hpp"
#include "engine/statistics/memory.hpp"
#include "engine/statistics/normal.hpp"

#include <catch2/catch.hpp>

using namespace matula::statistics;
using namespace matula::statistics_tests;

namespace {

struct SmallSample {
  int readings;
  double shift_error; ///< Root mean square, grades.
  double line_error;
};

struct Held {
  double shift_error = 0;
  double line_error = 0;
  double shift_held = 0; ///< Share of 90 % intervals with the truth in them.
  double line_held = 0;
};

Held simulate(int readings, int learners, double widening, std::uint64_t seed) {
  constexpr double ninety = 1.6448536269514722;
  Dice dice(seed);
  Held held;
  for (int i = 0; i < learners; ++i) {
    const Reader reader = any_reader(dice);
    const auto fitted = fit_boundaries(readings_of(dice, reader, readings));
    REQUIRE(fitted);
    const double off = fitted->shift - reader.shift();
    held.shift_error += off * off;
    held.shift_held += std::abs(off) < ninety * widening * fitted->shift_se ? 1 : 0;
    for (std::size_t k = 0; k < lines; ++k) {
      const double by = fitted->line[k] - reader.line[k];
      held.line_error += by * by / lines;
      held.line_held += std::abs(by) < ninety * widening * fitted->line_se[k] ? 1.0 / lines : 0;
    }
  }
  held.shift_error = std::sqrt(held.shift_error / learners);
  held.line_error = std::sqrt(held.line_error / learners);
  held.shift_held /= learners;
  held.line_held /= learners;
  return held;
}

} // namespace

TEST_CASE("Few readings: errors as simulated, and widened intervals that hold what they promise") {
  const SmallSample samples[] = {
      {5, .279, .363}, {10, .213, .306}, {20, .157, .251}, {40, .112, .194}, {80, .078, .147}};
  const SpeakingRule rule;
  constexpr int learners = 1500;
  for (const SmallSample& sample : samples) {
    CAPTURE(sample.readings);
    const Held held = simulate(sample.readings, learners, rule.widening, 40);
    CHECK(held.shift_error == Approx(sample.shift_error).epsilon(0.10));
    CHECK(held.line_error == Approx(sample.line_error).epsilon(0.06));
    // Unwidened .867 to .896. Three standard errors of a share of 1,500 are .023.
    CHECK(held.shift_held == Approx(0.90).margin(0.025));
    CHECK(held.line_held == Approx(0.90).margin(0.025));
  }
}

TEST_CASE("Unwidened intervals hold too little") {
  // .881 and .878 at 40 readings.
  const Held held = simulate(40, 1500, 1.0, 41);
  CHECK(held.shift_held < 0.895);
  CHECK(held.line_held < 0.895);
  CHECK(held.line_held > 0.86);
}

TEST_CASE("A shift is seldom spoken of where there is none, and nearly always where it is a grade") {
  // Flagged with a true shift of 0, a half and a whole grade: .018 .409 .963 at 10 readings, .001 .827 1 at
  // 40, with intervals not yet widened.
  const SpeakingRule rule;
  constexpr int learners = 800;
  const auto flagged = [&](int readings, double shift, double widening) {
    Dice dice(static_cast<std::uint64_t>(readings) + 7);
    int said = 0;
    for (int i = 0; i < learners; ++i) {
      const auto fitted = fit_boundaries(readings_of(dice, shifted_reader(shift), readings));
      said +=
          chance_of_shift(fitted->shift, widening * fitted->shift_se, rule.least_shift) > rule.least_chance
              ? 1
              : 0;
    }
    return static_cast<double>(said) / learners;
  };
  CHECK(flagged(10, 0, 1) == Approx(0.018).margin(0.018));
  CHECK(flagged(10, 0.5, 1) == Approx(0.409).margin(0.06));
  CHECK(flagged(10, 1, 1) == Approx(0.963).margin(0.03));
  CHECK(flagged(40, 0.5, 1) == Approx(0.827).margin(0.06));
  CHECK(flagged(10, 0, rule.widening) <= flagged(10, 0, 1));
  CHECK(flagged(40, 0, rule.widening) < 0.005);
  CHECK(flagged(40, 1, rule.widening) > 0.99);
}

TEST_CASE("Many readers on two threads give what each gives alone") {
  Dice dice(5);
  std::vector<std::vector<GradedReading>> readings;
  std::vector<std::span<const GradedReading>> readers;
  for (int i = 0; i < 31; ++i) {
    readings.push_back(readings_of(dice, any_reader(dice), 12));
  }
  readers.assign(readings.begin(), readings.end());
  const auto together = fit_boundaries_of_all(readers, 2);
  REQUIRE(together.size() == readings.size());
  for (std::size_t i = 0; i < readings.size(); ++i) {
    CHECK(together[i]->line == fit_boundaries(readings[i])->line);
    CHECK(together[i]->shift_se == fit_boundaries(readings[i])->shift_se);
  }
  CHECK(fit_boundaries_of_all({}, 2).empty());
}

TEST_CASE("The normal distribution by one exponential") {
  // Against the library's complementary error function.
  for (double z = -12; z <= 12; z += 0.01) {
    const double tail = normal_below(-std::abs(z));
    CAPTURE(z);
    CHECK(normal_at(z).tail == Approx(tail).epsilon(std::abs(z) < 3.9 ? 1e-12 : 1e-8).margin(0));
    CHECK(normal_at(z).density == Approx(0.3989422804014327 * std::exp(-z * z / 2)).epsilon(1e-14));
  }
}

TEST_CASE("Ability from the grid is that from numerical integration") {
  // scipy.integrate.quad, difficulties -1, 0.5, 1.2 with right, wrong, right.
  const std::vector<Answer> three{{-1, true}, {0.5, false}, {1.2, true}};
  CHECK(estimate_ability(three).mean == Approx(0.409800734884646).margin(1e-4));
  CHECK(estimate_ability(three).sd == Approx(0.7977676387783813).margin(1e-3)); // The grid ends at 4.
  // Error of 2,000 simulated learners, abilities and difficulties standard normal: .595, .456, .348.
  Dice dice(12);
  const double errors[] = {.595, .456, .348};
  const int counts[] = {10, 20, 40};
  for (int n = 0; n < 3; ++n) {
    double squares = 0;
    for (int i = 0; i < 2000; ++i) {
      const double able = dice.normal();
      std::vector<Answer> answers;
      for (int k = 0; k < counts[n]; ++k) {
        const double difficulty = dice.normal();
        answers.push_back({difficulty, dice.even() < chance_right(able, difficulty)});
      }
      const double off = estimate_ability(answers).mean - able;
      squares += off * off / 2000;
    }
    CHECK(std::sqrt(squares) == Approx(errors[n]).epsilon(0.06));
  }
}

TEST_CASE("A rule fades by its half-life and grows with every recall") {
  // Arithmetic: 2^-1 and 2^-2; -log2 0.9 = .152, -log2 0.8 = .322.
  CHECK(recall_chance(4, 4) == Approx(0.5));
  CHECK(recall_chance(4, 8) == Approx(0.25));
  CHECK(recall_chance(4, -1) == 1);
  CHECK(next_review(1, 0.9) == Approx(0.152).margin(0.0005));
  CHECK(next_review(1, 0.8) == Approx(0.322).margin(0.0005));
  CHECK(recall_chance(7, next_review(7, 0.85)) == Approx(0.85));
  CHECK(half_life_after(3, true) == Approx(6));
  CHECK(half_life_after(3, false) == Approx(1.5));
  CHECK(half_life_after(0.3, false) == MemoryRule{}.least_days);
}

TEST_CASE("Knowing a rule or not") {
  // By hand from A.T. Corbett and J.R. Anderson's equations: start .3, learning .15, slips .1, guesses .2;
  // right, wrong, right, right.
  const KnowledgeRule rule{0.3, 0.15, 0.1, 0.2};
  const bool right[] = {true, false, true, true};
  const double known[] = {.709756, .348994, .750907, .941643};
  double now = rule.first;
  for (int i = 0; i < 4; ++i) {
    now = known_after(now, right[i], rule);
    CHECK(now == Approx(known[i]).margin(5e-7));
  }
}

TEST_CASE("A scale of fewer words has fewer lines, and the last word goes on upwards") {
  Dice dice(77);
  Reader reader = shifted_reader(-0.4, 0.4);
  std::vector<GradedReading> three;
  for (int i = 0; i < 400; ++i) {
    const double x = -0.5 + 6 * dice.even(); // Most of these tubes are far beyond the last line.
    three.push_back({x, std::min(reader.read(dice, x), 2)});
  }
  const auto fitted = fit_boundaries(three, {}, 3);
  REQUIRE(fitted);
  CHECK(fitted->line[0] == Approx(0.1).margin(0.15));
  CHECK(fitted->line[1] == Approx(1.1).margin(0.15));
  CHECK(fitted->shift == Approx((fitted->line[0] - 0.5 + fitted->line[1] - 1.5) / 2));
  CHECK(fitted->spread == Approx(0.4).margin(0.1));
  // The usual six words would take the last for a grade nobody exceeds, and shift all lines upwards.
  CHECK(fit_boundaries(three)->shift > 0.3);
  CHECK_THROWS_AS(fit_boundaries(three, {}, 2), std::out_of_range);
  CHECK_THROWS_AS(fit_boundaries(three, {}, 7), std::invalid_argument);
}
