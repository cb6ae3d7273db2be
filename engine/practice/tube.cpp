#include "engine/practice/tube.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/draws.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/standards.hpp"
#include "sim/reading/table.hpp"

#include <cmath>
#include <stdexcept>

namespace matula::practice {

namespace {

constexpr double near_enough = 0.02; // Grades; no eye parts two tubes so alike.
constexpr int most_tubes = 14;
constexpr double next_to_nothing = 0.1; // Of the ladder's least dose above 0.

const scoring::TestRule& test_of(const Store& store, const std::string& key) {
  const auto* test = store.standards->rules.find_test(key);
  if (test == nullptr || store.rules.find_test(key) == nullptr) {
    throw std::invalid_argument("no test that is practised: " + key);
  }
  return *test;
}

/// Makes tubes of one test on one urine and keeps the one nearest to what is wanted.
class Search {
public:
  Search(const Store& store, const Unknown& unknown)
      : store_(store), unknown_(unknown), test_(test_of(store, unknown.what)),
        recipe_(store.standards->recipes.at(unknown.what)), urine_(store.plain) {
    const Urine* kind = store.rules.find_urine(unknown.trap);
    if (kind == nullptr) {
      throw std::invalid_argument("no urine tubes are made from: " + unknown.trap);
    }
    urine_.urochrome_a420 =
        Draws(unknown.seed).between("yellow", kind->absorbance.low, kind->absorbance.high);
  }

  Tube find() {
    const auto& ladder = recipe_.ladder_mg_per_dl;
    // First between which rungs, then between them by the logarithm of the dose.
    std::size_t low = 0;
    std::size_t high = ladder.size() - 1;
    while (high - low > 1 && !done()) {
      const std::size_t middle = (low + high) / 2;
      (off(ladder[middle]) < 0 ? low : high) = middle;
    }
    const double least = low == 0 ? next_to_nothing * ladder[1] : ladder[low];
    if (low == 0) {
      (void)off(0);
    }
    close_in(least, ladder[high]);
    best_.tried = tried_;
    return std::move(best_);
  }

private:
  /// How far too strong the tube of a dose is, in grades.
  double off(double mg_per_dl) {
    ++tried_;
    Tube tube;
    tube.test = test_.key;
    tube.mg_per_dl = mg_per_dl;
    tube.setup = scoring::ladder_setup(*store_.world, urine_, recipe_, mg_per_dl);
    tube.setup.seed = unknown_.seed;
    auto done = scoring::ladder_tube(tube.setup, recipe_);
    if (!done.stopped_because.empty()) {
      throw std::invalid_argument(test_.key + " cannot be finished: " + done.stopped_because);
    }
    tube.read =
        scoring::read_vessel(done.state, tube.setup, store_.world->thresholds, test_.scale, done.vessel);
    tube.state = std::move(done.state);
    tube.vessel = std::move(done.vessel);
    const double error = tube.read.intensity - unknown_.target;
    if (tried_ == 1 || std::abs(error) < best_off_) {
      best_off_ = std::abs(error);
      best_ = std::move(tube);
    }
    return error;
  }

  [[nodiscard]] bool done() const { return tried_ > 0 && (best_off_ < near_enough || tried_ >= most_tubes); }

  /// Halves the interval, now and then by the straight line between its ends.
  void close_in(double low, double high) {
    double low_off = done() ? 0 : off(low);
    double high_off = done() ? 0 : off(high);
    bool straight = true;
    while (!done() && low_off < 0 && high_off > 0) {
      const double share = straight ? std::clamp(-low_off / (high_off - low_off), 0.1, 0.9) : 0.5;
      straight = !straight;
      const double between = std::exp(std::log(low) + share * (std::log(high) - std::log(low)));
      const double now = off(between);
      (now < 0 ? low : high) = between;
      (now < 0 ? low_off : high_off) = now;
    }
  }

  const Store& store_;
  const Unknown& unknown_;
  const scoring::TestRule& test_;
  const scoring::Recipe& recipe_;
  specimen::Specimen urine_;
  Tube best_;
  double best_off_ = 0;
  int tried_ = 0;
};

} // namespace

Tube make_tube(const Store& store, const Unknown& unknown) {
  return Search(store, unknown).find();
}

Unknown middle_of(const Store& store, const Unknown& tube, std::size_t grade) {
  const Practised* practised = store.rules.find_test(tube.what);
  if (practised == nullptr) {
    throw std::invalid_argument("no test that is practised: " + tube.what);
  }
  Unknown middle = tube;
  middle.target = practised->within(grade, static_cast<double>(grade));
  return middle;
}

std::vector<std::string> words_of(const Store& store, const std::string& test) {
  return test_of(store, test).words;
}

std::vector<std::string> table_of(const Store& store, const std::string& test) {
  return reading::grade_table(test_of(store, test).scale);
}

} // namespace matula::practice
