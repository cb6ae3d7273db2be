#include "engine/reception/book.hpp"

#include "engine/assets/world.hpp"
#include "engine/reception/book_parts.hpp"
#include "engine/reception/facts.hpp"
#include "engine/strict/nearest.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::reception {

namespace {

constexpr double most_ml = 5000;
constexpr double most = 1e6;

const std::vector<std::string>& list_names() {
  static const std::vector<std::string> names{"kind", "container", "preservative", "contamination",
                                              "request"};
  return names;
}

const std::vector<std::string>& mark_names() {
  static const std::vector<std::string> names{"verdict", "fault",   "false_fault",  "identity", "counts",
                                              "volume",  "part_ml", "creatinine",   "index",    "complete",
                                              "protein", "band",    "part_protein", "pattern"};
  return names;
}

const std::vector<std::string>& credit_names() {
  static const std::vector<std::string> names{"accept_for_qualify", "accept_for_refuse",
                                              "qualify_for_accept", "qualify_for_refuse",
                                              "refuse_for_accept",  "refuse_for_qualify"};
  return names;
}

void read_words(const strict::Table& root, Book& book) {
  for (const std::string& list : list_names()) {
    for (const strict::Table& row : root.tables(list)) {
      Word word{row.text("key"), row.text("label"), 0, {}};
      word.needs_ml = row.number_or("needs_ml", {0, most_ml, "mL"}, 0);
      word.bottles = row.texts_or_none("bottles");
      (void)row.text_or("source", "");
      book.words[list].push_back(word);
    }
  }
  for (const strict::Table& row : root.tables("fault")) {
    book.faults.push_back(
        {row.text("key"), row.text("label"), row.word("group", {"identity", "time", "container", "day"})});
  }
}

Verdict verdict_of(const std::string& word) {
  return word == "refuse" ? Verdict::Refuse : word == "qualify" ? Verdict::Qualify : Verdict::Note;
}

void check_words(const strict::Table& row, const std::string& key, const std::string& fact,
                 const std::vector<std::string>& words, const Book& book) {
  const auto known = words_of_fact(fact, book);
  for (const std::string& word : words) {
    if (std::find(known.begin(), known.end(), word) == known.end()) {
      row.complain(key, "words of the fact '" + fact + "' instead of '" + word +
                            "': " + strict::suggestion(word, known));
    }
  }
}

void read_condition(const strict::Table& row, const Book& book, Rule& rule) {
  rule.fact = row.word("fact", fact_names());
  rule.min = row.number_or("min", {-most, most, ""}, rule.min);
  rule.max = row.number_or("max", {-most, most, ""}, rule.max);
  rule.one_of = row.texts_or_none("one_of");
  rule.none_of = row.texts_or_none("none_of");
  const bool number = is_number_fact(rule.fact);
  const bool ranged = row.has("min") || row.has("max");
  const bool worded = !rule.one_of.empty() || !rule.none_of.empty();
  if (number ? !ranged || worded : ranged || !worded) {
    row.complain("fact", number ? "'min' or 'max' for a number" : "'one_of' or 'none_of' for a word");
  }
  if (!number) {
    check_words(row, "one_of", rule.fact, rule.one_of, book);
    check_words(row, "none_of", rule.fact, rule.none_of, book);
  }
  const auto when = row.table_if_any("when");
  for (const std::string& fact : when ? when->keys() : std::vector<std::string>{}) {
    rule.when[fact] = when->words(fact, words_of_fact(fact, book));
  }
}

Rule read_rule(const strict::Table& row, const Book& book) {
  Rule rule;
  rule.key = row.text("key");
  rule.verdict = verdict_of(row.word("verdict", {"note", "qualify", "refuse"}));
  if (rule.verdict != Verdict::Note) {
    std::vector<std::string> keys;
    for (const Fault& fault : book.faults) {
      keys.push_back(fault.key);
    }
    rule.fault = row.word("fault", keys);
  }
  read_condition(row, book, rule);
  if (row.has("touches")) {
    rule.touches = row.words("touches", book.keys("request"));
  }
  rule.partly = verdict_of(row.word_or("partly", {"qualify", "refuse"}, "qualify"));
  rule.identity = row.boolean_or("identity", false);
  rule.why = row.text("why");
  rule.source = row.text("source");
  return rule;
}

void read_numbers(const strict::Table& root, const char* section, const std::vector<std::string>& names,
                  int highest, std::map<std::string, int>& numbers) {
  const strict::Table table = root.table(section);
  for (const std::string& name : names) {
    numbers[name] = table.integer(name, {0, static_cast<double>(highest), ""});
  }
  (void)table.text("source");
}

scenario::Problems read_rules(const std::filesystem::path& path, Book& book) {
  strict::File file(path);
  const strict::Table root = file.root();
  read_words(root, book);
  for (const strict::Table& row : root.tables("rule")) {
    book.rules.push_back(read_rule(row, book));
  }
  read_numbers(root, "marks", mark_names(), 100, book.marks);
  read_numbers(root, "credit", credit_names(), 1000, book.credit);
  return file.finish();
}

} // namespace

std::string to_word(Verdict verdict) {
  static constexpr const char* words[] = {"note", "accept", "qualify", "refuse"};
  return words[static_cast<std::size_t>(verdict)];
}

const Fault* Book::find_fault(std::string_view key) const {
  const auto found =
      std::find_if(faults.begin(), faults.end(), [&](const Fault& fault) { return fault.key == key; });
  return found == faults.end() ? nullptr : &*found;
}

std::vector<std::string> Book::keys(const std::string& list) const {
  std::vector<std::string> all;
  const auto found = words.find(list);
  for (const Word& word : found == words.end() ? std::vector<Word>{} : found->second) {
    all.push_back(word.key);
  }
  return all;
}

std::string Book::label(const std::string& list, const std::string& key) const {
  const auto found = words.find(list);
  for (const Word& word : found == words.end() ? std::vector<Word>{} : found->second) {
    if (word.key == key) {
      return word.label;
    }
  }
  return key;
}

std::string Book::preservative_in(const std::string& bottle) const {
  const auto found = words.find("preservative");
  for (const Word& word : found == words.end() ? std::vector<Word>{} : found->second) {
    if (std::find(word.bottles.begin(), word.bottles.end(), bottle) != word.bottles.end()) {
      return word.key;
    }
  }
  return "";
}

tl::expected<Book, scenario::Problems> load_book(const std::filesystem::path& assets_folder) {
  Book book;
  scenario::Problems problems = read_rules(assets_folder / "reception" / "rules.toml", book);
  const auto more = read_day_rules(assets_folder / "reception" / "day.toml", book);
  problems.insert(problems.end(), more.begin(), more.end());
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return book;
}

const tl::expected<Book, scenario::Problems>& shipped_book() {
  static const tl::expected<Book, scenario::Problems> book = load_book(assets::folder());
  return book;
}

} // namespace matula::reception
