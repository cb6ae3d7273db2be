#include "engine/assets/readers.hpp"

namespace matula::assets {

namespace {

const strict::Range ph{-5, 15, "pH"};
const strict::Range celsius{-10, 100, "degrees C"};
const strict::Range share{0, 1, ""};
const strict::Range millimolar{1e-9, 1e6, "mmol/L"};
const strict::Range decades{-5, 5, "decades"};

ageing::Act read_act(const strict::Table& row, const matter::Catalogue& catalogue) {
  const strict::Range moles{-1000, 1000, "mol"};
  ageing::Act act;
  act.what = row.word("what", {"glucose", "urease", "nitrate", "nitrite", "ketone"});
  act.substrate = read_species_key(row, "substrate", catalogue);
  act.at_per_ml = row.number("at_per_ml", {1, 1e12, "/mL"});
  act.strength = row.number("strength", {0, 1e6, "mmol/L/h or 1/h"});
  act.half_mmol_per_l = row.number_or("half_mmol_per_l", millimolar, 0);
  if (row.has("activation_kj_per_mol")) {
    act.activation_kj_per_mol = row.number("activation_kj_per_mol", {0, 600, "kJ/mol"});
  }
  act.ph_centre = row.number("ph_centre", ph);
  act.ph_width = row.number("ph_width", {0.1, 10, "pH"});
  act.changes = read_amounts(row.table("changes"), catalogue, moles);
  act.water = row.number_or("water", moles, 0);
  act.oxygen = row.number_or("oxygen", moles, 0);
  (void)row.text("source");
  return act;
}

std::vector<ageing::Act> read_acts(const strict::Table& row, const matter::Catalogue& catalogue) {
  std::vector<ageing::Act> acts;
  for (const strict::Table& act : row.tables_or_none("act")) {
    acts.push_back(read_act(act, catalogue));
  }
  return acts;
}

ageing::Organism read_organism(const strict::Table& row, const matter::Catalogue& catalogue) {
  ageing::Organism organism;
  organism.key = row.text("key");
  organism.label = row.text("label");
  organism.kind = read_particle_key(row, "kind", catalogue);
  organism.mu37_per_h = row.number("growth_at_37_per_h", {1e-3, 5, "/h"});
  organism.t_min_c = row.number("t_min_c", {-10, 30, "degrees C"});
  organism.t_top_c = row.number("t_top_c", {40.5, 60, "degrees C"});
  organism.ph_centre = row.number("ph_centre", ph);
  organism.ph_width = row.number("ph_width", {0.1, 10, "pH"});
  organism.lag_growths = row.number("lag_growths", {0.01, 10, ""});
  organism.n_max_per_ml = row.number("most_per_ml", {1e3, 1e11, "/mL"});
  organism.food = read_species_key(row, "food", catalogue);
  organism.food_half_mmol_per_l = row.number("food_half_mmol_per_l", millimolar);
  organism.food_share = row.number("food_share", share);
  if (row.has("sugar")) {
    organism.sugar = read_species_key(row, "sugar", catalogue);
    organism.sugar_gain = row.number("sugar_gain", {0, 10, ""});
    organism.sugar_half_mmol_per_l = row.number("sugar_half_mmol_per_l", millimolar);
  }
  (void)row.text("source");
  organism.acts = read_acts(row, catalogue);
  return organism;
}

ageing::Cell read_cell(const strict::Table& row, const matter::Catalogue& catalogue) {
  ageing::Cell cell;
  cell.key = row.text("key");
  cell.label = row.text("label");
  cell.kind = read_particle_key(row, "kind", catalogue);
  cell.k_per_h = row.number("k_per_h", {0, 100, "/h"});
  cell.ph_reference = row.number("ph_reference", ph);
  cell.decades_per_ph = row.number("decades_per_ph", decades);
  cell.sg_reference = row.number("sg_reference", {1, 1.1, ""});
  cell.decades_per_0_010 = row.number("decades_per_0_010", decades);
  cell.only_below = row.boolean_or("only_below", false);
  cell.t_reference_c = row.number("t_reference_c", celsius);
  cell.doubling_k = row.number("doubling_k", {1, 100, "K"});
  cell.acid_per_h = row.number_or("acid_per_h", {0, 1000, "/h"}, 0);
  cell.acid_ph = row.number_or("acid_ph", ph, cell.acid_ph);
  cell.releases = read_amounts(row.table("releases"), catalogue, share);
  (void)row.text("source");
  cell.acts = read_acts(row, catalogue);
  return cell;
}

void read_inhibitors(const strict::Table& root, const matter::Catalogue& catalogue, ageing::Laws& laws) {
  std::vector<std::string> living = keys_of(laws.organisms);
  for (const ageing::Cell& cell : laws.cells) {
    living.push_back(cell.key);
  }
  for (const strict::Table& row : root.tables("inhibitor")) {
    ageing::Inhibitor inhibitor;
    inhibitor.species = read_species_key(row, "species", catalogue);
    inhibitor.half_mmol_per_l = row.number("half_mmol_per_l", millimolar);
    inhibitor.power = row.number_or("power", {0.1, 20, ""}, 1);
    if (row.has("at_most_mmol_per_l")) {
      inhibitor.at_most_mmol_per_l = row.number("at_most_mmol_per_l", millimolar);
    }
    if (row.has("spares")) {
      inhibitor.spares = row.words("spares", living);
    }
    (void)row.text("source");
    for (const std::string& what :
         row.words("slows", {"growth", "lysis", "glucose", "urease", "nitrate", "nitrite", "ketone"})) {
      inhibitor.slows = what;
      laws.inhibitors.push_back(inhibitor);
    }
  }
}

ageing::Volatile read_volatile(const strict::Table& row, const matter::Catalogue& catalogue) {
  ageing::Volatile gas;
  gas.species = read_species_key(row, "species", catalogue);
  gas.henry_mol_m3_pa = row.number("henry_mol_m3_pa", {1e-9, 1e6, "mol/m3/Pa"});
  gas.henry_k = row.number("henry_k", {0, 2e4, "K"});
  if (row.has("acid_pka")) {
    gas.acid_pka = row.number("acid_pka", ph);
  }
  if (row.has("base_pka")) {
    gas.base_pka = row.number("base_pka", ph);
  }
  gas.on_the_bench = row.boolean_or("on_the_bench", false);
  gas.in_air_pa = row.number_or("in_air_pa", {0, 1e5, "Pa"}, 0);
  (void)row.text("source");
  return gas;
}

ageing::Film read_film(const strict::Table& row, const matter::Catalogue& catalogue) {
  ageing::Film film;
  film.species = read_species_key(row, "species", catalogue);
  film.dissolves_mmol_per_l = row.number("dissolves_mmol_per_l", millimolar);
  film.ml_per_mol = row.number("ml_per_mol", {1, 1e4, "mL/mol"});
  film.half_mm = row.number("half_mm", {1e-6, 10, "mm"});
  (void)row.text("source");
  return film;
}

void read_air(const strict::Table& root, const matter::Catalogue& catalogue, ageing::Laws& laws) {
  const strict::Table air = root.table("air");
  laws.air.gas_mm_s = air.number("gas_mm_s", {0.01, 1000, "mm/s"});
  laws.air.water_um_s = air.number("water_um_s", {0.01, 1000, "um/s"});
  laws.air.closed_share = air.number("closed_share", share);
  laws.air.headspace_per_liquid = air.number("headspace_per_liquid", {1e-3, 100, ""});
  (void)air.text("source");
  for (const strict::Table& row : root.tables_or_none("volatile")) {
    laws.volatiles.push_back(read_volatile(row, catalogue));
  }
  for (const strict::Table& row : root.tables_or_none("film")) {
    laws.films.push_back(read_film(row, catalogue));
  }
}

} // namespace

void read_ageing(const std::filesystem::path& folder, const matter::Catalogue& catalogue, ageing::Laws& laws,
                 scenario::Problems& problems) {
  strict::File organisms(folder / "organisms.toml");
  for (const strict::Table& row : organisms.root().tables("organism")) {
    ageing::Organism organism = read_organism(row, catalogue);
    check_new(row, organism.key, laws.organisms);
    laws.organisms.push_back(std::move(organism));
  }
  close(organisms, problems);
  strict::File cells(folder / "cells.toml");
  for (const strict::Table& row : cells.root().tables("cell")) {
    ageing::Cell cell = read_cell(row, catalogue);
    check_new(row, cell.key, laws.cells);
    laws.cells.push_back(std::move(cell));
  }
  close(cells, problems);
  strict::File inhibitors(folder / "inhibitors.toml");
  read_inhibitors(inhibitors.root(), catalogue, laws);
  close(inhibitors, problems);
  strict::File air(folder / "air.toml");
  read_air(air.root(), catalogue, laws);
  close(air, problems);
}

} // namespace matula::assets
