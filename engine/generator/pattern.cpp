#include "engine/generator/pattern.hpp"

#include "engine/scenario/parts.hpp"
#include "engine/scenario/quantity.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"

namespace matula::generator {

namespace {

constexpr double widest_spread = 1.0;

/// "130 mmol/L", or { typical = "130 mmol/L" or a bare number, spread = ..., follows = ... }.
void set_typical(const strict::Table& table, const std::string& key, Amount& amount) {
  if (!table.is_text(key)) {
    amount.typical = table.number(key, {0, 1e12, ""});
    return;
  }
  const auto written = scenario::split_quantity(table.text(key));
  if (!written) {
    table.complain(key, "a number with its unit, as \"130 mmol/L\"");
    return;
  }
  amount.typical = written->value;
  amount.unit = written->unit;
}

Amount read_amount(const strict::Table& table, const std::string& key, double spread) {
  Amount amount;
  amount.key = key;
  amount.spread = spread;
  if (table.is_text(key)) {
    set_typical(table, key, amount);
    return amount;
  }
  const strict::Table row = table.table(key);
  set_typical(row, "typical", amount);
  amount.spread = row.number_or("spread", {0, widest_spread, ""}, spread);
  amount.follows = row.number_or("follows", {0, 2, ""}, amount.follows);
  return amount;
}

strict::Range read_bound(const strict::Table& table, const std::string& key) {
  const std::vector<double> ends = table.numbers(key, {-1e6, 1e6, ""}, 2);
  return ends.size() == 2 ? strict::Range{ends[0], ends[1], ""} : strict::Range{};
}

std::vector<std::string> some_texts(const strict::Table& table, const std::string& key) {
  std::vector<std::string> texts = table.texts_or_none(key);
  if (texts.empty()) {
    table.complain(key, "a list of one or more texts in quotes");
  }
  return texts;
}

Who read_who(const strict::Table& root) {
  const strict::Table table = root.table("patient");
  Who who;
  const std::vector<double> ages = table.numbers("age", {0, 110, ""}, 2);
  if (ages.size() == 2) {
    who.youngest = ages[0];
    who.oldest = ages[1];
  }
  who.age_unit = table.word_or("age_unit", {"years", "days", "weeks"}, "years");
  who.age_note = table.text_or("age_note", "");
  who.sex = table.word("sex", {"any", "female", "male"});
  who.wards = some_texts(table, "wards");
  who.requests = some_texts(table, "requests");
  who.notes = some_texts(table, "notes");
  return who;
}

void read_sections(const strict::Table& specimen, double spread, Pattern& pattern) {
  for (const char* name : {"dissolved", "solids", "cells", "infection", "contamination"}) {
    const auto table = specimen.table_if_any(name);
    if (!table) {
      continue;
    }
    Section section;
    section.name = name;
    for (const std::string& key : table->keys()) {
      section.amounts.push_back(read_amount(*table, key, spread));
    }
    pattern.sections.push_back(section);
  }
}

/// What the way or the delivery says already must not be said twice.
void read_standing(const strict::Table& table, Pattern& pattern) {
  const bool way = !pattern.way.stretches.empty();
  if (!way) {
    pattern.temperature_c = read_measured(table, "temperature_c", {0, 40, "C"});
  } else if (table.has("temperature_c")) {
    table.complain("temperature_c", "nothing: the legs of [[specimen.leg]] say how warm it arrives");
  }
  if (!way && !pattern.handing) {
    pattern.stood_h = read_measured(table, "stood_h", {0, 48, "h"});
  } else if (table.has("stood_h")) {
    table.complain("stood_h", way ? "nothing: a last [[specimen.leg]] that is open says the same"
                                  : "nothing: delay_min of [collection] says how long it stood");
  }
}

void read_specimen(const strict::Table& root, Pattern& pattern) {
  const strict::Table table = root.table("specimen");
  pattern.way = read_way(table);
  pattern.handing = read_handing(root, pattern.way);
  pattern.volume_ml = read_measured(table, "volume_ml", {0, 150, "mL"});
  read_standing(table, pattern);
  pattern.ph = read_measured(table, "ph", {0, 9.5, ""});
  const double spread = table.number("spread", {0, widest_spread, ""});
  pattern.yellow = read_amount(table, "yellow", spread);
  pattern.dilution_spread = table.number("dilution_spread", {0, widest_spread, ""});
  if (const auto lines = table.table_if_any("as_written")) {
    for (const std::string& key : lines->keys()) {
      pattern.as_written.emplace_back(key, lines->text(key));
    }
  }
  read_sections(table, spread, pattern);
}

void read_bench(const strict::Table& root, Pattern& pattern) {
  const strict::Table table = root.table("bench");
  pattern.room_c = read_measured(table, "room_c", {0, 40, "C"});
  pattern.zero_errors = table.numbers("zero_errors", {-0.005, 0.005, ""});
  pattern.calibration = table.text("calibration");
  pattern.reagents = some_texts(table, "reagents");
}

Pattern read_all(const strict::Table& root, const scenario::Limits& limits) {
  Pattern pattern;
  (void)root.text("source");
  pattern.level = root.word("level", {"first", "trap", "exam"});
  pattern.seed = root.integer("seed", limits.ranges.at("seed"));
  pattern.titles = some_texts(root, "titles");
  pattern.stories = some_texts(root, "stories");
  pattern.debrief = root.text("debrief");
  pattern.who = read_who(root);
  read_specimen(root, pattern);
  const strict::Table consistent = root.table("consistent");
  pattern.bounds.chloride_mmol_per_l = read_bound(consistent, "chloride_mmol_per_l");
  pattern.bounds.gravity = read_bound(consistent, "gravity");
  pattern.bounds.osmolality_per_gravity = read_bound(consistent, "osmolality_per_gravity");
  (void)consistent.text_or("why", "");
  read_bench(root, pattern);
  pattern.tests = root.table("asked").texts_or_none("tests"); // None where the counter ends the case.
  pattern.decisions = scenario::read_decisions(root, limits);
  pattern.verbatim = root.text_or("verbatim", "");
  return pattern;
}

} // namespace

Measured read_measured(const strict::Table& table, const std::string& key, const strict::Range& range) {
  const std::vector<double> numbers = table.numbers(key, range, 4);
  if (numbers.size() < 4) {
    return {};
  }
  Measured measured{numbers[0], numbers[1], numbers[2], numbers[3]};
  if (!(measured.low <= measured.typical && measured.typical <= measured.high)) {
    table.complain(key, "[typical, spread, lowest, highest], the typical value between the last two");
  }
  return measured;
}

tl::expected<Pattern, scenario::Problems> read_pattern(const std::filesystem::path& file) {
  const auto& limits = scenario::shipped_limits();
  if (!limits) {
    return tl::make_unexpected(limits.error());
  }
  strict::File toml(file);
  Pattern pattern = read_all(toml.root(), *limits);
  pattern.key = file.stem().string();
  scenario::Problems problems = toml.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return pattern;
}

std::vector<std::string> pattern_keys(const std::filesystem::path& folder) {
  std::vector<std::string> keys;
  for (const auto& file : strict::files_in(folder, ".toml")) {
    keys.push_back(file.stem().string());
  }
  return keys;
}

} // namespace matula::generator
