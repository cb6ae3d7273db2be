#include "sim/matter/ph.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace matula::matter {

namespace {

constexpr double ln10 = 2.302585092994046;
constexpr double pkw = 13.995; // 25 °C, Harned and Owen, The Physical Chemistry of Electrolytic Solutions.
constexpr double debye_huckel = 0.509; // Water, 25 °C, log10 scale.
constexpr double davies_slope = 0.3;   // C.W. Davies, Ion Association, 1962.
constexpr double davies_limit = 0.5;   // mol/L
constexpr double lowest_ph = 0;
constexpr double highest_ph = 14;
constexpr double ph_tolerance = 1e-9; // Solver's own; two calls on the same mixture differ by nothing.
constexpr int most_steps = 60;
constexpr std::size_t most_terms = 256;

double power10(double x) {
  return std::exp(ln10 * x);
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

/// A group that can lose a proton: mol/L of it and its dissociation constant.
struct Terms {
  std::array<double, most_terms> molar{};
  std::array<double, most_terms> constant{};
  std::size_t count = 0;
  double fixed = 0; ///< Charge per litre with every group protonated.

  void add(double c, double pka, double last_pka) {
    if (count > 0 && pka == last_pka) {
      molar[count - 1] += c;
    } else if (count < most_terms) {
      molar[count] = c;
      constant[count] = power10(-pka);
      ++count;
    }
  }
};

void collect(Terms& terms, const Mixture& mixture, const Catalogue& catalogue, double log_gamma) {
  terms.count = 0;
  terms.fixed = 0;
  for (SpeciesId id = 0; id < mixture.mmol.size(); ++id) {
    if (mixture.mmol[id] <= 0) {
      continue;
    }
    const Species& species = catalogue.species[id];
    const double c = mixture.mmol[id] / mixture.volume_ml;
    terms.fixed += c * species.protonated_charge;
    double last = -1e9;
    for (std::size_t group = 0; group < species.pka.size(); ++group) {
      const double pka = shifted_pka(species, group, log_gamma);
      terms.add(c * species.buffer_groups, pka, last);
      last = pka;
    }
  }
}

struct Balance {
  double charge = 0;
  double slope = 0; ///< d charge / d pH, never positive.
};

Balance balance(const Terms& terms, double ph, double gamma) {
  const double h = power10(-ph);
  const double oh = power10(ph - pkw);
  Balance b{terms.fixed + (h - oh) / gamma, -(h + oh) / gamma};
  for (std::size_t i = 0; i < terms.count; ++i) {
    const double lost = terms.constant[i] / (terms.constant[i] + h);
    b.charge -= terms.molar[i] * lost;
    b.slope -= terms.molar[i] * lost * (1 - lost);
  }
  b.slope *= ln10;
  return b;
}

/// Newton's step where it stays inside the bracket, halving where it does not.
double solve(const Terms& terms, double start, double gamma) {
  double low = lowest_ph;
  double high = highest_ph;
  double x = start;
  for (int step = 0; step < most_steps; ++step) {
    const Balance b = balance(terms, x, gamma);
    (b.charge > 0 ? low : high) = x;
    double next = x - b.charge / b.slope;
    if (!(next > low && next < high)) {
      next = 0.5 * (low + high);
    }
    if (std::abs(next - x) < ph_tolerance) {
      return next;
    }
    x = next;
  }
  return x;
}

double ionic_strength(const Mixture& mixture, const Catalogue& catalogue, double ph) {
  const double h = power10(-ph);
  double twice = h + power10(ph - pkw);
  for (SpeciesId id = 0; id < mixture.mmol.size(); ++id) {
    if (mixture.mmol[id] <= 0) {
      continue;
    }
    const Species& species = catalogue.species[id];
    double z = species.protonated_charge;
    for (const double pka : species.pka) {
      z -= species.buffer_groups / (1 + h * power10(pka));
    }
    // The many charges of one protein sit far apart: each counts as an ion of its own.
    const double weight = species.buffer_groups > 1 ? std::abs(z) : z * z;
    twice += weight * mixture.mmol[id] / mixture.volume_ml;
  }
  return 0.5 * twice;
}

} // namespace

double log_gamma_1(const Mixture& mixture, const Catalogue& catalogue, double ph) {
  return mixture.empty() ? 0.0 : davies(ionic_strength(mixture, catalogue, ph));
}

double ph(const Mixture& mixture, const Catalogue& catalogue) {
  constexpr double neutral = 7;
  if (mixture.empty()) {
    return neutral;
  }
  double x = neutral;
  Terms terms;
  double log_gamma = davies(ionic_strength(mixture, catalogue, x));
  for (int pass = 0; pass < 3; ++pass) {
    collect(terms, mixture, catalogue, log_gamma);
    x = solve(terms, x, power10(log_gamma));
    const double again = davies(ionic_strength(mixture, catalogue, x));
    const bool settled = std::abs(again - log_gamma) < 1e-6; // Moves pH by a few 1e-6 at most.
    log_gamma = again;
    if (settled) {
      break;
    }
  }
  return x;
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
  const double log_gamma = log_gamma_1(mixture, catalogue, ph);
  Terms terms;
  collect(terms, mixture, catalogue, log_gamma);
  return balance(terms, ph, power10(log_gamma)).charge;
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
