// Which parts of a specimen can change, and where they stand in the state.
#include "sim/ageing/exchange.hpp"
#include "sim/ageing/rates.hpp"
#include "sim/ageing/system.hpp"
#include "sim/reaction/rate.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>

namespace matula::ageing {

namespace {

constexpr double l_per_ml = 1e-3;
constexpr double g_per_mg = 1e-3;
constexpr double cells_per_unit = 1e9; ///< 1e6/mL in a litre.
constexpr double lux_of_rows = 1000;   ///< At which light-driven rows are given.
constexpr double s_per_h = 3600;
constexpr double mm_per_m = 1000;

/// Whether everything the row needs is there or can be made.
bool possible(const reaction::Reaction& row, const std::vector<bool>& present) {
  if (const auto* law = std::get_if<reaction::MassAction>(&row.law)) {
    return std::all_of(law->orders.begin(), law->orders.end(),
                       [&](const auto& o) { return present[o.first]; });
  }
  const auto& law = std::get<reaction::SaturatingReduction>(row.law);
  return present[law.substrate] && present[law.partner];
}

/// Too slow to matter in a week, whatever the pH does.
bool idle(const reaction::Reaction& row, double temperature_c) {
  constexpr double idle_per_s = 1e-11;
  const auto* law = std::get_if<reaction::MassAction>(&row.law);
  double order = 0;
  if (law != nullptr) {
    for (const auto& [id, each] : law->orders) {
      order += each;
    }
  }
  return law != nullptr && law->oh_order == 0 && order == 1 && law->k.at(temperature_c) < idle_per_s;
}

bool mark(const reaction::Stoichiometry& changes, std::vector<bool>& present, std::vector<bool>& changed) {
  bool news = false;
  for (const auto& [id, amount] : changes) {
    news = news || !changed[id] || (amount > 0 && !present[id]);
    changed[id] = true;
    present[id] = present[id] || amount > 0;
  }
  return news;
}

} // namespace

System::System(const matter::Mixture& mixture, const matter::Catalogue& catalogue,
               const reaction::Network& network, const Laws& laws, const Keeping& keeping, const Gas& gas)
    : catalogue_(catalogue), network_(network), laws_(laws), keeping_(keeping),
      scratch_(matter::empty_mixture(catalogue)), temperature_c_(mixture.temperature_c),
      volume_l_(mixture.volume_ml * l_per_ml) {
  scratch_.volume_ml = 1 / l_per_ml;
  scratch_.temperature_c = temperature_c_;
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    scratch_.mmol[i] = mixture.mmol[i] / volume_l_;
  }
  acidity_ = matter::acidity(scratch_, catalogue);
  const double past = past_films(laws.films, scratch_, keeping.depth_mm);
  exposure_.light = keeping.lux / lux_of_rows;
  exposure_.air = (keeping.open ? 1.0 : laws.air.closed_share) * past;
  choose(mixture, gas);
}

void System::choose(const matter::Mixture& mixture, const Gas& gas) {
  std::vector<bool> present(catalogue_.species.size());
  std::vector<bool> changed(catalogue_.species.size(), false);
  for (std::size_t i = 0; i < present.size(); ++i) {
    present[i] = scratch_.mmol[i] > 0;
  }
  const auto lives = [&mixture](matter::ParticleId kind) { return !mixture.populations[kind].empty(); };
  std::vector<bool> taken(network_.reactions.size(), false);
  for (bool news = true; news;) {
    news = false;
    for (std::size_t i = 0; keeping_.chemistry && i < taken.size(); ++i) {
      const reaction::Reaction& row = network_.reactions[i];
      if (!taken[i] && possible(row, present) && !idle(row, temperature_c_)) {
        taken[i] = true;
        constexpr double mmol_h_per_mol_s = 3.6e6;
        const double constant = mmol_h_per_mol_s * reaction::exposed_share(row, exposure_) *
                                reaction::constant_at(row, temperature_c_);
        reactions_.push_back({&row, constant, {}});
        mark(row.changes, present, changed);
        news = true;
      }
    }
    for (const Organism& row : laws_.organisms) {
      if (lives(row.kind)) {
        news = choose_acts(row.acts, present, changed) || news;
        changed[row.food] = changed[row.food] || present[row.food];
      }
    }
    for (const Cell& row : laws_.cells) {
      if (lives(row.kind)) {
        for (const auto& [id, share] : row.releases) {
          news = mark({{id, 1.0}}, present, changed) || news;
        }
        news = choose_acts(row.acts, present, changed) || news;
      }
    }
  }
  for (const Volatile& row : laws_.volatiles) {
    changed[row.species] = changed[row.species] || present[row.species];
  }
  lay_out(changed, mixture, gas);
}

