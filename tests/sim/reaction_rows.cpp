// Laws that every row of the reaction list obeys.
#include "tests/sim/chemistry_world.hpp"

#include "sim/matter/ph.hpp"
#include "sim/reaction/rate.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <variant>

using namespace matula;
using namespace matula::tests;

namespace {

constexpr double water_g_per_mol = 18.015;
constexpr double oxygen_g_per_mol = 31.998;
constexpr double proton_g_per_mol = 1.008;

/// Rows that acid helps live in strong acid.
bool acid_row(const reaction::Reaction& row) {
  const auto* law = std::get_if<reaction::MassAction>(&row.law);
  return law != nullptr && law->oh_order < 0 && law->reference_ph < 3;
}

/// Something for the row to work on: its reactants at 10 mmol/L (proteins 0.1) in a strong buffer near pH 9,
/// or in strong acid.
matter::Mixture reactants(const reaction::Reaction& row) {
  const ChemistryWorld& world = chemistry_world();
  matter::Mixture mixture = acid_row(row)
                                ? solution(1, {{"chloride", 300}, {"phosphate", 10}})
                                : solution(1, {{"bicarbonate", 2000}, {"sodium", 2600}, {"phosphate", 10}});
  for (const auto& [id, change] : row.changes) {
    const bool heavy = world.catalogue.species[id].molar_mass_g_per_mol > 5000;
    mixture.mmol[id] += change < 0 ? (heavy ? 1e-4 : 1e-2) : 0;
  }
  if (const auto* law = std::get_if<reaction::MassAction>(&row.law)) {
    for (const auto& [id, order] : law->orders) {
      mixture.mmol[id] = std::max(mixture.mmol[id], 1e-6); // An enzyme that is not used up.
    }
    for (const auto& [id, half] : law->saturation) {
      mixture.mmol[id] += mixture.mmol[id] > 0 ? 0 : half;
    }
  }
  return mixture;
}

reaction::Network alone(const reaction::Reaction& row) {
  return {{row}, {}, {}, {}};
}

double sum_over(const reaction::Reaction& row, double matter::Species::*quantity) {
  double sum = 0;
  for (const auto& [id, change] : row.changes) {
    sum += change * chemistry_world().catalogue.species[id].*quantity;
  }
  return sum;
}

double copper(const matter::Mixture& mixture) {
  const ChemistryWorld& world = chemistry_world();
  return mixture.mmol[world.id("copper_ii")] + mixture.mmol[world.id("copper_i")];
}

bool slower_when_hot(const reaction::Reaction& row) {
  const auto* law = std::get_if<reaction::MassAction>(&row.law);
  return law != nullptr && law->k.activation_kj_per_mol < 0;
}

/// Seconds in which the row gets well under way at `temperature_c`.
double lively_seconds(const reaction::Reaction& row, const matter::Mixture& mixture) {
  const double ph = matter::ph(mixture, chemistry_world().catalogue);
  return 0.7 * reaction::largest_extent_molar(row, mixture) / reaction::rate_molar_per_s(row, mixture, ph);
}

} // namespace

TEST_CASE("every reaction balances mass, with its water, oxygen and protons") {
  for (const reaction::Reaction& row : chemistry_world().network.reactions) {
    INFO(row.key);
    const double protons = -sum_over(row, &matter::Species::protonated_charge);
    const double mass = sum_over(row, &matter::Species::molar_mass_g_per_mol) - row.water * water_g_per_mol -
                        row.oxygen * oxygen_g_per_mol + protons * proton_g_per_mol;
    double largest = 0;
    for (const auto& [id, change] : row.changes) {
      largest =
          std::max(largest, std::abs(change) * chemistry_world().catalogue.species[id].molar_mass_g_per_mol);
    }
    // Molar masses are given to five figures; a protein's some hundred charged groups are not part of its
    // molar mass.
    CHECK(std::abs(mass) < (largest > 5000 ? 2e-3 : 5e-4) * largest);
  }
}

TEST_CASE("every reaction keeps copper, amounts above zero, and makes what it uses up") {
  const ChemistryWorld& world = chemistry_world();
  for (const reaction::Reaction& row : world.network.reactions) {
    for (const double temperature_c : {4.0, 22.0, 60.0, 100.0}) {
      for (const double seconds : {1e-3, 0.25, 30.0, 1e4, 1e7}) {
        INFO(row.key << " at " << temperature_c << " C for " << seconds << " s");
        matter::Mixture mixture = reactants(row);
        const matter::Mixture before = mixture;
        mixture.temperature_c = temperature_c;
        reaction::react(mixture, alone(row), world.catalogue, seconds, 0.4);
        CHECK(copper(mixture) == Approx(copper(before)).epsilon(1e-9));
        const auto& [first, change] = row.changes.front();
        const double extent = (mixture.mmol[first] - before.mmol[first]) / change;
        CHECK(extent >= 0);
        for (const auto& [id, part] : row.changes) {
          CHECK(mixture.mmol[id] >= 0);
          CHECK(mixture.mmol[id] - before.mmol[id] == Approx(part * extent).margin(1e-12));
        }
      }
    }
  }
}

