#include "sim/matter/ph.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <utility>

namespace matula::matter {

namespace {

constexpr double pkw = 13.995; // 25 °C, Harned and Owen, The Physical Chemistry of Electrolytic Solutions.
constexpr double debye_huckel = 0.509; // Water, 25 °C, log10 scale.
constexpr double davies_slope = 0.3;   // C.W. Davies, Ion Association, 1962.
constexpr double davies_limit = 0.5;   // mol/L
constexpr double lowest_ph = 0;
constexpr double highest_ph = 14;
constexpr double ph_tolerance = 1e-6; // Of the last but one step of a search that squares its error.
constexpr int most_steps = 60;
constexpr double gamma_tolerance = 1e-6; // Moves the pH by a few 1e-6 at most.
constexpr double strength_tolerance = 1e-5;
constexpr double neutral_ph = 7;
constexpr double screening_reference = 0.1; // mol/L, where a polyelectrolyte's constants hold.
constexpr double least_ionic_strength = 1e-4;
constexpr double typical_log_gamma = -0.13; // Where the search begins.
constexpr std::size_t most_terms = 512;
constexpr std::size_t most_substances = 192;

double power10(double x) {
  return std::exp(nature::ln10 * x);
}

double davies(double ionic_strength) {
  const double i = std::min(ionic_strength, davies_limit);
  const double root = std::sqrt(i);
  return -debye_huckel * (root / (1 + root) - davies_slope * i);
}

/// Activity shifts the constant of a group that leaves charge z behind it from z to z - 1.
double shifted_pka(const Species& species, std::size_t group, double log_gamma) {
  if (species.buffer_groups > 1) {
    return species.pka[group]; // A macromolecule's constants are already apparent ones.
  }
  const double z = species.protonated_charge - static_cast<double>(group);
  return species.pka[group] - (2 * z - 1) * log_gamma;
}

/// A group that can lose a proton: mol/L of it and its dissociation constant. Only the first `count` hold
/// values: clearing the rest would cost more than the search.
struct Terms {
  std::array<double, most_terms> molar;
  std::array<double, most_terms> ideal;    ///< Constant at zero ionic strength.
  std::array<double, most_terms> constant; ///< At the present one.
  std::array<int, most_terms> gammas;      ///< constant = ideal * gamma^gammas.
  std::array<double, most_terms> falls;    ///< Of log10 of the constant per decade of ionic strength.
  bool screened = false;                   ///< Whether any fall is not zero.
  std::size_t count = 0;
};

/// One dissolved substance and the run of its terms.
struct Substance {
  double molar;
  double charge; ///< With every group protonated.
  bool macromolecule;
  std::size_t first;
  std::size_t end;
};

/// What is dissolved, gathered once for the whole search.
struct Solution {
  Terms terms;
  std::array<Substance, most_substances> substances; ///< The first `count` hold values.
  std::size_t count = 0;
  double fixed = 0; ///< Charge per litre with every group protonated.
};

void add_groups(Terms& terms, const Tables& tables, const Tables::Ion& ion, double molar) {
  for (std::size_t i = ion.first; i < ion.end && terms.count < most_terms; ++i) {
    const Tables::Group& group = tables.groups[i];
    const double each = molar * ion.buffer_groups;
    double sum = each;
    for (int copy = 1; copy < group.copies; ++copy) {
      sum += each;
    }
    terms.molar[terms.count] = sum;
    terms.ideal[terms.count] = group.ideal;
    terms.gammas[terms.count] = group.gammas;
    terms.falls[terms.count] = group.fall;
    terms.screened = terms.screened || group.fall != 0;
    ++terms.count;
  }
}

void gather(Solution& solution, const Mixture& mixture, const Tables& tables) {
  for (const Tables::Ion& ion : tables.ions) {
    if (ion.id >= mixture.mmol.size() || mixture.mmol[ion.id] <= 0) {
      continue;
    }
    if (solution.count == most_substances) {
      return;
    }
    Substance& s = solution.substances[solution.count++];
    s.molar = mixture.mmol[ion.id] / mixture.volume_ml;
    s.charge = ion.charge;
    s.macromolecule = ion.macromolecule;
    s.first = solution.terms.count;
    add_groups(solution.terms, tables, ion, s.molar);
    s.end = solution.terms.count;
    solution.fixed += s.molar * s.charge;
  }
}

void gather(Solution& solution, const Mixture& mixture, const Catalogue& catalogue) {
  std::optional<Tables> spare;
  gather(solution, mixture, tables_of(catalogue, spare));
}

double decades(double ionic_strength) {
  return std::log10(std::max(ionic_strength, least_ionic_strength) / screening_reference);
}

/// Sets the constants for an activity coefficient of a singly charged ion and an ionic strength.
void shift(Terms& terms, double gamma, double ionic_strength) {
  constexpr int reach = 9; // Charges beyond +-4 carry no correction.
  std::array<double, 2 * reach + 1> power{};
  power[reach] = 1;
  for (int i = 1; i <= reach; ++i) {
    power[reach + i] = power[reach + i - 1] * gamma;
    power[reach - i] = power[reach - i + 1] / gamma;
  }
  for (std::size_t i = 0; i < terms.count; ++i) {
    terms.constant[i] = terms.ideal[i] * power[reach + std::clamp(terms.gammas[i], -reach, reach)];
  }
  for (std::size_t i = 0; terms.screened && i < terms.count; ++i) {
    terms.constant[i] *= power10(terms.falls[i] * decades(ionic_strength));
  }
}

struct Balance {
  double charge = 0;
  double slope = 0; ///< d charge / d pH, never positive.
};

Balance balance(const Solution& solution, double ph, double gamma) {
  const Terms& terms = solution.terms;
  const double h = power10(-ph);
  const double oh = power10(ph - pkw);
  Balance b{solution.fixed + (h - oh) / gamma, -(h + oh) / gamma};
  for (std::size_t i = 0; i < terms.count; ++i) {
    const double lost = terms.constant[i] / (terms.constant[i] + h);
    b.charge -= terms.molar[i] * lost;
    b.slope -= terms.molar[i] * lost * (1 - lost);
  }
  b.slope *= nature::ln10;
  return b;
}

/// Newton's step where it stays inside the bracket and the step before it paid; halving where not, for
/// between two bends of the curve Newton's steps can go to and fro for ever.
double solve(const Solution& solution, double start, double gamma) {
  double low = lowest_ph;
  double high = highest_ph;
  double x = start;
  double before = std::numeric_limits<double>::infinity();
  for (int step = 0; step < most_steps; ++step) {
    const Balance b = balance(solution, x, gamma);
    (b.charge > 0 ? low : high) = x;
    double next = x - b.charge / b.slope;
    if (!(next > low && next < high) || std::abs(b.charge) > before) {
      next = 0.5 * (low + high);
    }
    before = std::abs(b.charge);
    if (std::abs(next - x) < ph_tolerance) {
      return next;
    }
    x = next;
  }
  return x;
}

double ionic_strength(const Solution& solution, double ph) {
  const double h = power10(-ph);
  double twice = h + power10(ph - pkw);
  for (std::size_t i = 0; i < solution.count; ++i) {
    const Substance& s = solution.substances[i];
    double charge = s.molar * s.charge;
    for (std::size_t term = s.first; term < s.end; ++term) {
      charge -=
          solution.terms.molar[term] * solution.terms.constant[term] / (solution.terms.constant[term] + h);
    }
    // The many charges of one protein sit far apart: each counts as an ion of its own.
    twice += s.macromolecule ? std::abs(charge) : charge * charge / s.molar;
  }
  return 0.5 * twice;
}

/// pH and log10 activity coefficient that belong together: the balance and the ionic strength in turn.
std::pair<double, double> settle(Solution& solution) {
  double x = neutral_ph;
  double log_gamma = typical_log_gamma;
  double strength = screening_reference;
  const int most_passes = solution.terms.screened ? 20 : 4; // A swollen polyelectrolyte settles slowly.
  for (int pass = 0; pass < most_passes; ++pass) {
    const double gamma = power10(log_gamma);
    shift(solution.terms, gamma, strength);
    if (pass > 0) {
      x = solve(solution, x, gamma);
    }
    const double last = strength;
    strength = ionic_strength(solution, x);
    const double again = davies(strength);
    const bool still = !solution.terms.screened || std::abs(strength - last) < strength_tolerance * strength;
    const bool settled = pass > 0 && still && std::abs(again - log_gamma) < gamma_tolerance;
    log_gamma = again;
    if (settled) {
      break;
    }
  }
  return {x, log_gamma};
}

/// The same from an answer that is known to be near.
std::pair<double, double> settle_near(Solution& solution, const Acidity& near, double tolerance) {
  if (solution.terms.screened) {
    return settle(solution); // A swollen polyelectrolyte needs its ionic strength from the beginning.
  }
  double x = near.ph;
  double log_gamma = near.log_gamma;
  constexpr int most_passes = 6;
  for (int pass = 0; pass < most_passes; ++pass) {
    const double gamma = power10(log_gamma);
    shift(solution.terms, gamma, screening_reference); // nothing here is screened
    x = solve(solution, x, gamma);
    const double again = davies(ionic_strength(solution, x));
    const bool settled = std::abs(again - log_gamma) < tolerance;
    log_gamma = again;
    if (settled) {
      break;
    }
  }
  return {x, log_gamma};
}

} // namespace

double log_gamma_1(const Mixture& mixture, const Catalogue& catalogue, double ph) {
  if (mixture.empty()) {
    return 0;
  }
  Solution solution;
  gather(solution, mixture, catalogue);
  double log_gamma = typical_log_gamma;
  double strength = screening_reference;
  for (int pass = 0; pass < 3; ++pass) {
    shift(solution.terms, power10(log_gamma), strength);
    strength = ionic_strength(solution, ph);
    log_gamma = davies(strength);
  }
  return log_gamma;
}

double ph(const Mixture& mixture, const Catalogue& catalogue) {
  return acidity(mixture, catalogue).ph;
}

Acidity acidity(const Mixture& mixture, const Catalogue& catalogue) {
  if (mixture.empty()) {
    return {};
  }
  Solution solution;
  gather(solution, mixture, catalogue);
  const auto [x, log_gamma] = settle(solution);
  return {x, log_gamma};
}

Acidity acidity(const Mixture& mixture, const Catalogue& catalogue, const Acidity& near,
                double log_gamma_tolerance) {
  if (mixture.empty()) {
    return {};
  }
  Solution solution;
  gather(solution, mixture, catalogue);
  const auto [x, log_gamma] = settle_near(solution, near, log_gamma_tolerance);
  return {x, log_gamma};
}

double charge_slope_molar(const Mixture& mixture, const Catalogue& catalogue, const Acidity& acidity) {
  if (mixture.empty()) {
    return 0;
  }
  Solution solution;
  gather(solution, mixture, catalogue);
  const double gamma = power10(acidity.log_gamma);
  shift(solution.terms, gamma, ionic_strength(solution, acidity.ph));
  return balance(solution, acidity.ph, gamma).slope;
}

double mean_charge(const Species& species, const Acidity& acidity) {
  double z = species.protonated_charge;
  for (std::size_t group = 0; group < species.pka.size(); ++group) {
    z -= species.buffer_groups / (1 + power10(shifted_pka(species, group, acidity.log_gamma) - acidity.ph));
  }
  return z;
}

double mean_charge(const Species& species, double ph) {
  double z = species.protonated_charge;
  for (const double pka : species.pka) {
    z -= species.buffer_groups / (1 + power10(pka - ph));
  }
  return z;
}

double charge_excess_molar(const Mixture& mixture, const Catalogue& catalogue, double ph) {
  if (mixture.empty()) {
    return 0;
  }
  const double gamma = power10(log_gamma_1(mixture, catalogue, ph));
  Solution solution;
  gather(solution, mixture, catalogue);
  shift(solution.terms, gamma, screening_reference);
  if (solution.terms.screened) {
    shift(solution.terms, gamma, ionic_strength(solution, ph));
  }
  return balance(solution, ph, gamma).charge;
}

double form_fraction(const Species& species, std::size_t lost, double ph, double log_gamma) {
  // Weight of each form relative to the fully protonated one: a product of K/h. Kept in logarithms against
  // overflow.
  double sum = 0;
  double wanted = 0;
  double log_weight = 0;
  double shift = 0;
  for (std::size_t form = 0; form <= species.pka.size(); ++form) {
    shift = std::max(shift, log_weight);
    log_weight += form < species.pka.size() ? ph - shifted_pka(species, form, log_gamma) : 0;
  }
  log_weight = 0;
  for (std::size_t form = 0; form <= species.pka.size(); ++form) {
    const double weight = power10(log_weight - shift);
    sum += weight;
    wanted = form == lost ? weight : wanted;
    log_weight += form < species.pka.size() ? ph - shifted_pka(species, form, log_gamma) : 0;
  }
  return wanted / sum;
}

double odorous_molar(const Mixture& mixture, const Catalogue& catalogue, SpeciesId id, double ph) {
  const Species& species = catalogue.species[id];
  const double total = mixture.molar(id);
  if (species.odour_form == "acid") {
    return total * form_fraction(species, 0, ph);
  }
  if (species.odour_form == "base") {
    return total * form_fraction(species, species.pka.size(), ph);
  }
  return total;
}

} // namespace matula::matter
