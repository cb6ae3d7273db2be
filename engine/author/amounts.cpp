#include "engine/author/amounts.hpp"

#include "engine/generator/write.hpp"

#include <algorithm>
#include <charconv>

namespace matula::author {

namespace {

using scenario::Limit;
using Amounts = std::vector<std::pair<std::string, double>>;

constexpr double mg_dl_per_mmol_l_and_g_mol = 0.1;

const std::vector<Limit>& section_of(const Place& place, const scenario::Limits& limits) {
  return place.section == "solids"  ? limits.solids
         : place.section == "cells" ? limits.cells
                                    : limits.dissolved;
}

const Limit* limit_of(const Place& place, const scenario::Limits& limits) {
  const auto& rows = section_of(place, limits);
  const auto at =
      std::find_if(rows.begin(), rows.end(), [&](const Limit& limit) { return limit.key == place.key; });
  return at == rows.end() ? nullptr : &*at;
}

bool weighed(const Place& place, const scenario::Limits& limits) {
  const Limit* limit = limit_of(place, limits);
  return limit != nullptr && limit->units == Limit::Units::Mass;
}

double molar_mass(const std::string& key, const matter::Catalogue& catalogue) {
  const auto id = catalogue.find_species(key);
  return id ? catalogue.species[*id].molar_mass_g_per_mol : 1;
}

double listed(const Amounts& amounts, const std::string& key) {
  double all = 0;
  for (const auto& [name, amount] : amounts) {
    all += name == key ? amount : 0;
  }
  return all;
}

void put(Amounts& amounts, const std::string& key, double amount) {
  const auto is_it = [&](const auto& one) { return one.first == key; };
  const auto at = std::find_if(amounts.begin(), amounts.end(), is_it);
  if (!(amount > 0)) {
    amounts.erase(std::remove_if(amounts.begin(), amounts.end(), is_it), amounts.end());
  } else if (at == amounts.end()) {
    amounts.emplace_back(key, amount);
  } else {
    at->second = amount;
  }
}

/// The number a text begins with, whatever the machine's language.
double figure_of(const std::string& text) {
  double figure = 0;
  std::from_chars(text.data(), text.data() + text.size(), figure);
  return figure;
}

std::string quantity(const Place& place, double amount, const scenario::Limits& limits) {
  return generator::plain_number(amount, amount_figures) + " " + unit_of(place, limits);
}

} // namespace

std::string unit_of(const Place& place, const scenario::Limits& limits) {
  if (place.section != "dissolved") {
    return place.section == "cells" ? "/uL" : "mg/L";
  }
  return weighed(place, limits) ? "mg/dL" : "mmol/L";
}

double amount_of(const specimen::Specimen& specimen, const Place& place, const scenario::Limits& limits,
                 const matter::Catalogue& catalogue) {
  if (place.section != "dissolved") {
    return listed(place.section == "cells" ? specimen.cells_per_ul : specimen.particles_mg_per_l, place.key);
  }
  const double per = molar_mass(place.key, catalogue) * mg_dl_per_mmol_l_and_g_mol;
  const double mmol = listed(specimen.mmol_per_l, place.key) + listed(specimen.mg_per_dl, place.key) / per;
  return weighed(place, limits) ? mmol * per : mmol;
}

void set_amount(specimen::Specimen& specimen, const Place& place, double amount,
                const scenario::Limits& limits, const matter::Catalogue& catalogue) {
  if (place.section != "dissolved") {
    put(place.section == "cells" ? specimen.cells_per_ul : specimen.particles_mg_per_l, place.key, amount);
    return;
  }
  const Limit* limit = limit_of(place, limits);
  const bool by_amount = limit == nullptr || limit->units == Limit::Units::Amount;
  const double per = molar_mass(place.key, catalogue) * mg_dl_per_mmol_l_and_g_mol;
  put(specimen.mmol_per_l, place.key, by_amount ? amount : 0);
  put(specimen.mg_per_dl, place.key, by_amount ? 0 : weighed(place, limits) ? amount : amount * per);
}

std::optional<double> most_of(const Place& place, const scenario::Limits& limits,
                              const matter::Catalogue& catalogue) {
  const Limit* limit = limit_of(place, limits);
  const bool known = place.section == "dissolved" ? catalogue.find_species(place.key).has_value()
                                                  : catalogue.find_particle(place.key).has_value();
  return limit == nullptr || !known ? std::nullopt : std::optional(limit->highest);
}

double from_mg_per_dl(double mg_per_dl, const std::string& key, const scenario::Limits& limits,
                      const matter::Catalogue& catalogue) {
  return weighed({"dissolved", key}, limits)
             ? mg_per_dl
             : mg_per_dl / (molar_mass(key, catalogue) * mg_dl_per_mmol_l_and_g_mol);
}

tl::expected<double, std::string> read_amount(const std::string& quantity, const Place& place,
                                              const scenario::Limits& limits,
                                              const matter::Catalogue& catalogue) {
  const Limit* limit = limit_of(place, limits);
  if (limit == nullptr || !most_of(place, limits, catalogue)) {
    return tl::make_unexpected("no substance a scenario may list: " + place.key);
  }
  const double molar = molar_mass(place.key, catalogue);
  const scenario::Measure measure = place.section == "solids"  ? scenario::solid_measure(*limit)
                                    : place.section == "cells" ? scenario::cell_measure(*limit)
                                                               : scenario::dissolved_measure(*limit, molar);
  const auto written = scenario::split_quantity(quantity);
  const auto unit = std::find_if(measure.units.begin(), measure.units.end(), [&](const scenario::Unit& one) {
    return written && one.word == written->unit;
  });
  const double base = unit == measure.units.end() ? -1 : written->value * unit->in_base;
  const double first = measure.units.front().in_base;
  constexpr double rounding = 1 + 1e-9; // Of the conversion between units.
  if (base < measure.low * first || base > measure.high * first * rounding) {
    return tl::make_unexpected("a quantity " + scenario::allowed_words(measure));
  }
  return place.section == "dissolved" && weighed(place, limits) ? base * molar * mg_dl_per_mmol_l_and_g_mol
                                                                : base;
}

std::string say_amount(const Place& place, double amount, const scenario::Limits& limits) {
  std::string name = place.key;
  std::replace(name.begin(), name.end(), '_', ' ');
  constexpr int figures = 3;
  return name + " " + generator::plain_number(amount, figures) + " " + unit_of(place, limits);
}

std::vector<Line> lines_of(const specimen::Specimen& specimen, const scenario::Limits& limits,
                           const matter::Catalogue& catalogue) {
  std::vector<Line> lines;
  const auto add = [&](const char* section, const std::vector<Limit>& rows) {
    for (const Limit& limit : rows) {
      const Place place{section, limit.key};
      const double amount = amount_of(specimen, place, limits, catalogue);
      if (amount > 0) {
        lines.push_back({place, quantity(place, amount, limits)});
      }
    }
  };
  add("dissolved", limits.dissolved);
  add("solids", limits.solids);
  add("cells", limits.cells);
  return lines;
}

specimen::Specimen as_written(specimen::Specimen specimen, const scenario::Limits& limits,
                              const matter::Catalogue& catalogue) {
  for (const Line& line : lines_of(specimen, limits, catalogue)) {
    set_amount(specimen, line.place, figure_of(line.quantity), limits, catalogue);
  }
  specimen.target_ph = figure_of(generator::plain_number(specimen.target_ph, bare_figures));
  specimen.urochrome_a420 = figure_of(generator::plain_number(specimen.urochrome_a420, bare_figures));
  return specimen;
}

} // namespace matula::author
