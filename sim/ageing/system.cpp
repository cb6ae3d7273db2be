// The right-hand side and its derivatives.
#include "sim/ageing/system.hpp"

#include "sim/optics/nature.hpp"

#include "sim/ageing/exchange.hpp"
#include "sim/ageing/rates.hpp"
#include "sim/matter/density.hpp"
#include "sim/reaction/rate.hpp"

#include <algorithm>
#include <cmath>

namespace matula::ageing {

namespace {

constexpr double unit_per_ml = 1e6;
constexpr double mol_per_mmol = 1e-3;
constexpr double ph_step = 1e-6;

/// How far a state is moved to see what follows.
double step_of(double state) {
  constexpr double relative = 1e-7;
  constexpr double least = 1e-4; // mmol/L or 1e6/mL
  return relative * std::max(std::abs(state), least);
}

} // namespace

double System::left(const Inhibitors& inhibitors) const {
  double share = 1;
  for (const Inhibitor* row : inhibitors) {
    share *= share_left(*row, scratch_);
  }
  return share;
}

void System::add(matter::SpeciesId id, double mmol_per_l_h, double* change) const {
  change[index_[id]] += mmol_per_l_h;
}

void System::act(const LivingAct& living, double count, double ph, double* change) {
  const Act& row = *living.act;
  const double c = scratch_.mmol[row.substrate];
  if (c <= 0 || count <= 0) {
    return;
  }
  const double fed = row.half_mmol_per_l > 0 ? c / (row.half_mmol_per_l + c) : c;
  const double rate =
      living.speed * count * fed * ph_window(ph, row.ph_centre, row.ph_width) * left(living.inhibitors);
  for (const auto& [id, amount] : row.changes) {
    add(id, rate * amount, change);
  }
  change[water_at_] += rate * row.water;
  change[oxygen_at_] += rate * row.oxygen;
}

void System::grow(const LivingOrganism& living, const double* y, double ph, double crowd, double* change) {
  const Organism& row = *living.organism;
  const double resting = std::max(0.0, y[living.at]);
  const double growing = std::max(0.0, y[living.at + 1]);
  const double food = scratch_.mmol[row.food];
  double mu = living.growth_per_h * ph_window(ph, row.ph_centre, row.ph_width) * left(living.inhibitors) *
              food / (food + row.food_half_mmol_per_l);
  if (row.sugar) {
    const double sugar = scratch_.mmol[*row.sugar];
    mu *= 1 + row.sugar_gain * sugar / (sugar + row.sugar_half_mmol_per_l);
  }
  // Waking at this multiple of mu makes a resting inoculum's count fall behind by lag_growths/mu.
  const double waking = mu / std::expm1(row.lag_growths) * resting;
  const double born = mu * std::max(0.0, 1 - crowd / (row.n_max_per_ml / unit_per_ml)) * growing;
  change[living.at] -= waking;
  change[living.at + 1] += waking + born;
  const double grown_mg = (waking + 2 * born) * living.cell_mg_per_1e9; // mg/L/h
  if (index_[row.food] >= 0) {
    add(row.food, -grown_mg * row.food_share / living.food_molar_mass, change);
  }
  change[water_at_] += grown_mg * (1 - row.food_share) / nature::water_g_per_mol;
  for (const LivingAct& one : living.acts) {
    act(one, resting + growing, ph, change);
  }
}

void System::fall_apart(const DyingCell& dying, const double* y, double ph, double* change) {
  const double count = std::max(0.0, y[dying.at]);
  const double lost =
      count * lysis_per_h(*dying.cell, ph, specific_gravity_, temperature_c_) * left(dying.inhibitors);
  change[dying.at] -= lost;
  const double lost_mg = lost * dying.mg_per_1e9;
  for (std::size_t i = 0; i < dying.mmol_per_mg.size(); ++i) {
    add(dying.cell->releases[i].first, lost_mg * dying.mmol_per_mg[i], change);
  }
  change[water_at_] -= lost_mg * dying.water_mmol_per_mg;
  for (const LivingAct& one : dying.acts) {
    act(one, count, ph, change);
  }
}

void System::exchange(const Exchanged& row, const double* y, double ph, double* change) {
  const matter::SpeciesId id = row.row->species;
  const double rest = row.rest_mmol_per_l + row.rest_per_gone * y[row.at];
  const double flux = row.per_h * (scratch_.mmol[id] * volatile_share(*row.row, ph) - rest);
  add(id, -flux, change);
  change[row.at] += flux;
}

void System::load(const double* y) {
  for (std::size_t i = 0; i < species_.size(); ++i) {
    scratch_.mmol[species_[i]] = std::max(0.0, y[i]);
  }
  constexpr double as_good_as_the_solver = 1e-10;
  acidity_ = matter::acidity(scratch_, catalogue_, acidity_, as_good_as_the_solver);
  if (!cells_.empty()) {
    constexpr double standard_c = 20;
    scratch_.temperature_c = standard_c;
    specific_gravity_ = matter::density_kg_m3(scratch_, catalogue_) / matter::water_density_kg_m3(standard_c);
    scratch_.temperature_c = temperature_c_;
  }
}

double System::rate(const Going& going, double ph) const {
  return reaction::rate_with(*going.row, going.constant, scratch_, ph);
}

void System::react(double ph, double* change) {
  for (const Going& going : reactions_) {
    const double rate = this->rate(going, ph);
    for (const auto& [id, amount] : going.row->changes) {
      add(id, rate * amount, change);
    }
    change[water_at_] += rate * going.row->water;
    change[oxygen_at_] += rate * going.row->oxygen;
  }
}

void System::live(const double* y, double ph, double* change) {
  double crowd = 0;
  for (const LivingOrganism& living : organisms_) {
    crowd += std::max(0.0, y[living.at]) + std::max(0.0, y[living.at + 1]);
  }
  for (const LivingOrganism& living : organisms_) {
    grow(living, y, ph, crowd, change);
  }
  for (const DyingCell& dying : cells_) {
    fall_apart(dying, y, ph, change);
  }
  for (const Exchanged& row : exchanges_) {
    exchange(row, y, ph, change);
  }
}

void System::rates(const double* y, double ph, double* change) {
  std::fill(change, change + size(), 0.0);
  react(ph, change);
  live(y, ph, change);
}

void System::change(const double* y, double* change) {
  load(y);
  rates(y, acidity_.ph, change);
}

/// What a dissolved substance does through the pH, at steady activities.
void System::add_ph_partials(double* partial) {
  const std::size_t n = size();
  const double slope = matter::charge_slope_molar(scratch_, catalogue_, acidity_);
  if (!(slope < 0)) {
    return;
  }
  for (std::size_t j = 0; j < species_.size(); ++j) {
    const matter::Species& species = catalogue_.species[species_[j]];
    const double ph_by = -matter::mean_charge(species, acidity_) * mol_per_mmol / slope;
    for (std::size_t i = 0; i < n; ++i) {
      partial[i * n + j] += (varied_[i] - base_[i]) / ph_step * ph_by;
    }
  }
}

/// Row by row, for each looks at a few substances only.
void System::add_reaction_partials(const double* y, double* partial) {
  const std::size_t n = size();
  for (const Going& going : reactions_) {
    const double base = rate(going, acidity_.ph);
    for (const matter::SpeciesId input : going.inputs) {
      const auto j = static_cast<std::size_t>(index_[input]);
      const double step = step_of(y[j]);
      const double kept = scratch_.mmol[input];
      scratch_.mmol[input] = std::max(0.0, y[j] + step);
      const double by = (rate(going, acidity_.ph) - base) / step;
      scratch_.mmol[input] = kept;
      for (const auto& [id, amount] : going.row->changes) {
        partial[static_cast<std::size_t>(index_[id]) * n + j] += by * amount;
      }
      partial[water_at_ * n + j] += by * going.row->water;
      partial[oxygen_at_ * n + j] += by * going.row->oxygen;
    }
  }
}

void System::add_life_partials(const double* y, double* partial) {
  const std::size_t n = size();
  std::fill(base_.begin(), base_.end(), 0.0);
  live(y, acidity_.ph, base_.data());
  std::vector<double> at(y, y + n);
  for (const std::size_t j : life_inputs_) {
    const double step = step_of(y[j]);
    at[j] = y[j] + step;
    if (j < species_.size()) {
      scratch_.mmol[species_[j]] = std::max(0.0, at[j]);
    }
    std::fill(moved_.begin(), moved_.end(), 0.0);
    live(at.data(), acidity_.ph, moved_.data());
    for (std::size_t i = 0; i < n; ++i) {
      partial[i * n + j] += (moved_[i] - base_[i]) / step;
    }
    at[j] = y[j];
    if (j < species_.size()) {
      scratch_.mmol[species_[j]] = std::max(0.0, y[j]);
    }
  }
}

void System::jacobian(const double* y, double* partial) {
  std::fill(partial, partial + size() * size(), 0.0);
  load(y);
  rates(y, acidity_.ph, base_.data());
  rates(y, acidity_.ph + ph_step, varied_.data());
  add_ph_partials(partial);
  add_reaction_partials(y, partial);
  add_life_partials(y, partial);
}

} // namespace matula::ageing
