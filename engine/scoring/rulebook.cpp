#include "engine/scoring/rulebook.hpp"

#include "engine/scoring/explain.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

using strict::Range;
using strict::Table;

const Range per_mille{0, 1000, "per mille"};
const Range per_cent{0, 300, "%"};
const std::vector<std::string> part_names{"look", "gravity", "heat", "ssa", "benedict"};
const std::vector<std::string> rank_names{"note", "minor", "major", "invalidating"};
const std::vector<std::string> scale_names{"heat_cloud", "acid_cloud", "copper_colour"};
const std::vector<std::string> grade_names{"negative", "trace", "1+", "2+", "3+", "4+"};

std::size_t index_of(const std::string& word, const std::vector<std::string>& words) {
  return static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
}

OrdinalRule read_ordinal(const Table& shared, const Table& test) {
  OrdinalRule rule;
  rule.missed_finding = shared.integer("missed_finding", per_mille);
  rule.false_alarm = shared.integer("false_alarm", per_mille);
  rule.reader_spread = shared.number("reader_spread", {0.01, 2, "grades"});
  const auto loss = shared.numbers("loss", per_mille, rule.loss.size());
  for (std::size_t i = 0; i < std::min(loss.size(), rule.loss.size()); ++i) {
    rule.loss[i] = static_cast<int>(loss[i]);
  }
  rule.under_reading_percent = test.integer("under_reading_percent", per_cent);
  rule.reportable = static_cast<reading::Grade>(index_of(test.word("reportable", grade_names), grade_names));
  return rule;
}

std::vector<TestRule> read_tests(const Table& root) {
  std::vector<TestRule> tests;
  const Table all = root.table("test");
  const Table shared = root.table("ordinal");
  const Table grades = root.table("grade_g_per_dl");
  (void)shared.text("source");
  (void)grades.text("source");
  for (const auto& key : all.keys()) {
    const Table t = all.table(key);
    TestRule test;
    test.key = key;
    test.label = t.text("label");
    test.scale = static_cast<reading::Scale>(index_of(t.word("scale", scale_names), scale_names));
    test.reagents = t.texts_or_none("reagents");
    test.strengths = t.numbers("strengths", {0.01, 100, "times"}, test.reagents.size());
    test.ordinal = read_ordinal(shared, t);
    (void)t.text("source");
    const auto pairs = grades.numbers(key, {0, 20, "g/dL"}, 2 * reading::grade_count);
    for (std::size_t i = 0; i + 1 < pairs.size() && i / 2 < test.grade_g_per_dl.size(); i += 2) {
      test.grade_g_per_dl[i / 2] = {pairs[i], pairs[i + 1]};
    }
    tests.push_back(std::move(test));
  }
  return tests;
}

GravityRule read_gravity(const Table& t) {
  GravityRule rule;
  const std::vector<std::string> lines{"reading", "zero", "temperature", "protein", "glucose", "corrected"};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    rule.shares[i] = t.integer(lines[i], {0, 100, "shares"});
  }
  rule.division = t.number("division", {0.0001, 0.01, ""});
  rule.protein_physical_per_g_dl = t.number("protein_physical_per_g_dl", {0, 0.01, ""});
  rule.glucose_physical_per_g_dl = t.number("glucose_physical_per_g_dl", {0, 0.01, ""});
  rule.proteins = t.texts_or_none("proteins");
  rule.sugars = t.texts_or_none("sugars");
  (void)t.text("source");
  return rule;
}

ObservationRule read_observation(const Table& t) {
  ObservationRule rule;
  rule.neighbour_credit = t.integer("neighbour_credit", per_mille);
  rule.colours = t.texts_or_none("colours");
  rule.clarities = t.texts_or_none("clarities");
  rule.no_odour = t.texts_or_none("no_odour");
  (void)t.text("source");
  return rule;
}

void check_sentences(const Table& t, const Rule& rule) {
  if (!is_fact(rule.fact)) {
    t.complain("fact", "one of " + all_facts());
  }
  for (const auto& [key, sentence] : {std::pair{"below", &rule.below}, {"above", &rule.above}}) {
    const auto unknown = unknown_placeholder(*sentence);
    if (!unknown.empty()) {
      t.complain(key, "{found}, {min}, {max} or a known fact in place of {" + unknown + "}");
    }
  }
  if (t.has("min") && rule.below.empty()) {
    t.complain("min", "a sentence 'below' beside the limit");
  }
  if (t.has("max") && rule.above.empty()) {
    t.complain("max", "a sentence 'above' beside the limit");
  }
}

Rule read_rule(const Table& t, bool safety) {
  const Range any{-1e6, 1e6, ""};
  Rule rule;
  rule.key = t.text("key");
  rule.fact = t.text("fact");
  rule.label = t.text("label");
  rule.source = t.text("source");
  rule.min = t.number_or("min", any, rule.min);
  rule.max = t.number_or("max", any, rule.max);
  rule.below = t.text_or("below", "");
  rule.above = t.text_or("above", "");
  if (safety) {
    rule.part = "safety";
    rule.rank = Rank::Major;
    rule.marks = t.integer("marks", {0, 100, "marks"});
    rule.stop = t.boolean_or("stop", false);
  } else {
    rule.part = t.word("part", part_names);
    rule.rank = static_cast<Rank>(index_of(t.word("rank", rank_names), rank_names));
  }
  check_sentences(t, rule);
  return rule;
}

Rulebook read_book(const Table& root) {
  Rulebook book;
  book.tests = read_tests(root);
  book.gravity = read_gravity(root.table("gravity"));
  book.observation = read_observation(root.table("observation"));
  const Table process = root.table("process");
  (void)process.text("source");
  for (const auto& part : part_names) {
    book.part_shares[part] = process.integer(part, {0, 100, "shares"});
  }
  for (std::size_t i = 0; i < rank_names.size(); ++i) {
    book.rank_percent[i] = process.integer(rank_names[i], {0, 100, "%"});
  }
  for (const auto& row : root.tables("rule")) {
    book.rules.push_back(read_rule(row, false));
  }
  for (const auto& row : root.tables("safety")) {
    book.safety.push_back(read_rule(row, true));
  }
  return book;
}

tl::expected<Rulebook, scenario::Problems> read_file(strict::File& file) {
  auto book = read_book(file.root());
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return book;
}

} // namespace

const TestRule* Rulebook::find_test(std::string_view key) const {
  const auto found =
      std::find_if(tests.begin(), tests.end(), [&](const TestRule& t) { return t.key == key; });
  return found == tests.end() ? nullptr : &*found;
}

tl::expected<Rulebook, scenario::Problems> parse_rulebook(std::string_view text,
                                                          const std::string& file_name) {
  strict::File file(std::string(text), file_name);
  return read_file(file);
}

tl::expected<Rulebook, scenario::Problems> load_rulebook(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "scoring" / "rules.toml");
  return read_file(file);
}

} // namespace matula::scoring