bool System::choose_acts(const std::vector<Act>& acts, std::vector<bool>& present,
                         std::vector<bool>& changed) const {
  bool news = false;
  for (const Act& act : acts) {
    news = (present[act.substrate] && mark(act.changes, present, changed)) || news;
  }
  return news;
}

void System::lay_out(const std::vector<bool>& changed, const matter::Mixture& mixture, const Gas& gas) {
  index_.assign(changed.size(), -1);
  for (std::size_t id = 0; id < changed.size(); ++id) {
    if (changed[id]) {
      index_[id] = static_cast<std::ptrdiff_t>(start_.size());
      species_.push_back(id);
      start_.push_back(scratch_.mmol[id]);
    }
  }
  for (const Organism& row : laws_.organisms) {
    add_organism(row, mixture);
  }
  for (const Cell& row : laws_.cells) {
    add_cell(row, mixture);
  }
  for (std::size_t i = 0; i < laws_.volatiles.size(); ++i) {
    add_exchange(i, gas);
  }
  if (start_.empty()) {
    return;
  }
  for (Going& going : reactions_) {
    going.inputs = inputs_of(*going.row);
  }
  find_life_inputs();
  water_at_ = start_.size();
  oxygen_at_ = water_at_ + 1;
  start_.resize(oxygen_at_ + 1, 0.0);
  base_.resize(start_.size());
  moved_.resize(start_.size());
  varied_.resize(start_.size());
}

std::vector<matter::SpeciesId> System::inputs_of(const reaction::Reaction& row) const {
  std::vector<matter::SpeciesId> ids;
  if (const auto* law = std::get_if<reaction::MassAction>(&row.law)) {
    for (const auto* part : {&law->orders, &law->saturation, &law->inhibitors}) {
      for (const auto& [id, number] : *part) {
        ids.push_back(id);
      }
    }
  } else {
    const auto& reduction = std::get<reaction::SaturatingReduction>(row.law);
    ids = {reduction.substrate, reduction.partner};
  }
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  ids.erase(std::remove_if(ids.begin(), ids.end(), [this](matter::SpeciesId id) { return index_[id] < 0; }),
            ids.end());
  return ids;
}

void System::find_life_inputs() {
  std::vector<bool> looked_at(start_.size(), false);
  const auto see = [&](matter::SpeciesId id) {
    if (index_[id] >= 0) {
      looked_at[static_cast<std::size_t>(index_[id])] = true;
    }
  };
  const auto see_acts = [&](const std::vector<LivingAct>& acts) {
    for (const LivingAct& living : acts) {
      see(living.act->substrate);
    }
  };
  if (!organisms_.empty() || !cells_.empty()) {
    for (const Inhibitor& row : laws_.inhibitors) {
      see(row.species);
    }
  }
  for (const LivingOrganism& living : organisms_) {
    looked_at[living.at] = true;
    looked_at[living.at + 1] = true;
    see(living.organism->food);
    if (living.organism->sugar) {
      see(*living.organism->sugar);
    }
    see_acts(living.acts);
  }
  for (const DyingCell& dying : cells_) {
    looked_at[dying.at] = true;
    see_acts(dying.acts);
  }
  for (const Exchanged& row : exchanges_) {
    looked_at[row.at] = true;
    see(row.row->species);
  }
  for (std::size_t j = 0; j < looked_at.size(); ++j) {
    if (looked_at[j]) {
      life_inputs_.push_back(j);
    }
  }
}

void System::add_organism(const Organism& row, const matter::Mixture& mixture) {
  const matter::Population& population = mixture.populations[row.kind];
  const matter::ParticleKind& kind = catalogue_.particles[row.kind];
  if (population.empty()) {
    return;
  }
  LivingOrganism living;
  living.organism = &row;
  living.at = start_.size();
  living.growth_per_h = growth_per_h(row, temperature_c_);
  living.cell_mg_per_1e9 = kind.bin_mass_g(0) * cells_per_unit / g_per_mg;
  living.food_molar_mass = catalogue_.species[row.food].molar_mass_g_per_mol;
  living.inhibitors = inhibitors_of("growth", row.key);
  living.acts = this->living(row.acts, row.key, living.growth_per_h / row.mu37_per_h);
  const double units_per_g = 1 / (living.cell_mg_per_1e9 * g_per_mg * volume_l_);
  start_.push_back(population.grams[0] * units_per_g);
  start_.push_back(0.5 * population.grams[1] * units_per_g); // Twice as heavy.
  organisms_.push_back(std::move(living));
}

