#include "engine/scenario/limits.hpp"

#include "engine/assets/world.hpp"

#include <limits>

namespace matula::scenario {

namespace {

constexpr double mg_dl_per_g_dl = 1000;
constexpr double mg_dl_per_g_l = 100;
constexpr double mg_dl_per_mg_l = 0.1;

/// Names that the readers of a scenario ask for.
const std::vector<std::string>& range_names() {
  static const std::vector<std::string> names{"volume",
                                              "temperature",
                                              "ph",
                                              "yellow",
                                              "stood",
                                              "void",
                                              "container_volume",
                                              "body_weight",
                                              "day_protein",
                                              "day_creatinine",
                                              "room",
                                              "zero_error",
                                              "calibration",
                                              "per_degrees",
                                              "solute_rule",
                                              "weight",
                                              "gravity_tolerance",
                                              "temperature_tolerance",
                                              "seed",
                                              "leg_hours",
                                              "leg_temperature",
                                              "leg_light",
                                              "dose",
                                              "bottle_age"};
  return names;
}

Limit::Units read_units(const strict::Table& row) {
  const std::string word = row.word("units", {"amount", "mass", "both"});
  return word == "mass" ? Limit::Units::Mass : word == "both" ? Limit::Units::Both : Limit::Units::Amount;
}

std::vector<Limit> read_rows(const strict::Table& root, const std::string& section) {
  std::vector<Limit> limits;
  for (const strict::Table& row : root.tables(section)) {
    Limit limit;
    limit.key = row.text("key");
    limit.units = section == "dissolved" ? read_units(row) : Limit::Units::Mass;
    limit.highest = row.number("highest", {0, 1e10, ""});
    (void)row.text("source");
    limits.push_back(limit);
  }
  return limits;
}

strict::Range read_range(const strict::Table& row) {
  constexpr double most = std::numeric_limits<int>::max();
  strict::Range range;
  range.low = row.number("low", {-most, most, ""});
  range.high = row.number("high", {range.low, most, ""});
  range.unit = row.text_or("unit", "");
  (void)row.text("source");
  return range;
}

std::vector<Unit> amount_units() {
  return {{"mmol/L", 1}, {"mol/L", 1e3}, {"umol/L", 1e-3}, {"µmol/L", 1e-3}};
}

/// Mass units, each worth so many mg/dL, times `per_mg_dl`.
std::vector<Unit> mass_units(double per_mg_dl) {
  return {{"mg/dL", per_mg_dl},
          {"g/dL", mg_dl_per_g_dl * per_mg_dl},
          {"g/L", mg_dl_per_g_l * per_mg_dl},
          {"mg/L", mg_dl_per_mg_l * per_mg_dl}};
}

} // namespace

tl::expected<Limits, Problems> read_limits(const std::filesystem::path& file_path) {
  strict::File file(file_path);
  const strict::Table root = file.root();
  Limits limits;
  limits.dissolved = read_rows(root, "dissolved");
  limits.solids = read_rows(root, "solid");
  limits.cells = read_rows(root, "cell");
  limits.organisms = read_rows(root, "organism");
  const strict::Table ranges = root.table("range");
  for (const std::string& name : range_names()) {
    limits.ranges[name] = read_range(ranges.table(name));
  }
  Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return limits;
}

const tl::expected<Limits, Problems>& shipped_limits() {
  static const tl::expected<Limits, Problems> limits =
      read_limits(assets::folder() / "scenario" / "limits.toml");
  return limits;
}

Measure dissolved_measure(const Limit& limit, double molar_mass_g_per_mol) {
  constexpr double mg_dl_per_mmol_l_and_g_mol = 0.1;
  const double mmol_l_per_mg_dl = 1 / (mg_dl_per_mmol_l_and_g_mol * molar_mass_g_per_mol);
  Measure measure;
  measure.high = limit.highest;
  if (limit.units != Limit::Units::Mass) {
    measure.units = amount_units();
  }
  if (limit.units != Limit::Units::Amount) {
    const std::vector<Unit> mass = mass_units(mmol_l_per_mg_dl);
    measure.units.insert(measure.units.end(), mass.begin(), mass.end());
  }
  return measure;
}

Measure cell_measure(const Limit& limit) {
  return {{{"/uL", 1}, {"/µL", 1}, {"/mL", 1e-3}, {"/L", 1e-6}}, 0, limit.highest};
}

Measure organism_measure(const Limit& limit) {
  return {{{"/mL", 1}, {"/uL", 1e3}, {"/µL", 1e3}, {"/L", 1e-3}}, 0, limit.highest};
}

Measure solid_measure(const Limit& limit) {
  return {{{"mg/L", 1}, {"mg/dL", 10}, {"g/L", 1000}}, 0, limit.highest};
}

Measure range_measure(const Limits& limits, const std::string& name) {
  const strict::Range& range = limits.ranges.at(name);
  Measure measure{{{range.unit, 1}}, range.low, range.high};
  if (range.unit == "h") {
    measure.units.push_back({"min", 1.0 / 60});
  } else if (range.unit == "C") {
    measure.units.push_back({"°C", 1});
  } else if (range.unit == "d") {
    measure.units.push_back({"h", 1.0 / 24});
  } else if (range.unit == "mL") {
    measure.units.push_back({"L", 1000});
  } else if (range.unit == "g/L") {
    measure.units.insert(measure.units.end(), {{"mg/L", 1e-3}, {"mg/dL", 0.01}, {"g/dL", 10}});
  }
  return measure;
}

} // namespace matula::scenario
