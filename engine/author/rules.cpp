#include "engine/author/rules.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/strict/file.hpp"

namespace matula::author {

namespace {

const std::vector<std::string>& sections() {
  static const std::vector<std::string> names{"dissolved", "solids", "cells"};
  return names;
}

std::vector<std::string> test_keys() {
  std::vector<std::string> keys;
  for (const auto& one : procedure::shipped_list()) {
    keys.push_back(one.key);
  }
  return keys;
}

Place read_place(const strict::Table& row) {
  return {row.word_or("section", sections(), "dissolved"), row.text("key")};
}

ColourKnob read_colour(const strict::Table& row) {
  const strict::Range some{0, 1000, ""};
  ColourKnob knob;
  knob.word = row.text("word");
  knob.yellow = row.numbers("yellow", {0, 3, "per cm"}, 2);
  knob.with = row.texts_or_none("with");
  knob.amounts = row.numbers_or_none("amounts", some);
  if (row.has("factors")) {
    knob.factors = row.numbers("factors", some, 2);
  }
  if (knob.with.size() != knob.amounts.size()) {
    row.complain("amounts", "as many amounts as there are pigments in `with`");
  }
  (void)row.text("source");
  return knob;
}

void read_search(const strict::Table& table, ComposeRules& rules) {
  rules.rounds = table.integer("rounds", {1, 50, ""});
  rules.near_enough = table.number("near_enough", {0.001, 0.5, "grades"});
  rules.clear_of_line = table.number("clear_of_line", {0, 0.5, "grades"});
  rules.gravity_within = table.number("gravity_within", {1e-6, 1e-3, ""});
  rules.most_tubes = table.integer("most_tubes", {4, 100, ""});
  (void)table.text("source");
}

void read_bicarbonate(const strict::Table& table, ComposeRules& rules) {
  rules.dissolved_co2_mmol_per_l = table.number("dissolved_co2", {0, 50, "mmol/L"});
  rules.bicarbonate_pk = table.number("pk", {4, 8, ""});
  rules.bicarbonate_from_ph = table.number("from_ph", {4.5, 9.5, ""});
  (void)table.text("source");
}

std::map<std::string, std::string> read_words(const strict::Table& row, const std::string& key) {
  std::map<std::string, std::string> words;
  if (const auto table = row.table_if_any(key)) {
    for (const auto& name : table->keys()) {
      words[name] = table->text(name);
    }
  }
  return words;
}

Trap::Sign read_sign(const strict::Table& row) {
  constexpr double most = 1e9;
  Trap::Sign sign;
  sign.of =
      row.word_or("of", {"substance", "ph", "temperature", "stood", "yellow", "zero_error"}, "substance");
  if (sign.of == "substance") {
    sign.place = read_place(row);
  }
  if (row.has("low")) {
    sign.low = row.number("low", {-most, most, ""});
  }
  if (row.has("high")) {
    sign.high = row.number("high", {-most, most, ""});
  }
  return sign;
}

Trap read_trap(const strict::Table& row) {
  auto asked = test_keys();
  asked.insert(asked.end(), {"look", "specific_gravity"});
  Trap trap;
  trap.key = row.text("key");
  trap.label = row.text("label");
  trap.tests = row.words("tests", asked);
  for (const auto& sign : row.tables_or_none("sign")) {
    trap.signs.push_back(read_sign(sign));
  }
  trap.settled_by = row.texts_or_none("settled_by");
  trap.how = row.text("how");
  trap.set = read_words(row, "set");
  trap.by = read_words(row, "by");
  (void)row.text("source");
  return trap;
}

} // namespace

tl::expected<ComposeRules, scenario::Problems>
load_compose_rules(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "author" / "compose.toml");
  const auto root = file.root();
  ComposeRules rules;
  rules.scaled = root.texts_or_none("scaled");
  rules.balance_with = root.text("balance_with");
  rules.least_chloride = root.number("least_chloride", {0, 100, "mmol/L"});
  (void)root.text("source");
  read_search(root.table("search"), rules);
  for (const auto& row : root.tables("analyte")) {
    rules.analytes[row.word("test", test_keys())] = read_place(row);
    (void)row.text("source");
  }
  for (const auto& row : root.tables("colour")) {
    rules.colours.push_back(read_colour(row));
  }
  read_bicarbonate(root.table("bicarbonate"), rules);
  const auto clarity = root.table("clarity");
  rules.clarity = read_place(clarity);
  rules.clarity_ladder = clarity.numbers("ladder", {0, 1e6, ""});
  (void)clarity.text("source");
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return rules;
}

tl::expected<std::vector<Trap>, scenario::Problems> load_traps(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "author" / "traps.toml");
  std::vector<Trap> traps;
  for (const auto& row : file.root().tables("trap")) {
    traps.push_back(read_trap(row));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return traps;
}

} // namespace matula::author