TEST_CASE("every reaction comes to the same end in many short steps as in few") {
  const ChemistryWorld& world = chemistry_world();
  for (const reaction::Reaction& row : world.network.reactions) {
    INFO(row.key);
    matter::Mixture once = reactants(row);
    once.temperature_c = 80;
    matter::Mixture often = once;
    const matter::Mixture before = once;
    const double seconds = lively_seconds(row, once);
    reaction::react(once, alone(row), world.catalogue, seconds, 0.4);
    for (int i = 0; i < 64; ++i) {
      reaction::react(often, alone(row), world.catalogue, seconds / 64, 0.4);
    }
    for (const auto& [id, change] : row.changes) {
      // The solver promises one part in a hundred of what has reacted.
      const double reacted = std::abs(often.mmol[id] - before.mmol[id]);
      CHECK(once.mmol[id] == Approx(often.mmol[id]).epsilon(0.01).margin(0.01 * reacted + 1e-9));
    }
  }
}

TEST_CASE("every reaction goes further with more of the dose, with time and with heat") {
  const ChemistryWorld& world = chemistry_world();
  for (const reaction::Reaction& row : world.network.reactions) {
    INFO(row.key);
    const matter::SpeciesId dose = [&] {
      for (const auto& [id, change] : row.changes) {
        if (change < 0 && id != world.id("copper_ii")) {
          return id;
        }
      }
      return row.changes.front().first;
    }();
    const auto used = [&](double factor, double temperature_c, double seconds) {
      matter::Mixture mixture = reactants(row);
      mixture.mmol[dose] *= factor;
      mixture.temperature_c = temperature_c;
      const double before = mixture.mmol[dose];
      reaction::react(mixture, alone(row), world.catalogue, seconds, 0.4);
      return before - mixture.mmol[dose];
    };
    matter::Mixture mixture = reactants(row);
    mixture.temperature_c = 60;
    const double seconds = lively_seconds(row, mixture);
    CHECK(used(1, 60, seconds) > 0);
    CHECK(used(2, 60, seconds) > used(1, 60, seconds));
    CHECK(used(1, 60, 2 * seconds) > used(1, 60, seconds));
    // The folding of proteins is slower when hot: such rows say so by a negative activation energy.
    if (slower_when_hot(row)) {
      CHECK(used(1, 70, seconds) < used(1, 60, seconds));
    } else {
      CHECK(used(1, 70, seconds) > used(1, 60, seconds));
    }
  }
}

TEST_CASE("light and air scale the rows that need them, and no others") {
  for (const reaction::Reaction& row : chemistry_world().network.reactions) {
    INFO(row.key);
    const double lit = reaction::exposed_share(row, {1, 1});
    const double bright = reaction::exposed_share(row, {10, 1});
    const double dark = reaction::exposed_share(row, {0, 1});
    const double airless = reaction::exposed_share(row, {1, 0});
    CHECK(lit == Approx(1));
    CHECK(bright - lit == Approx(9 * row.light_share));
    CHECK(dark == Approx(1 - row.light_share));
    CHECK(airless == Approx(row.oxygen > 0 ? 0.0 : 1.0).margin(1e-12));
  }
  const auto left = [](const reaction::Exposure& exposure) {
    matter::Mixture m = urine(1, 6, {{"bilirubin", 0.03}});
    reaction::react(m, chemistry_world().network, chemistry_world().catalogue, 3600, 0.4, exposure);
    return m.mmol[chemistry_world().id("bilirubin")] / 0.03e-3;
  };
  // 0.35 /h for each 1000 lx; 12-36 h to half in the dark at 20-25 C: from memory.
  CHECK(left({1, 1}) == Approx(std::exp(-0.35 - 0.029)).epsilon(0.02));
  CHECK(left({0, 1}) == Approx(std::exp(-0.029)).epsilon(0.01));
}

TEST_CASE("the same portion reacts to the same bits") {
  const auto run = [] {
    matter::Mixture mixture =
        together(bottle("benedict", 5), urine(0.5, 6, {{"glucose", mmol_per_l_of_g_per_dl("glucose", 1)}}));
    hold(mixture, 95, 60, 0.5);
    return mixture;
  };
  const matter::Mixture one = run();
  const matter::Mixture other = run();
  CHECK(one.mmol == other.mmol);
  CHECK(one.populations[chemistry_world().solid("cuprous_oxide")].grams ==
        other.populations[chemistry_world().solid("cuprous_oxide")].grams);
}
