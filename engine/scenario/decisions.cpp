#include "engine/scenario/parts.hpp"
#include "engine/strict/nearest.hpp"

#include <algorithm>

namespace matula::scenario {

namespace {

bool is_key(const std::string& word) {
  return !word.empty() && std::all_of(word.begin(), word.end(), [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '_';
  });
}

void read_options(const strict::Table& table, Decision& decision) {
  const strict::Table options = table.table("options");
  for (const std::string& key : options.keys()) {
    decision.options.emplace_back(key, options.text(key));
  }
  if (table.has("options") && decision.options.size() < 2) {
    table.complain("options", "at least two answers, each key = \"wording\"");
  }
}

void check_right(const strict::Table& table, const Decision& decision) {
  std::vector<std::string> keys;
  for (const auto& [key, wording] : decision.options) {
    keys.push_back(key);
  }
  if (!keys.empty() && !decision.right.empty() &&
      std::find(keys.begin(), keys.end(), decision.right) == keys.end()) {
    table.complain("right", "the key of one of the options: " + strict::suggestion(decision.right, keys));
  }
}

void check_key(const strict::Table& table, const std::vector<Decision>& earlier, const std::string& key) {
  if (!key.empty() && !is_key(key)) {
    table.complain("key", "a word of small letters, digits and '_'");
  }
  if (std::any_of(earlier.begin(), earlier.end(), [&](const Decision& other) { return other.key == key; })) {
    table.complain("key", "a key that no other decision has");
  }
}

Decision read_question(const strict::Table& table, const std::vector<Decision>& earlier) {
  Decision decision;
  decision.key = table.text("key");
  check_key(table, earlier, decision.key);
  decision.prompt = table.text("prompt");
  read_options(table, decision);
  return decision;
}

} // namespace

std::vector<Decision> read_decisions(const strict::Table& root, const Limits& limits) {
  std::vector<Decision> decisions;
  for (const strict::Table& table : root.tables_or_none("decision")) {
    Decision decision = read_question(table, decisions);
    decision.right = table.text("right");
    check_right(table, decision);
    decision.why = table.text("why");
    decision.weight = table.integer_or("weight", limits.ranges.at("weight"), decision.weight);
    decisions.push_back(std::move(decision));
  }
  return decisions;
}

std::vector<Decision> read_questions(const strict::Table& root) {
  std::vector<Decision> decisions;
  for (const strict::Table& table : root.tables_or_none("decision")) {
    decisions.push_back(read_question(table, decisions));
  }
  return decisions;
}

} // namespace matula::scenario
