#include "sim/reaction/react.hpp"

#include "sim/matter/ph.hpp"
#include "sim/reaction/breakdown.hpp"
#include "sim/reaction/rate.hpp"
#include "sim/reaction/solids.hpp"
#include "sim/reaction/solubility.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace matula::reaction {

namespace {

// Solver's own limits, not of the trade.
constexpr double slowest_per_s = 1e-10; // Slower changes are less than a hundred-thousandth in a day.
constexpr double least_molar = 1e-12;   // Below a picomol a millilitre nothing is seen.
constexpr double largest_share = 0.1;   // Of a reactant that one step may use up before steps are halved.
constexpr double fastest_resolved_per_s = 2; // Faster changes are over within a step, and are solved exactly.
constexpr double unnoticed_share = 0.01;     // Of a reactant: its use leaves the pH where it was.
constexpr int most_steps = 256;
constexpr double unknown = -1;          // A constant that nobody has asked for yet.
constexpr std::size_t most_changes = 8; // Substances one row changes.

/// A reaction that can go on, with its rate constant and what light and air make of it.
struct Going {
  const Reaction* row;
  mutable double constant; ///< Negative until a rate is asked for: many rows wait for what others make.
  double exposed;
  bool needs_ph;
  const Reaction* back = nullptr; ///< The one that takes it back, when both are worked out as one.
  mutable double back_constant = unknown;
};

/// A precipitation that can go on.
struct Falling {
  SolidLaw law;
  mutable double growth; ///< Negative until solid forms.
  double molar_mass_g;
};

/// All that can go on in a portion which keeps its temperature.
struct Rows {
  std::vector<Going> reactions;
  std::vector<Falling> precipitations;

  Rows(const matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue,
       const Exposure& exposure, LastPossible& last) {
    std::optional<Index> spare;
    const Index& index = index_of(network, catalogue, spare);
    const Possible& possible = last.rows(mixture, index);
    reactions.reserve(possible.reactions.size());
    for (const std::size_t i : possible.reactions) {
      const Reaction& row = network.reactions[i];
      const std::size_t back = index.taken_back_by[i];
      if (back != none) {
        if (i < back) {
          reactions.push_back({&row, unknown, 1, false, &network.reactions[back]});
        }
        continue;
      }
      reactions.push_back({&row, unknown, exposed_share(row, exposure), index.needs_ph[i]});
    }
    precipitations.reserve(possible.precipitations.size());
    for (const std::size_t i : possible.precipitations) {
      const Precipitation& row = network.precipitations[i];
      precipitations.push_back({solid_law(row, index.precipitations[i].law, mixture.temperature_c), unknown,
                                index.precipitations[i].molar_mass_g});
    }
  }
};

/// The pH is worked out only when a law asks for it.
class Instant {
public:
  /// `near`: the acidity a moment ago, if anybody asked for it then; left as the acidity now, if asked for.
  Instant(const matter::Mixture& mixture, const matter::Catalogue& catalogue,
          std::optional<matter::Acidity>& near)
      : mixture_(mixture), catalogue_(catalogue), near_(near) {}

  const Conditions& conditions() {
    if (!known_) {
      near_ = near_ ? matter::acidity(mixture_, catalogue_, *near_) : matter::acidity(mixture_, catalogue_);
      known_ = Conditions{mixture_.temperature_c, near_->ph, near_->log_gamma};
    }
    return *known_;
  }
  double rate(const Going& going) {
    if (going.constant < 0) {
      going.constant = constant_at(*going.row, mixture_.temperature_c);
    }
    return going.exposed *
           rate_with(*going.row, going.constant, mixture_, going.needs_ph ? conditions().ph : 0.0);
  }

private:
  const matter::Mixture& mixture_;
  const matter::Catalogue& catalogue_;
  std::optional<matter::Acidity>& near_;
  std::optional<Conditions> known_;
};

/// A turns into B with the first constant and back with the second, both first order: the distance to rest
/// falls by exp(-(k1 + k2) t). M. Eigen, Disc. Faraday Soc. 17 (1954) 194.
struct Couple {
  double forth_per_s;
  double back_per_s;
  double net_molar_per_s;
  double both_molar;

