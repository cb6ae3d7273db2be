#include "engine/drafting/substances.hpp"

#include "engine/assets/world.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/generator/write.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::drafting {

namespace {

using scenario::Limit;

const Limit* limit_of(const std::string& section, const std::string& key, const scenario::Limits& limits) {
  const auto& rows = limits_of(section, limits);
  const auto at =
      std::find_if(rows.begin(), rows.end(), [&](const Limit& limit) { return limit.key == key; });
  return at == rows.end() ? nullptr : &*at;
}

/// "in patients 0 to 200 mmol/L; more ammonium than a kidney makes ...".
std::string usual(const author::Place& place, const author::Physiology& physiology) {
  for (const auto& one : physiology.substances) {
    if (one.place == place) {
      return fmt::format("in patients {:g} to {:g} {}; {}", one.span.range.low, one.span.range.high,
                         one.span.range.unit, one.span.words);
    }
  }
  return "";
}

bool known(const std::string& section, const std::string& key, const matter::Catalogue& catalogue) {
  return section == "dissolved" ? catalogue.find_species(key).has_value()
                                : catalogue.find_particle(key).has_value();
}

} // namespace

const std::vector<Section>& sections() {
  static const std::vector<Section> all{{"dissolved", ""},
                                        {"solids", "solid"},
                                        {"cells", "cells"},
                                        {"infection", "growing when passed"},
                                        {"contamination", "of the skin or the cup"}};
  return all;
}

const std::vector<Limit>& limits_of(const std::string& section, const scenario::Limits& limits) {
  return section == "dissolved" ? limits.dissolved
         : section == "solids"  ? limits.solids
         : section == "cells"   ? limits.cells
                                : limits.organisms;
}

std::string unit_in(const std::string& section, const std::string& key, const scenario::Limits& limits) {
  const bool organism = section == "infection" || section == "contamination";
  return organism ? "/mL" : author::unit_of({section, key}, limits);
}

std::string spoken(std::string key) {
  std::replace(key.begin(), key.end(), '_', ' ');
  return key;
}

std::vector<Row> substance_rows(const strict::Table& specimen, const std::string& text,
                                const author::Shelf& shelf) {
  std::vector<Row> rows;
  for (const Section& section : sections()) {
    const auto table = specimen.table_if_any(section.key);
    for (const std::string& key : table ? table->keys() : std::vector<std::string>{}) {
      Row row;
      row.path = std::string("specimen.") + section.key + "." + key;
      row.label = spoken(key) + (*section.heading == 0 ? "" : std::string(", ") + section.heading);
      row.entry = Entry::Quantity;
      row.value = typed_at(text, row.path);
      row.unit = unit_in(section.key, key, *shelf.limits);
      if (const Limit* limit = limit_of(section.key, key, *shelf.limits)) {
        row.range = "0 to " + generator::plain_number(limit->highest, 4) + " " + row.unit;
      }
      row.about = usual({section.key, key}, shelf.physiology);
      row.removable = row.can_step = true;
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

std::vector<Addition> wishable(const author::Shelf& shelf) {
  std::vector<Addition> all;
  for (const char* section : {"dissolved", "solids", "cells"}) {
    for (const Limit& limit : limits_of(section, *shelf.limits)) {
      if (known(section, limit.key, shelf.world->catalogue)) {
        const bool solid = std::string(section) == "solids";
        all.push_back({std::string(section) + "." + limit.key, spoken(limit.key) + (solid ? ", solid" : "")});
      }
    }
  }
  return all;
}

std::vector<Addition> additions_to(const strict::Table& specimen, const author::Shelf& shelf) {
  std::vector<Addition> additions;
  for (const Section& section : sections()) {
    const auto table = specimen.table_if_any(section.key);
    const auto listed = table ? table->keys() : std::vector<std::string>{};
    for (const Limit& limit : limits_of(section.key, *shelf.limits)) {
      if (known(section.key, limit.key, shelf.world->catalogue) &&
          std::find(listed.begin(), listed.end(), limit.key) == listed.end()) {
        additions.push_back(
            {std::string("specimen.") + section.key + "." + limit.key,
             spoken(limit.key) + (*section.heading == 0 ? "" : std::string(", ") + section.heading)});
      }
    }
  }
  return additions;
}

} // namespace matula::drafting
