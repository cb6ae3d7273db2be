#include "engine/author/plan.hpp"

#include "engine/strict/file.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::author {

namespace {

constexpr std::size_t most_rows = 40;

/// A word, or a list of words.
std::vector<std::string> one_or_more(const strict::Table& row, const std::string& key,
                                     const std::vector<std::string>& allowed) {
  return row.is_text(key) ? std::vector<std::string>{row.word(key, allowed)} : row.words(key, allowed);
}

std::vector<double> span(const strict::Table& row, const std::string& key, const strict::Range& range,
                         std::vector<double> usual) {
  if (!row.has(key)) {
    return usual;
  }
  auto ends = row.numbers(key, range, 2);
  if (ends[1] < ends[0]) {
    row.complain(key, "[from, to]");
  }
  return ends;
}

/// Every combination of what there was, with one more thing that may be any of these.
template <typename Put>
std::vector<PlanRow> times(const std::vector<PlanRow>& rows, const std::vector<std::string>& choices,
                           const Put& put) {
  std::vector<PlanRow> all;
  for (const auto& row : rows) {
    for (const auto& choice : choices) {
      all.push_back(row);
      put(all.back(), choice);
    }
  }
  return all;
}

std::vector<PlanRow> read_rows(const strict::Table& table, const Shelf& shelf) {
  PlanRow first;
  first.from_line = table.number_or("from_line", {0.05, 0.5, "grades"}, first.from_line);
  first.gravity = span(table, "specific_gravity_between", {1.001, 1.060, ""}, first.gravity);
  first.ph = span(table, "ph_between", shelf.limits->ranges.at("ph"), first.ph);
  first.look = table.boolean_or("look", true);
  first.specific_gravity = table.boolean_or("specific_gravity", true);
  std::vector<PlanRow> rows{first};
  for (const auto& test : shelf.standards->rules.tests) {
    if (test.result == procedure::Result::Word && table.has(test.key)) {
      rows = times(rows, one_or_more(table, test.key, test.words),
                   [&](PlanRow& row, const std::string& word) { row.words[test.key] = word; });
    }
  }
  std::vector<std::string> traps{"plain"};
  for (const auto& trap : shelf.traps) {
    if (!trap.set.empty() || !trap.by.empty()) {
      traps.push_back(trap.key);
    }
  }
  const auto chosen =
      table.has("trap") ? one_or_more(table, "trap", traps) : std::vector<std::string>{"plain"};
  rows = times(rows, chosen, [](PlanRow& row, const std::string& trap) { row.trap = trap; });
  if (rows.empty() || rows.front().words.empty()) {
    table.complain("heat", "at least one test with its word, such as heat = \"2+\"");
  }
  const int count = table.integer_or("count", {1, 20, "unknowns of each"}, 1);
  std::vector<PlanRow> all;
  for (int i = 0; i < count; ++i) {
    all.insert(all.end(), rows.begin(), rows.end());
  }
  return all;
}

} // namespace

tl::expected<Plan, scenario::Problems> read_plan(const std::filesystem::path& path, const Shelf& shelf) {
  strict::File file(path);
  const auto root = file.root();
  Plan plan;
  plan.key = path.stem().string();
  plan.title = root.text("title");
  plan.about = root.text_or("about", "");
  plan.tolerance = root.number_or("tolerance", {0.02, 2, "logits"}, plan.tolerance);
  const auto tables = root.tables("unknown");
  for (const auto& table : tables) {
    const auto rows = read_rows(table, shelf);
    plan.rows.insert(plan.rows.end(), rows.begin(), rows.end());
    if (plan.rows.size() > most_rows) {
      table.complain("count", "no more than 40 unknowns in all");
      break;
    }
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return plan;
}

} // namespace matula::author