  Couple(const Going& going, const matter::Mixture& mixture) {
    if (going.constant < 0) {
      going.constant = constant_at(*going.row, mixture.temperature_c);
      going.back_constant = constant_at(*going.back, mixture.temperature_c);
    }
    const double from = largest_extent_molar(*going.row, mixture);
    const double to = largest_extent_molar(*going.back, mixture);
    forth_per_s = going.constant;
    back_per_s = going.back_constant;
    net_molar_per_s = forth_per_s * from - back_per_s * to;
    both_molar = from + to;
  }
  [[nodiscard]] double relative_rate() const {
    return both_molar > least_molar ? std::abs(net_molar_per_s) / both_molar : 0;
  }
};

void step_couple(const Going& going, matter::Mixture& mixture, double seconds) {
  const Couple couple(going, mixture);
  const double per_s = couple.forth_per_s + couple.back_per_s;
  if (couple.relative_rate() <= slowest_per_s || per_s <= 0) {
    return;
  }
  apply(*going.row, couple.net_molar_per_s / per_s * -std::expm1(-per_s * seconds), mixture);
}

/// 1/s at which the scarcest reactant would go at first; 0 when nothing worth the work happens.
double relative_rate(const Going& going, double largest, Instant& now) {
  if (!(largest > least_molar)) {
    return 0;
  }
  const double per_s = now.rate(going) / largest;
  return per_s > slowest_per_s ? per_s : 0;
}

/// Rate once `extent_molar` has happened.
double rate_at(const Going& going, matter::Mixture& mixture, double extent_molar, Instant& now) {
  const Reaction& reaction = *going.row;
  std::array<double, most_changes> kept;
  const std::size_t count = std::min(reaction.changes.size(), most_changes);
  for (std::size_t i = 0; i < count; ++i) {
    kept[i] = mixture.mmol[reaction.changes[i].first];
  }
  apply(reaction, extent_molar, mixture);
  const double rate = now.rate(going);
  for (std::size_t i = 0; i < count; ++i) {
    mixture.mmol[reaction.changes[i].first] = kept[i];
  }
  return rate;
}

/// Exact for a first-order change, second order in the step for every other, and short of the scarcest
/// reactant's end for all.
void step_reaction(const Going& going, matter::Mixture& mixture, Instant& now, double seconds) {
  if (going.back != nullptr) {
    step_couple(going, mixture, seconds);
    return;
  }
  const double largest = largest_extent_molar(*going.row, mixture);
  const double per_s = relative_rate(going, largest, now);
  if (per_s <= 0) {
    return;
  }
  const double half_way = largest * -std::expm1(-0.5 * per_s * seconds);
  const double half_rate = rate_at(going, mixture, half_way, now);
  const double half_per_s = half_rate / (largest - half_way);
  const bool usable = std::isfinite(half_per_s);
  apply(*going.row, largest * -std::expm1(-(usable ? half_per_s : per_s) * seconds), mixture);
}

/// Second-order approach to rest: e' = -k e^2 has e(t) = e0/(1 + k e0 t).
double grown(double excess_molar, double k, double seconds) {
  const double x = k * excess_molar * seconds;
  return excess_molar * x / (1 + x);
}

void step_precipitation(const Falling& falling, matter::Mixture& mixture, const matter::Catalogue& catalogue,
                        Instant& now, double seconds, double shear_per_s) {
  const Precipitation& row = *falling.law.row;
  const matter::Population& population = mixture.populations[row.solid];
  const double molar_mass_g = falling.molar_mass_g;
  const double solid_g = row.dissolves && !population.empty() ? population.total_g() : 0;
  if (solid_g <= 0 && !may_form(falling.law, mixture)) {
    return;
  }
  constexpr double mmol_per_mol = 1000;
  const double solid_molar = solid_g / molar_mass_g * mmol_per_mol / mixture.volume_ml;
  const double distance = distance_to_rest(falling.law, mixture, catalogue, now.conditions(), solid_molar);
  if (!(std::abs(distance) > least_molar)) {
    return;
  }
  if (distance > 0 && row.begins_above > 1 && population.empty()) {
    const auto& [first, count] = row.formula.front();
    const double c = mixture.molar(first);
    if (c < row.begins_above * (c - count * distance)) {
      return; // Without a seed it stays dissolved.
    }
  }
  if (falling.growth < 0) {
    falling.growth = row.growth.at(mixture.temperature_c);
  }
  const double k = falling.growth * (1 + row.stir_gain_s * shear_per_s);
  const double extent =
      distance > 0 ? grown(distance, k, seconds) : distance * -std::expm1(-row.dissolving_per_s * seconds);
  for (const auto& [id, count] : row.formula) {
    mixture.mmol[id] = std::max(0.0, mixture.mmol[id] - count * extent * mixture.volume_ml);
  }
  const double grams = extent * mixture.volume_ml / mmol_per_mol * molar_mass_g;
  if (grams < 0) {
    dissolve(mixture.populations.of(row.solid), -grams);
    return;
  }
  const double rate_mol_per_m3_s = extent / seconds * 1000;
  // A burst: once there is more solid than excess, its surface takes up what comes and few nuclei follow.
  const double young = distance / (distance + solid_molar);
  const double wanted = row.nuclei_s_per_mol > 0 ? row.nuclei_s_per_mol * rate_mol_per_m3_s * young
                                                 : std::numeric_limits<double>::infinity();
  deposit(mixture.populations.of(row.solid), catalogue.particles[row.solid], grams,
          static_cast<std::size_t>(row.nucleation_bin), wanted, mixture.volume_ml);
}

void step_breakdown(const Breakdown& row, matter::Mixture& mixture, const matter::Catalogue& catalogue,
                    Instant& now, double seconds) {
  if (mixture.populations[row.kind].empty()) {
    return;
  }
  const double ph = needs_ph(row) ? now.conditions().ph : 0;
  const double per_s = breakdown_per_s(row, mixture, catalogue, ph);
  if (per_s > slowest_per_s) {
    break_down(row, mixture, catalogue, per_s, seconds);
  }
}

/// Fastest change that a step has to follow, 1/s.
double pace(const matter::Mixture& mixture, const Rows& rows, Instant& now) {
  double fastest = 0;
  for (const Going& going : rows.reactions) {
    const double per_s = going.back != nullptr
                             ? Couple(going, mixture).relative_rate()
                             : relative_rate(going, largest_extent_molar(*going.row, mixture), now);
    fastest = std::max(fastest, std::min(per_s, fastest_resolved_per_s));
  }
  return fastest;
}

/// Symmetric splitting: half of every reaction, cells and solids, and the other halves in the opposite order.
/// `now`: the conditions once the first halves have gone.
void step(matter::Mixture& mixture, const Network& network, const Rows& rows,
          const matter::Catalogue& catalogue, Instant& before, Instant& now, double seconds,
          double shear_per_s) {
  for (const Going& going : rows.reactions) {
    step_reaction(going, mixture, before, 0.5 * seconds);
  }
  for (const Breakdown& row : network.breakdowns) {
    step_breakdown(row, mixture, catalogue, now, seconds);
  }
  for (const Falling& falling : rows.precipitations) {
    step_precipitation(falling, mixture, catalogue, now, seconds, shear_per_s);
  }
  for (auto going = rows.reactions.rbegin(); going != rows.reactions.rend(); ++going) {
    step_reaction(*going, mixture, now, 0.5 * seconds);
  }
}

} // namespace

