#include "engine/assets/readers.hpp"

#include <cmath>

namespace matula::assets {

namespace {

const strict::Range per_s{0, 100, "/s"};
const strict::Range molar{1e-9, 100, "mol/L"};
const strict::Range power{0.1, 50, ""};

void read_heat(const strict::Table& row, reaction::Breakdown& breakdown) {
  if (const auto heat = row.table_if_any("heat")) {
    breakdown.heat_d_s = heat->number("d_s", {1e-3, 1e6, "s"});
    breakdown.heat_at_c = heat->number("at_c", {20, 120, "C"});
    breakdown.heat_z_k = heat->number("z_k", {1, 50, "K"});
  }
}

void read_surroundings(const strict::Table& row, const matter::Catalogue& catalogue,
                       reaction::Breakdown& breakdown) {
  if (const auto acid = row.table_if_any("acid")) {
    breakdown.acid_per_s = acid->number("per_s", per_s);
    breakdown.acid_ph = acid->number("ph", {0, 14, "pH"});
  }
  if (const auto thin = row.table_if_any("thin")) {
    breakdown.thin_per_s = thin->number("per_s", per_s);
    breakdown.thin_half_mol_per_l = thin->number("half_mol_per_l", molar);
    breakdown.thin_power = thin->number("power", power);
    for (const std::string& name : thin->words("passes_skin", keys_of(catalogue.species))) {
      breakdown.passes_skin.push_back(catalogue.find_species(name).value_or(0));
    }
  }
}

reaction::Breaker read_breaker(const strict::Table& row, const matter::Catalogue& catalogue) {
  reaction::Breaker breaker;
  breaker.species = read_species_key(row, "species", catalogue);
  breaker.per_s = row.number("per_s", per_s);
  breaker.half_mol_per_l = row.number("half_mol_per_l", molar);
  breaker.power = row.number_or("power", power, breaker.power);
  breaker.acid_form = row.boolean_or("acid_form", breaker.acid_form);
  return breaker;
}

/// What dies keeps its size classes.
bool alike(const matter::ParticleKind& one, const matter::ParticleKind& other) {
  constexpr double rounding = 1e-9;
  return std::abs(one.bin_mass_g(0) - other.bin_mass_g(0)) <= rounding * one.bin_mass_g(0);
}

reaction::Breakdown read_row(const strict::Table& row, const matter::Catalogue& catalogue) {
  reaction::Breakdown breakdown;
  breakdown.key = row.text("key");
  breakdown.kind = read_particle_key(row, "particle", catalogue);
  read_heat(row, breakdown);
  read_surroundings(row, catalogue, breakdown);
  for (const strict::Table& each : row.tables_or_none("breaker")) {
    breakdown.breakers.push_back(read_breaker(each, catalogue));
  }
  if (const auto fixed = row.table_if_any("fixed_by")) {
    breakdown.fixed_by = read_amounts(*fixed, catalogue, molar);
  }
  if (const auto releases = row.table_if_any("releases")) {
    breakdown.releases = read_amounts(*releases, catalogue, {0, 1, ""});
  }
  if (row.has("becomes")) {
    breakdown.becomes = read_particle_key(row, "becomes", catalogue);
    if (!catalogue.particles.empty() &&
        !alike(catalogue.particles[breakdown.kind], catalogue.particles[*breakdown.becomes])) {
      row.complain("becomes", "a particle of the same radius and density");
    }
  }
  if (breakdown.becomes.has_value() != breakdown.releases.empty()) {
    row.complain("releases", "either what the particles release or what they become");
  }
  breakdown.source = row.text("source");
  return breakdown;
}

} // namespace

void read_breakdowns(const strict::Table& root, const matter::Catalogue& catalogue,
                     reaction::Network& network) {
  for (const strict::Table& row : root.tables_or_none("breakdown")) {
    const reaction::Breakdown breakdown = read_row(row, catalogue);
    check_new(row, breakdown.key, network.breakdowns);
    network.breakdowns.push_back(breakdown);
  }
}

} // namespace matula::assets
