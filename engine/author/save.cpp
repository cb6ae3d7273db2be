#include "engine/author/save.hpp"

#include "engine/assets/world.hpp"
#include "engine/generator/write.hpp"
#include "engine/scenario/quantity.hpp"

#include <cmath>

namespace matula::author {

namespace {

using generator::plain_number;
using scenario::Limit;

bool same(double one, double other) {
  constexpr double rounding = 1e-6;
  return std::abs(one - other) <= rounding * std::max(std::abs(one), std::abs(other));
}

/// The units a substance may be written in, counted from unit_of.
std::vector<scenario::Unit> units_of(const Place& place, const Limit& limit,
                                     const matter::Catalogue& catalogue) {
  if (place.section == "solids") {
    return scenario::solid_measure(limit).units;
  }
  if (place.section == "cells") {
    return {{"/uL", 1}, {"/µL", 1}, {"/mL", 1e-3}, {"/L", 1e-6}};
  }
  const auto id = catalogue.find_species(limit.key);
  auto units = scenario::dissolved_measure(limit, id ? catalogue.species[*id].molar_mass_g_per_mol : 1).units;
  const double first = units.front().in_base;
  for (auto& unit : units) {
    unit.in_base /= first;
  }
  return units;
}

/// In the unit it stood in, where it stood there.
std::string quantity(const std::string& text, const std::string& path, const Place& place, const Limit& limit,
                     double amount, const Shelf& shelf) {
  std::string unit = unit_of(place, *shelf.limits);
  double in_unit = amount;
  const auto stood = strict::value_at(text, strict::path_from(path));
  const auto written = stood && stood->size() > 2
                           ? scenario::split_quantity(stood->substr(1, stood->size() - 2))
                           : std::nullopt;
  for (const auto& known : units_of(place, limit, shelf.world->catalogue)) {
    if (written && written->unit == known.word) {
      unit = known.word;
      in_unit = amount / known.in_base;
    }
  }
  return generator::quoted(plain_number(in_unit, amount_figures) + " " + unit);
}

void compare(const std::string& text, const char* section, const std::vector<Limit>& limits,
             const specimen::Specimen& now, const specimen::Specimen& wanted, const Shelf& shelf,
             std::vector<Change>& changes) {
  for (const Limit& limit : limits) {
    const Place place{section, limit.key};
    const double had = amount_of(now, place, *shelf.limits, shelf.world->catalogue);
    const double wants = amount_of(wanted, place, *shelf.limits, shelf.world->catalogue);
    if (same(had, wants)) {
      continue;
    }
    const std::string path = std::string("specimen.") + section + "." + limit.key;
    changes.push_back(
        {path, wants > 0 ? std::optional(quantity(text, path, place, limit, wants, shelf)) : std::nullopt});
  }
}

std::string block(const std::string& key, const std::string& words) {
  return key + " = \"\"\"\n" + words + (words.empty() || words.back() == '\n' ? "" : "\n") + "\"\"\"\n";
}

std::string signed_number(double value, int figures) {
  return (value < 0 ? "-" : "") + plain_number(std::abs(value), figures);
}

std::string decision_text(const scenario::Decision& decision) {
  using generator::quoted;
  std::string text = "\n[[decision]]\nkey = " + quoted(decision.key) +
                     "\nprompt = " + quoted(decision.prompt) + "\nright = " + quoted(decision.right) +
                     "\nwhy = " + quoted(decision.why) + "\n";
  text += decision.weight == scenario::Decision{}.weight
              ? ""
              : "weight = " + std::to_string(decision.weight) + "\n";
  text += "[decision.options]\n";
  for (const auto& [key, words] : decision.options) {
    text += key + " = " + quoted(words) + "\n";
  }
  return text;
}

std::string specimen_text(const specimen::Specimen& specimen, const Shelf& shelf) {
  std::string text = "\n[specimen]\nvolume = \"" + plain_number(specimen.volume_ml, bare_figures) + " mL\"\n";
  text += "temperature = \"" + plain_number(specimen.temperature_c, bare_figures) + " C\"\n";
  text += "ph = " + plain_number(specimen.target_ph, bare_figures) + "\n";
  text += "yellow = " + plain_number(specimen.urochrome_a420, bare_figures) +
          "          # absorbance a cm at 420 nm\n";
  text += specimen.stood_hours > 0
              ? "stood = \"" + plain_number(specimen.stood_hours, bare_figures) + " h\"\n"
              : "";
  std::string section;
  text += "\n[specimen.dissolved]\n";
  for (const Line& line : lines_of(specimen, *shelf.limits, shelf.world->catalogue)) {
    const bool begins = line.place.section != section && line.place.section != "dissolved";
    text += begins ? "\n[specimen." + line.place.section + "]\n" : "";
    section = line.place.section;
    text += line.place.key + " = " + generator::quoted(line.quantity) + "\n";
  }
  return text;
}

} // namespace

strict::Edited save(const std::string& text, const std::vector<Change>& changes) {
  std::string now = text;
  for (const auto& change : changes) {
    const auto path = strict::path_from(change.path);
    auto edited =
        change.value ? strict::set_value(now, path, *change.value) : strict::remove_value(now, path);
    if (!edited) {
      return tl::make_unexpected(change.path + ": " + edited.error());
    }
    now = std::move(*edited);
  }
  return now;
}

std::vector<Change> changes_for(const std::string& text, const specimen::Specimen& now,
                                const specimen::Specimen& wanted, const Shelf& shelf) {
  std::vector<Change> changes;
  const auto bare = [&](const char* path, double had, double wants, const char* unit) {
    if (!same(had, wants)) {
      const std::string number = plain_number(wants, bare_figures);
      changes.push_back({path, *unit == 0 ? number : generator::quoted(number + " " + unit)});
    }
  };
  bare("specimen.volume", now.volume_ml, wanted.volume_ml, "mL");
  if (now.life.empty()) {
    bare("specimen.temperature", now.temperature_c, wanted.temperature_c, "C");
  }
  bare("specimen.ph", now.target_ph, wanted.target_ph, "");
  bare("specimen.yellow", now.urochrome_a420, wanted.urochrome_a420, "");
  compare(text, "dissolved", shelf.limits->dissolved, now, wanted, shelf, changes);
  compare(text, "solids", shelf.limits->solids, now, wanted, shelf, changes);
  compare(text, "cells", shelf.limits->cells, now, wanted, shelf, changes);
  return changes;
}

std::string write_case(const scenario::Scenario& scenario, const std::string& remark, const Shelf& shelf) {
  const auto& specimen = scenario.specimen;
  if (scenario.collection || !specimen.life.empty() || !specimen.preservatives.empty() ||
      !specimen.growing_per_ml.empty() || !specimen.resting_per_ml.empty()) {
    throw std::invalid_argument("write_case is for cases without a way to the bench and without a delivery");
  }
  using generator::quoted;
  const auto& patient = scenario.patient;
  std::string text = remark + "title = " + quoted(scenario.title) + "\nlevel = " + quoted(scenario.level) +
                     "\nseed = " + std::to_string(scenario.seed) + "\n";
  text += block("story", scenario.story) + block("debrief", scenario.debrief);
  text += "\n[patient]\nname = " + quoted(patient.name) + "\nage_sex = " + quoted(patient.age_sex) +
          "\nward = " + quoted(patient.ward) + "\nrequest = " + quoted(patient.request) +
          "\nspecimen_note = " + quoted(patient.specimen_note) + "\n";
  text += specimen_text(specimen, shelf);
  text += "\n[bench]\nroom = \"" + plain_number(scenario.room_c, bare_figures) + " C\"\n";
  text += "urinometer_zero_error = " + signed_number(scenario.urinometer_zero_error, 1) + "\n";
  text += "urinometer_calibration = \"" + plain_number(scenario.rules.calibration_c, bare_figures) + " C\"\n";
  text += "reagents = " + generator::list(scenario.reagents_out) + "\n";
  std::vector<std::string> tests;
  if (scenario.asked.look) {
    tests.emplace_back("look");
  }
  if (scenario.asked.specific_gravity) {
    tests.emplace_back("specific_gravity");
  }
  tests.insert(tests.end(), scenario.asked.procedures.begin(), scenario.asked.procedures.end());
  text += "\n[asked]\ntests = " + generator::list(tests) + "\n";
  for (const auto& decision : scenario.decisions) {
    text += decision_text(decision);
  }
  return text;
}

} // namespace matula::author