void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue,
           double seconds, double shear_per_s, const Exposure& exposure) {
  Memory nothing_yet;
  react(mixture, network, catalogue, seconds, shear_per_s, exposure, nothing_yet);
}

void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue,
           double seconds, double shear_per_s, const Exposure& exposure, Memory& memory) {
  if (seconds <= 0 || mixture.empty()) {
    return;
  }
  const Rows rows(mixture, network, catalogue, exposure, memory.rows);
  double left_s = seconds;
  const double shortest_s = seconds / most_steps;
  while (left_s > 0) {
    Instant now(mixture, catalogue, memory.near);
    const double fastest = pace(mixture, rows, now);
    double step_s = left_s;
    if (fastest * left_s > largest_share) {
      // Whole numbers of equal steps, so that the last one is no sliver.
      const double wanted_s = std::max(shortest_s, largest_share / fastest);
      step_s = left_s / std::ceil(left_s / wanted_s);
    }
    std::optional<Instant> later;
    if (fastest * step_s > unnoticed_share) {
      later.emplace(mixture, catalogue, memory.near);
    }
    step(mixture, network, rows, catalogue, now, later ? *later : now, step_s, shear_per_s);
    left_s = step_s < left_s ? left_s - step_s : 0;
  }
}

} // namespace matula::reaction