void System::add_cell(const Cell& row, const matter::Mixture& mixture) {
  const matter::Population& population = mixture.populations[row.kind];
  if (population.empty()) {
    return;
  }
  DyingCell dying;
  dying.cell = &row;
  dying.at = start_.size();
  dying.mg_per_1e9 = catalogue_.particles[row.kind].bin_mass_g(0) * cells_per_unit / g_per_mg;
  double released = 0;
  for (const auto& [id, share] : row.releases) {
    dying.mmol_per_mg.push_back(share / catalogue_.species[id].molar_mass_g_per_mol);
    released += share;
  }
  dying.water_mmol_per_mg = (1 - released) / nature::water_g_per_mol;
  dying.inhibitors = inhibitors_of("lysis", row.key);
  dying.acts = living(row.acts, row.key, 1);
  start_.push_back(population.suspended_g() / (dying.mg_per_1e9 * g_per_mg * volume_l_));
  cells_.push_back(std::move(dying));
}

void System::add_exchange(std::size_t index, const Gas& gas) {
  const Volatile& row = laws_.volatiles[index];
  if (index_[row.species] < 0) {
    return;
  }
  Exchanged exchanged;
  exchanged.row = &row;
  exchanged.index = index;
  exchanged.at = start_.size();
  const double past = past_films(laws_.films, scratch_, keeping_.depth_mm);
  exchanged.per_h =
      exchange_m_s(row, laws_.air, temperature_c_) * past * s_per_h * mm_per_m / keeping_.depth_mm;
  const double ratio = air_water_ratio(row, temperature_c_);
  const double room_mmol_l =
      row.in_air_pa / (nature::gas_constant_j_per_mol_k * (temperature_c_ + nature::zero_c_in_kelvin));
  exchanged.rest_mmol_per_l = room_mmol_l / ratio;
  if (!keeping_.open) {
    exchanged.rest_per_gone = 1 / (laws_.air.headspace_per_liquid * ratio);
    exchanged.rest_mmol_per_l = gas.under_lid_mmol_per_l[index] * exchanged.rest_per_gone;
  }
  start_.push_back(0.0);
  exchanges_.push_back(exchanged);
}

std::vector<System::LivingAct> System::living(const std::vector<Act>& acts, const std::string& key,
                                              double growth_share) const {
  constexpr double unit_per_ml = 1e6;
  std::vector<LivingAct> list;
  for (const Act& act : acts) {
    if (index_[act.substrate] >= 0) {
      list.push_back(
          {&act, act.strength * unit_per_ml / act.at_per_ml * act_share(act, temperature_c_, growth_share),
           inhibitors_of(act.what, key)});
    }
  }
  return list;
}

System::Inhibitors System::inhibitors_of(const std::string& what, const std::string& key) const {
  Inhibitors list;
  for (const Inhibitor& row : laws_.inhibitors) {
    const bool there = scratch_.mmol[row.species] > 0 || index_[row.species] >= 0;
    if (there && holds_back(row, what, key)) {
      list.push_back(&row);
    }
  }
  return list;
}

void System::store(const double* y, matter::Mixture& mixture, Gas& gas) const {
  for (std::size_t i = 0; i < species_.size(); ++i) {
    mixture.mmol[species_[i]] = std::max(0.0, y[i]) * volume_l_;
  }
  for (const LivingOrganism& living : organisms_) {
    matter::Population& population = mixture.populations.of(living.organism->kind);
    const double g_per_unit = living.cell_mg_per_1e9 * g_per_mg * volume_l_;
    population.grams[0] = std::max(0.0, y[living.at]) * g_per_unit;
    population.grams[1] = std::max(0.0, 2 * y[living.at + 1]) * g_per_unit;
  }
  for (const DyingCell& dying : cells_) {
    matter::Population& population = mixture.populations.of(dying.cell->kind);
    const double was_g = population.suspended_g();
    const double now_g = std::max(0.0, y[dying.at]) * dying.mg_per_1e9 * g_per_mg * volume_l_;
    for (double& grams : population.grams) {
      grams *= now_g / was_g;
    }
  }
  for (const Exchanged& row : exchanges_) {
    gas.to_air_mmol[row.index] += y[row.at] * volume_l_;
    if (!keeping_.open) {
      gas.under_lid_mmol_per_l[row.index] += y[row.at];
    }
  }
  gas.water_mmol += y[water_at_] * volume_l_;
  gas.oxygen_mmol += y[oxygen_at_] * volume_l_;
}

} // namespace matula::ageing
