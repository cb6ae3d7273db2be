#include "engine/practice/tube.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/dose.hpp"
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
    const Dose found =
        find_dose(recipe_.ladder_mg_per_dl, [this](double mg_per_dl) { return off(mg_per_dl); });
    best_.tried = found.tried;
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
