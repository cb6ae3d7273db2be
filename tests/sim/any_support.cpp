#include "tests/sim/any_support.hpp"

#include "engine/scenario/limits.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <stdexcept>

namespace matula::tests {

namespace {

constexpr double share_of_substances = 0.45; // in one specimen
constexpr double share_of_solids = 0.15;
constexpr double least_share = 1e-3; // of a substance's limit

std::string about(const char* what, const std::string& name, double value) {
  return std::string(what) + " " + name + " = " + std::to_string(value);
}

bool displayable(const optics::Xyz& colour) {
  const optics::LinearRgb shown = optics::to_display(colour);
  const double least =
      std::min({shown.r, shown.g, shown.b, colour.x + 1e-9, colour.y + 1e-9, colour.z + 1e-9});
  const double most = std::max({shown.r, shown.g, shown.b});
  return std::isfinite(least + most) && least >= 0 && most <= 1;
}

/// A card is white; glare and the card's edge can add a little.
constexpr double brightest = 1.3;

std::string broken_rows(const appearance::Appearance& looks) {
  for (const appearance::Row& row : looks.rows) {
    for (std::size_t i = 0; i < appearance::lateral_samples; ++i) {
      if (!displayable(row.on_white[i]) || !displayable(row.on_black[i])) {
        return "a colour no display can show";
      }
      if (row.on_white[i].y > brightest || row.on_black[i].y > brightest) {
        return about("luminance", "of a row", std::max(row.on_white[i].y, row.on_black[i].y));
      }
    }
    const double sum = row.print_contrast + row.print_sharp + row.print_halo + row.granularity + row.opacity;
    if (!std::isfinite(sum) || row.opacity < -1e-9 || row.opacity > 1 + 1e-9) {
      return about("opacity", "of a row", row.opacity);
    }
  }
  return "";
}

/// What a broken portion holds, for the message.
std::string contents(const matter::Mixture& mixture) {
  const matter::Catalogue& catalogue = any_world().catalogue;
  std::ostringstream out;
  out << "; in " << mixture.volume_ml << " mL:";
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    if (mixture.mmol[i] > 0) {
      out << ' ' << catalogue.species[i].key << ' ' << mixture.molar(i) << " M";
    }
  }
  for (std::size_t k = 0; k < mixture.populations.size(); ++k) {
    if (mixture.populations[k].total_g() > 0) {
      out << ' ' << catalogue.particles[k].key << ' ' << mixture.populations[k].total_g() / mixture.volume_ml
          << " g/mL";
    }
  }
  return out.str();
}

} // namespace

const assets::World& any_world() {
  static const auto loaded = assets::load(std::string(MATULA_SOURCE_DIR) + "/assets");
  if (!loaded) {
    throw std::runtime_error(scenario::to_text(loaded.error()));
  }
  return **loaded;
}

const ConservedSums& conserved() {
  static const ConservedSums sums(any_world().chemistry, any_world().catalogue);
  return sums;
}

double Dice::log_between(double low, double high) {
  return std::exp(between(std::log(low), std::log(high)));
}

std::size_t Dice::below(std::size_t count) {
  return std::min(count - 1, static_cast<std::size_t>(stream_.next() * static_cast<double>(count)));
}

specimen::Specimen any_specimen(Dice& dice) {
  const auto& limits = scenario::shipped_limits();
  const matter::Catalogue& catalogue = any_world().catalogue;
  specimen::Specimen made;
  made.volume_ml = dice.between(20, 120);
  made.temperature_c = dice.between(4, 37);
  made.target_ph = dice.between(4.5, 9.5);
  made.urochrome_a420 = dice.yes(0.8) ? dice.log_between(0.01, 2) : 0;
  for (const scenario::Limit& limit : limits->dissolved) {
    if (!catalogue.find_species(limit.key) || !dice.yes(share_of_substances)) {
      continue;
    }
    const double amount = limit.highest * dice.log_between(least_share, 1);
    auto& list = limit.units == scenario::Limit::Units::Mass ? made.mg_per_dl : made.mmol_per_l;
    list.emplace_back(limit.key, amount);
  }
  for (const scenario::Limit& limit : limits->solids) {
    if (catalogue.find_particle(limit.key) && dice.yes(share_of_solids)) {
      made.particles_mg_per_l.emplace_back(limit.key, limit.highest * dice.log_between(least_share, 1));
    }
  }
  return made;
}

