#include "engine/scenario/review.hpp"

#include "engine/scenario/parts.hpp"

#include <algorithm>

namespace matula::scenario {

namespace {

/// "2026-11-27"
bool is_date(const std::string& words) {
  const std::string shape = "dddd-dd-dd";
  return words.size() == shape.size() &&
         std::equal(words.begin(), words.end(), shape.begin(), [](char is, char should) {
           return should == 'd' ? is >= '0' && is <= '9' : is == should;
         });
}

Review::Change read_change(const strict::Table& row) {
  Review::Change change;
  change.version = row.text("version");
  change.date = row.text("date");
  if (!change.date.empty() && !is_date(change.date)) {
    row.complain("date", "a day such as \"2026-11-27\"");
  }
  change.words = row.text("words");
  return change;
}

Review::Worked read_worked(const strict::Table& row) {
  Review::Worked worked;
  worked.steps = row.text("steps");
  const auto marks = row.table("marks");
  for (const std::string& ledger : ledger_words()) {
    if (marks.has(ledger)) {
      worked.marks[ledger] = marks.integer(ledger, {0, 10000, "marks"});
    }
  }
  if (row.has("marks") && worked.marks.empty()) {
    row.complain("marks", "at least one ledger: { reading = 60 }");
  }
  if (row.has("passed")) {
    worked.passed = row.boolean_or("passed", true);
  }
  return worked;
}

} // namespace

const std::vector<std::string>& ledger_words() {
  static const std::vector<std::string> words{"reading", "interpretation", "arithmetic", "process", "safety"};
  return words;
}

std::optional<Review> read_review(const strict::Table& root) {
  const auto table = root.table_if_any("review");
  if (!table) {
    return std::nullopt;
  }
  Review review;
  review.author = table->text("author");
  review.reviewer = table->text_or("reviewer", "");
  review.version = table->text("version");
  for (const auto& row : table->tables_or_none("change")) {
    review.changes.push_back(read_change(row));
  }
  for (const auto& row : table->tables_or_none("worked")) {
    review.worked.push_back(read_worked(row));
  }
  return review;
}

std::optional<Review> review_of(const std::string& text) {
  strict::File file(text, "");
  return read_review(file.root());
}

} // namespace matula::scenario
