#include "engine/author/turning.hpp"

#include "engine/assets/world.hpp"
#include "engine/sitting/setup.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace matula::author {

Turning::Turning(const Shelf& shelf, scenario::Scenario base, scoring::GiveUp give_up)
    : shelf_(shelf), base_(std::move(base)), case_(base_), give_up_(std::move(give_up)),
      setup_(sitting::make_setup(*shelf.world, case_)) {}

void Turning::ask() const {
  if (give_up_ && give_up_()) {
    throw GivenUp{};
  }
}

void Turning::replace(const specimen::Specimen& specimen) {
  case_.specimen = specimen;
  begun_.reset();
}

void Turning::fix(const Place& place, double amount) {
  set(place, amount);
  fixed_.push_back(place);
}

bool Turning::is_fixed(const Place& place) const {
  return std::find(fixed_.begin(), fixed_.end(), place) != fixed_.end();
}

void Turning::set(const Place& place, double amount) {
  if (is_fixed(place)) {
    return;
  }
  set_amount(case_.specimen, place, amount, *shelf_.limits, shelf_.world->catalogue);
  begun_.reset();
}

double Turning::amount(const Place& place) const {
  return amount_of(case_.specimen, place, *shelf_.limits, shelf_.world->catalogue);
}

void Turning::set_yellow(double a420) {
  case_.specimen.urochrome_a420 = a420;
  begun_.reset();
}

void Turning::set_ph(double ph) {
  const auto& rules = shelf_.compose;
  const Place bicarbonate{"dissolved", "bicarbonate"};
  case_.specimen.target_ph = ph;
  const double most = most_of(bicarbonate, *shelf_.limits, shelf_.world->catalogue).value_or(0);
  const double with_it = rules.dissolved_co2_mmol_per_l * std::pow(10.0, ph - rules.bicarbonate_pk);
  set(bicarbonate, ph < rules.bicarbonate_from_ph ? 0 : std::min(with_it, most));
}

double Turning::most_factor() const {
  double most = std::numeric_limits<double>::max();
  for (const auto& key : shelf_.compose.scaled) {
    const Place place{"dissolved", key};
    const double had = amount_of(base_.specimen, place, *shelf_.limits, shelf_.world->catalogue);
    if (had > 0 && !is_fixed(place)) {
      most = std::min(most, most_of(place, *shelf_.limits, shelf_.world->catalogue).value_or(had) / had);
    }
  }
  return most;
}

void Turning::concentrate(double factor, bool with_yellow) {
  factor_ = factor;
  for (const auto& key : shelf_.compose.scaled) {
    const Place place{"dissolved", key};
    set(place, factor * amount_of(base_.specimen, place, *shelf_.limits, shelf_.world->catalogue));
  }
  if (with_yellow) {
    constexpr double palest = 0.012;
    constexpr double darkest = 0.9;
    set_yellow(std::clamp(factor * base_.specimen.urochrome_a420, palest, darkest));
  }
  balance();
}

/// Raises sodium until there is room for some chloride. Twice: the activities move a little.
void Turning::balance() {
  for (int i = 0; i < 2; ++i) {
    const auto derived = generator::derive(case_.specimen, shelf_.world->catalogue);
    const double room = derived.chloride_mmol_per_l - derived.added_sodium_mmol_per_l;
    const double missing = shelf_.compose.least_chloride - room;
    if (missing <= 0) {
      return;
    }
    const Place place{"dissolved", shelf_.compose.balance_with};
    set(place, amount(place) + missing);
  }
}

const bench::State& Turning::begun() {
  ask();
  if (!begun_) {
    setup_.specimen = case_.specimen;
    begun_ = bench::begin(setup_);
  }
  return *begun_;
}

double Turning::gravity() {
  const auto& state = begun();
  return gravity_of(state, setup_);
}

double Turning::osmolality() const {
  return generator::derive(case_.specimen, shelf_.world->catalogue).osmolality;
}

Shown Turning::show(const std::string& test) {
  ++tubes_;
  auto shown = show_test(shelf_, setup_, begun(), test, give_up_);
  ask();
  return shown;
}

std::string Turning::colour() {
  return show_liquid(shelf_, setup_, begun()).colour;
}

std::string Turning::clarity() {
  return show_liquid(shelf_, setup_, begun()).clarity;
}

Liquid Turning::liquid() {
  return show_liquid(shelf_, setup_, begun());
}

} // namespace matula::author