matter::Mixture any_dose(const matter::Reagent& reagent, double most_ml, Dice& dice) {
  const double volume_ml =
      std::min(most_ml, dice.yes(0.3) ? reagent.drop_ml * static_cast<double>(1 + dice.below(9))
                                      : dice.log_between(0.2, 5));
  return matter::from_bottle(reagent, volume_ml, dice.between(4, 40), any_world().catalogue);
}

void meet(Contents& contents, std::size_t reagent, std::set<Pair>& met) {
  for (const std::size_t other : contents.reagents) {
    if (other == reagent) {
      continue;
    }
    met.insert({std::min(other, reagent), std::max(other, reagent)});
  }
  contents.reagents.insert(reagent);
}

std::string broken_law(const matter::Mixture& mixture) {
  const matter::Catalogue& catalogue = any_world().catalogue;
  if (!std::isfinite(mixture.volume_ml) || mixture.volume_ml < 0) {
    return about("volume", "in mL", mixture.volume_ml);
  }
  if (mixture.volume_ml <= 0) {
    return "";
  }
  if (!(mixture.temperature_c >= 0 && mixture.temperature_c <= 110)) {
    return about("temperature", "in C", mixture.temperature_c);
  }
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    if (!std::isfinite(mixture.mmol[i]) || mixture.mmol[i] < 0) {
      return about("amount of", catalogue.species[i].key, mixture.mmol[i]);
    }
  }
  for (std::size_t k = 0; k < mixture.populations.size(); ++k) {
    const matter::Population& population = mixture.populations[k];
    const double least =
        std::min(population.clot_g, *std::min_element(population.grams.begin(), population.grams.end()));
    if (!std::isfinite(population.total_g()) || least < 0) {
      return about("grams of", catalogue.particles[k].key, least);
    }
  }
  const double ph = matter::ph(mixture, catalogue);
  if (!(ph >= 0 && ph <= 14)) {
    return about("pH", "", ph);
  }
  // The scale ends at 0 and 14: outside it the balance cannot close.
  const bool inside = ph > 0.01 && ph < 13.99;
  const double charge = matter::charge_excess_molar(mixture, catalogue, ph);
  constexpr double most_charge_molar = 2e-5; // from the last step of the search for the activities
  if (inside && !(std::abs(charge) < most_charge_molar)) {
    return about("charge in mol/L at pH", std::to_string(ph), charge) + contents(mixture);
  }
  constexpr double least_ml = 1e-3; // less is rounding, not liquid
  const double density = matter::density_kg_m3(mixture, catalogue);
  // Ether weighs 710; half a bed of cuprous oxide (6000) is the heaviest there can be. Drops left between the
  // grains of a powder that the liquid was poured off are no liquid to weigh.
  double grains_g = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    grains_g += population.total_g();
  }
  const bool liquid = mixture.volume_ml > least_ml && grains_g < 2 * mixture.volume_ml;
  if (liquid && !(density > 700 && density < 4000)) {
    return about("density", "in kg/m3", density) + contents(mixture);
  }
  return "";
}

std::string broken_looks(const column::Column& column) {
  const assets::World& world = any_world();
  for (const auto card : {appearance::Card::White, appearance::Card::Black, appearance::Card::Printed}) {
    const appearance::Appearance looks =
        appearance::look_at(column, world.catalogue, world.optics, {card, optics::Lamp::Daylight}, 1);
    std::string wrong = broken_rows(looks);
    for (const appearance::Piece& piece : looks.pieces) {
      wrong = displayable(piece.colour) && std::isfinite(piece.size_mm) ? wrong : "a piece of no colour";
    }
    if (!displayable(looks.sediment.colour) || !displayable(looks.clot_colour)) {
      wrong = "a bed or clot of no colour";
    }
    if (!wrong.empty()) {
      return wrong;
    }
  }
  return "";
}

std::string broken_sums(const std::vector<double>& before, const matter::Mixture& now, bool lost) {
  const ConservedSums& sums = conserved();
  const std::vector<double> after = sums.of(now);
  const std::vector<double> scale = sums.scale_of(now);
  constexpr double rounding = 2e-4; // rows are printed to six figures, see conserved.cpp
  constexpr double nothing = 1e-9;  // mmol or g
  for (std::size_t i = 0; i < after.size(); ++i) {
    const double off = after[i] - before[i];
    const double allowed = rounding * std::max(scale[i], std::abs(before[i])) + nothing;
    if (!lost && std::abs(off) > allowed) {
      return about("conserved sum moved by", sums.name(i), off);
    }
  }
  return "";
}

} // namespace matula::tests
