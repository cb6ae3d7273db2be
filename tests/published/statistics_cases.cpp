// Prints random tables and readings with what this program makes of them, for other programs to make the same
// (statistics_oracle.py, statistics_oracle.R). Lines of words: what, sizes, numbers, "=", results.
#include "statistics_support.hpp"

#include "engine/statistics/ability.hpp"
#include "engine/statistics/agreement.hpp"
#include "engine/statistics/items.hpp"
#include "engine/statistics/raters.hpp"

#include <cstdio>

namespace {

using namespace matula::statistics;
using matula::statistics_tests::Dice;

void put(double value) {
  std::printf(" %.17g", value);
}

void kappas(Dice& dice) {
  const std::size_t q = 3 + dice.below(4);
  PairTable table(q);
  const std::size_t pairs = 30 + dice.below(300);
  for (std::size_t i = 0; i < pairs; ++i) {
    const std::size_t truth = dice.below(q);
    table.add(truth, dice.even() < 0.6 ? truth : dice.below(q));
  }
  const Weighting all[] = {Weighting::Nominal, Weighting::Linear, Weighting::Quadratic};
  std::printf("kappa %zu", q);
  for (const double count : table.counts()) {
    put(count);
  }
  std::printf(" =");
  for (const Weighting weighting : all) {
    const auto kappa = cohen_kappa(table, agreement_weights(weighting, q));
    put(kappa ? kappa->value : 9);
    put(kappa ? kappa->se : 9);
  }
  std::printf("\n");
}

void raters(Dice& dice) {
  const std::size_t q = 2 + dice.below(4);
  const std::size_t things = 5 + dice.below(30);
  const int readers = 2 + static_cast<int>(dice.below(5));
  Ballots ballots{q, {}};
  for (std::size_t thing = 0; thing < things; ++thing) {
    std::vector<double> votes(q);
    const std::size_t truth = dice.below(q);
    for (int reader = 0; reader < readers; ++reader) {
      votes[dice.even() < 0.7 ? truth : dice.below(q)] += 1;
    }
    ballots.votes.push_back(votes);
  }
  const auto kappa = fleiss_kappa(ballots);
  std::printf("fleiss %zu %zu", things, q);
  for (const auto& votes : ballots.votes) {
    for (const double count : votes) {
      put(count);
    }
  }
  std::printf(" =");
  put(kappa.value_or(9));
  std::printf("\n");
}

void items(Dice& dice) {
  ScoreTable table{20 + dice.below(60), 3 + dice.below(12), {}};
  for (std::size_t p = 0; p < table.persons; ++p) {
    const double able = dice.normal();
    for (std::size_t i = 0; i < table.items; ++i) {
      table.scores.push_back(dice.even() < chance_right(able, 0.3 * static_cast<double>(i) - 1) ? 1 : 0);
    }
  }
  const auto figures = analyse_items(table);
  std::printf("items %zu %zu", table.persons, table.items);
  for (const auto score : table.scores) {
    put(score);
  }
  std::printf(" =");
  put(figures ? figures->alpha : 9);
  for (std::size_t i = 0; i < table.items; ++i) {
    put(figures ? figures->items[i].with_rest : 9);
  }
  std::printf("\n");
}

void lines_of_one(Dice& dice, bool with_prior) {
  const auto reader = matula::statistics_tests::any_reader(dice);
  const int count = with_prior ? 8 + static_cast<int>(dice.below(40)) : 150;
  const auto readings = matula::statistics_tests::readings_of(dice, reader, count);
  BoundaryPrior prior;
  prior.none = !with_prior;
  const auto fitted = fit_boundaries(readings, prior);
  std::printf("%s %zu", with_prior ? "probable" : "likely", readings.size());
  for (const auto& reading : readings) {
    put(reading.intensity);
    put(reading.grade);
  }
  std::printf(" =");
  for (std::size_t k = 0; k < lines; ++k) {
    put(fitted ? fitted->line[k] : 99);
  }
  put(fitted ? fitted->spread : 99);
  put(fitted ? fitted->log_posterior : 99);
  std::printf("\n");
}

void ability(Dice& dice) {
  std::vector<Answer> answers;
  const std::size_t count = dice.below(30);
  for (std::size_t i = 0; i < count; ++i) {
    const double difficulty = dice.normal();
    answers.push_back({difficulty, dice.even() < chance_right(0.5, difficulty)});
  }
  const Ability found = estimate_ability(answers);
  std::printf("ability %zu", count);
  for (const Answer& answer : answers) {
    put(answer.difficulty);
    put(answer.right ? 1 : 0);
  }
  std::printf(" =");
  put(found.mean);
  put(found.sd);
  std::printf("\n");
}

} // namespace

int main() {
  Dice dice(20261127);
  for (int i = 0; i < 40; ++i) {
    kappas(dice);
    raters(dice);
    items(dice);
    ability(dice);
    lines_of_one(dice, i % 2 == 0);
  }
  return 0;
}
