#include "engine/author/curve_figure.hpp"

#include "engine/author/recipe_here.hpp"
#include "engine/scoring/curve.hpp"

#include <algorithm>

namespace matula::author {

namespace {

using procedure::Recipe;
using procedure::StepKind;

constexpr double water_ml = 4;

/// One tube of the curve against water.
class Reader {
public:
  Reader(const bench::Setup& setup, const bench::State& begun, double wavelength_nm,
         const scoring::GiveUp& give_up)
      : setup_(setup), begun_(begun), wavelength_nm_(wavelength_nm), give_up_(give_up) {}

  [[nodiscard]] std::optional<double> absorbance(const Recipe& recipe) const {
    auto tube = scoring::do_by_the_book(setup_, begun_, recipe, give_up_);
    if (!tube.stopped_because.empty()) {
      return std::nullopt;
    }
    const std::string zero = recipe.vessel == "tube-2" ? "tube-3" : "tube-2";
    (void)bench::perform(tube.state, setup_, bench::Pour{"water", zero, water_ml, false});
    (void)bench::perform(tube.state, setup_, bench::Measure{zero, wavelength_nm_, true});
    const auto outcome =
        bench::perform(tube.state, setup_, bench::Measure{recipe.vessel, wavelength_nm_, false});
    const bool read = outcome.done && outcome.reading && !outcome.reading->off_scale;
    return read ? std::optional(outcome.reading->value) : std::nullopt;
  }

private:
  const bench::Setup& setup_;
  const bench::State& begun_;
  double wavelength_nm_;
  const scoring::GiveUp& give_up_;
};

/// The recipe with a standard in place of the specimen.
Recipe of_standard(Recipe recipe, const std::string& bottle) {
  for (auto& step : recipe.steps) {
    if (step.kind == StepKind::Pour && step.from == "specimen") {
      step.kind = StepKind::Dispense;
      step.reagent = bottle;
    }
  }
  return recipe;
}

/// The recipe with the blank's liquid in place of the reagent.
Recipe of_blank(Recipe recipe, const scoring::TestRule& test) {
  for (auto& step : recipe.steps) {
    const auto& own = test.reagents;
    if (step.kind == StepKind::Dispense && std::find(own.begin(), own.end(), step.reagent) != own.end()) {
      step.reagent = test.curve->blank;
    }
  }
  return recipe;
}

} // namespace

std::optional<double> curve_figure(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun,
                                   const scoring::TestRule& test, const scoring::GiveUp& give_up) {
  const auto& recipe = shelf.standards->recipes.at(test.key);
  const Reader reader(setup, begun, test.curve->wavelength_nm, give_up);
  scoring::OwnCurve curve{{0, 0}};
  for (std::size_t i = 0; i < test.curve->standards.size(); ++i) {
    const auto read = reader.absorbance(of_standard(recipe, test.curve->standards[i]));
    if (!read) {
      return std::nullopt;
    }
    curve.emplace_back(test.curve->values[i], *read);
  }
  const auto sample = reader.absorbance(recipe);
  const auto blank = reader.absorbance(of_blank(recipe, test));
  if (!sample || !blank) {
    return std::nullopt;
  }
  const auto found = scoring::read_off(curve, std::max(*sample - *blank, 0.0));
  return found.empty() ? std::nullopt : std::optional(found.front());
}

} // namespace matula::author
