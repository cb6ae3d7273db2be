#include "engine/procedure/procedure.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::procedure {

namespace {

const std::vector<std::string> rank_names{"note", "minor", "major", "invalidating"};

void check_ends(const strict::Table& table, const Rule& rule) {
  if (table.has("min") && rule.below.empty()) {
    table.complain("min", "a sentence 'below' beside the limit");
  }
  if (table.has("max") && rule.above.empty()) {
    table.complain("max", "a sentence 'above' beside the limit");
  }
}

} // namespace

Rule read_rule(const strict::Table& table, const std::vector<std::string>& parts, const CheckRule& check) {
  const strict::Range any{-1e6, 1e6, ""};
  Rule rule;
  rule.key = table.text("key");
  rule.fact = table.text("fact");
  rule.label = table.text("label");
  rule.source = table.text("source");
  rule.min = table.number_or("min", any, rule.min);
  rule.max = table.number_or("max", any, rule.max);
  rule.below = table.text_or("below", "");
  rule.above = table.text_or("above", "");
  if (parts.empty()) {
    rule.part = "safety";
    rule.rank = Rank::Major;
    rule.marks = table.integer("marks", {0, 100, "marks"});
    rule.stop = table.boolean_or("stop", false);
  } else {
    rule.part = parts.size() == 1 ? parts.front() : table.word("part", parts);
    const auto rank = table.word("rank", rank_names);
    rule.rank = static_cast<Rank>(std::find(rank_names.begin(), rank_names.end(), rank) - rank_names.begin());
  }
  check_ends(table, rule);
  if (check) {
    check(table, rule);
  }
  return rule;
}

} // namespace matula::procedure
