#include "engine/scoring/rulebook.hpp"

#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

using strict::Range;
using strict::Table;

const Range per_mille{0, 1000, "per mille"};
const std::vector<std::string> shared_parts{"look", "gravity"};
const std::vector<std::string> rank_names{"note", "minor", "major", "invalidating"};

OrdinalRule read_ordinal(const Table& shared) {
  OrdinalRule rule;
  rule.missed_finding = shared.integer("missed_finding", per_mille);
  rule.false_alarm = shared.integer("false_alarm", per_mille);
  rule.reader_spread = shared.number("reader_spread", {0.01, 2, "grades"});
  const auto loss = shared.numbers("loss", per_mille, rule.loss.size());
  for (std::size_t i = 0; i < std::min(loss.size(), rule.loss.size()); ++i) {
    rule.loss[i] = static_cast<int>(loss[i]);
  }
  (void)shared.text("source");
  return rule;
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

WhyRule read_why(const Table& t) {
  WhyRule rule;
  const Range times{1, 100, "times"};
  const Range seconds{0, 1e6, "s"};
  rule.visible_grades = t.number("visible_grades", {0.01, 2, "grades"});
  rule.visible_gravity = t.number("visible_gravity", {0.00001, 0.01, ""});
  rule.loose_ratio = t.number("loose_ratio", times);
  rule.tight_ratio = t.number("tight_ratio", times);
  rule.mixed_ratio = t.number("mixed_ratio", times);
  rule.settled_s = t.number("settled", seconds);
  rule.stale_s = t.number("stale", seconds);
  rule.fresh_s = t.number("fresh", seconds);
  rule.cold_k = t.number("cold", {0, 100, "K"});
  rule.short_wait_s = t.number("short_wait", seconds);
  rule.long_wait_s = t.number("long_wait", seconds);
  rule.exact_up_to = t.integer("exact_up_to", {0, 12, "deviations"});
  rule.orders = t.integer("orders", {1, 1000, "orders"});
  (void)t.text("source");
  return rule;
}

PassRule read_pass(const Table& t) {
  PassRule rule;
  rule.mark = t.integer("mark", per_mille);
  rule.missed_findings = t.integer("missed_findings", {0, 100, "findings"});
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
}

Rulebook read_book(const Table& root) {
  Rulebook book;
  book.ordinal = read_ordinal(root.table("ordinal"));
  book.gravity = read_gravity(root.table("gravity"));
  book.observation = read_observation(root.table("observation"));
  book.pass = read_pass(root.table("pass"));
  book.why = read_why(root.table("why"));
  const Table process = root.table("process");
  (void)process.text("source");
  for (const auto& part : shared_parts) {
    book.part_shares[part] = process.integer(part, {0, 100, "shares"});
  }
  for (std::size_t i = 0; i < rank_names.size(); ++i) {
    book.rank_percent[i] = process.integer(rank_names[i], {0, 100, "%"});
  }
  for (const auto& row : root.tables("rule")) {
    book.rules.push_back(procedure::read_rule(row, shared_parts, check_sentences));
  }
  for (const auto& row : root.tables("safety")) {
    book.safety.push_back(procedure::read_rule(row, {}, check_sentences));
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

void add_tests(Rulebook& book, std::vector<procedure::Procedure> procedures) {
  for (auto& one : procedures) {
    TestRule test;
    static_cast<procedure::Procedure&>(test) = std::move(one);
    test.ordinal = book.ordinal;
    test.ordinal.under_reading_percent = test.under_reading_percent;
    test.ordinal.reportable = static_cast<reading::Grade>(test.reportable);
    test.ordinal.grades = std::max(reading::grade_count, test.words.size());
    book.part_shares[test.key] = test.share;
    book.rules.insert(book.rules.end(), test.rules.begin(), test.rules.end());
    book.tests.push_back(std::move(test));
  }
}

} // namespace

Rulebook Rulebook::with(const scenario::MarkingRules& own) const {
  Rulebook book = *this;
  const auto change = [&own](OrdinalRule& rule) {
    rule.missed_finding = own.missed_finding.value_or(rule.missed_finding);
    rule.false_alarm = own.false_alarm.value_or(rule.false_alarm);
    rule.reader_spread = own.reader_spread.value_or(rule.reader_spread);
    for (std::size_t i = 0; i < std::min(own.loss.size(), rule.loss.size()); ++i) {
      rule.loss[i] = own.loss[i];
    }
  };
  change(book.ordinal);
  for (auto& test : book.tests) {
    change(test.ordinal);
  }
  book.pass.mark = own.pass_mark.value_or(book.pass.mark);
  book.pass.missed_findings = own.missed_findings.value_or(book.pass.missed_findings);
  return book;
}

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
  auto book = read_file(file);
  auto procedures = procedure::load(assets_folder / "procedures", check_sentences);
  scenario::Problems problems = book ? scenario::Problems{} : book.error();
  if (!procedures) {
    problems.insert(problems.end(), procedures.error().begin(), procedures.error().end());
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  add_tests(*book, std::move(*procedures));
  return book;
}

} // namespace matula::scoring
