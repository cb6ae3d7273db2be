#include "engine/strict/table.hpp"

#include "engine/strict/known.hpp"
#include "engine/strict/nearest.hpp"
#include "engine/strict/parsed.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace matula::strict {

namespace {

const toml::table* as_table(const void* node) {
  return static_cast<const toml::table*>(node);
}

std::string plain(double value) {
  constexpr int digits = 12; // A seed's highest value stands there whole.
  std::ostringstream out;
  out.precision(digits);
  out << value;
  return out.str();
}

std::string words_for(const Range& range, const char* kind) {
  const std::string unit = range.unit.empty() ? "" : " " + range.unit;
  return std::string(kind) + " from " + plain(range.low) + " to " + plain(range.high) + unit;
}

std::string show(const toml::node& node) {
  if (node.is_table() || node.is_array()) {
    return node.is_table() ? "a table" : "a list";
  }
  std::ostringstream out;
  node.visit([&out](const auto& value) {
    if constexpr (toml::is_value<decltype(value)>) {
      out << value;
    }
  });
  return node.is_string() ? "\"" + node.value_or(std::string()) + "\"" : out.str();
}

/// The node under `key`, which becomes known; null when missing.
const toml::node* ask(File::Impl& file, const void* node, const std::string& key) {
  if (node == nullptr) {
    return nullptr;
  }
  file.asked[node].insert(key);
  tell_listener(&file.document, node, key);
  return as_table(node)->get(key);
}

void complain_at(File::Impl& file, const toml::node& node, const std::string& found,
                 const std::string& expected) {
  const toml::source_position at = node.source().begin;
  file.complain(static_cast<int>(at.line), static_cast<int>(at.column), found, expected);
}

void complain_missing(File::Impl& file, const void* node, const std::string& key,
                      const std::string& expected) {
  if (node != nullptr) {
    complain_at(file, *as_table(node), "no '" + key + "'", key + " = " + expected);
  }
}

std::optional<double> checked(File::Impl& file, const toml::node& node, const std::string& key,
                              const Range& range) {
  const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value) || *value < range.low || *value > range.high) {
    complain_at(file, node, key + " = " + show(node), words_for(range, "a number"));
    return std::nullopt;
  }
  return value;
}

} // namespace

bool Table::has(const std::string& key) const {
  return ask(*file_, node_, key) != nullptr;
}

double Table::number(const std::string& key, const Range& range) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    complain_missing(*file_, node_, key, words_for(range, "a number"));
    return range.low;
  }
  return checked(*file_, *node, key, range).value_or(range.low);
}

double Table::number_or(const std::string& key, const Range& range, double fallback) const {
  const toml::node* node = ask(*file_, node_, key);
  return node == nullptr ? fallback : checked(*file_, *node, key, range).value_or(fallback);
}

int Table::integer(const std::string& key, const Range& range) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, words_for(range, "a whole number"));
    return static_cast<int>(range.low);
  }
  return integer_or(key, range, static_cast<int>(range.low));
}

int Table::integer_or(const std::string& key, const Range& range, int fallback) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    return fallback;
  }
  const std::optional<std::int64_t> value = node->is_integer() ? node->value<std::int64_t>() : std::nullopt;
  if (!value || static_cast<double>(*value) < range.low || static_cast<double>(*value) > range.high) {
    complain_at(*file_, *node, key + " = " + show(*node), words_for(range, "a whole number"));
    return fallback;
  }
  return static_cast<int>(*value);
}

bool Table::boolean_or(const std::string& key, bool fallback) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    return fallback;
  }
  if (!node->is_boolean()) {
    complain_at(*file_, *node, key + " = " + show(*node), "true or false");
    return fallback;
  }
  return node->value_or(fallback);
}

std::string Table::text(const std::string& key) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, "\"words\"");
    return "";
  }
  std::string words = text_or(key, "?");
  if (words.empty()) {
    complain(key, "some words between the quotes");
  }
  return words;
}

std::string Table::text_or(const std::string& key, const std::string& fallback) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    return fallback;
  }
  if (!node->is_string()) {
    complain_at(*file_, *node, key + " = " + show(*node), "words in \"quotes\"");
    return fallback;
  }
  return node->value_or(fallback);
}

std::string Table::word(const std::string& key, const std::vector<std::string>& allowed) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, suggestion("", allowed));
    return allowed.front();
  }
  return word_or(key, allowed, allowed.front());
}

std::string Table::word_or(const std::string& key, const std::vector<std::string>& allowed,
                           const std::string& fallback) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    return fallback;
  }
  std::string given = node->value_or(std::string());
  if (std::find(allowed.begin(), allowed.end(), given) == allowed.end()) {
    complain_at(*file_, *node, key + " = " + show(*node), suggestion(given, allowed));
    return fallback;
  }
  return given;
}

std::vector<double> Table::numbers(const std::string& key, const Range& range, std::size_t count) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, "[" + words_for(range, "numbers") + "]");
    return std::vector<double>(count, range.low);
  }
  std::vector<double> values = numbers_or_none(key, range);
  if (count > 0 && values.size() != count) {
    complain(key, std::to_string(count) + " numbers");
    values.resize(count, range.low);
  }
  return values;
}

std::vector<double> Table::numbers_or_none(const std::string& key, const Range& range) const {
  const toml::node* node = ask(*file_, node_, key);
  std::vector<double> values;
  if (node == nullptr) {
    return values;
  }
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    complain_at(*file_, *node, key + " = " + show(*node), "a list: [1, 2, 3]");
    return values;
  }
  for (const toml::node& element : *array) {
    values.push_back(checked(*file_, element, "an element of " + key, range).value_or(range.low));
  }
  return values;
}

std::vector<std::string> Table::texts_or_none(const std::string& key) const {
  const toml::node* node = ask(*file_, node_, key);
  std::vector<std::string> values;
  if (node == nullptr) {
    return values;
  }
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    complain_at(*file_, *node, key + " = " + show(*node), "a list: [\"one\", \"two\"]");
    return values;
  }
  for (const toml::node& element : *array) {
    if (!element.is_string()) {
      complain_at(*file_, element, "an element of " + key + " = " + show(element), "words in \"quotes\"");
    }
    values.push_back(element.value_or(std::string()));
  }
  return values;
}

std::vector<std::string> Table::words(const std::string& key, const std::vector<std::string>& allowed) const {
  const toml::node* node = ask(*file_, node_, key);
  std::vector<std::string> values;
  if (node == nullptr) {
    complain_missing(*file_, node_, key, "[\"...\"], " + suggestion("", allowed));
    return values;
  }
  if (!node->is_array()) {
    complain_at(*file_, *node, key + " = " + show(*node), "a list: [\"" + allowed.front() + "\"]");
    return values;
  }
  for (const toml::node& element : *node->as_array()) {
    const std::string given = element.value_or(std::string());
    if (std::find(allowed.begin(), allowed.end(), given) == allowed.end()) {
      complain_at(*file_, element, show(element) + " in " + key, suggestion(given, allowed));
    } else if (std::find(values.begin(), values.end(), given) != values.end()) {
      complain_at(*file_, element, show(element) + " twice in " + key, "each word once");
    } else {
      values.push_back(given);
    }
  }
  return values;
}

bool Table::is_text(const std::string& key) const {
  const toml::node* node = ask(*file_, node_, key);
  return node != nullptr && node->is_string();
}

Table Table::table(const std::string& key) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, "{ ... }, or a section [" + key + "]");
  }
  return table_if_any(key).value_or(Table(*file_, nullptr));
}

std::optional<Table> Table::table_if_any(const std::string& key) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    return std::nullopt;
  }
  if (!node->is_table()) {
    complain_at(*file_, *node, key + " = " + show(*node), "{ ... }, or a section [" + key + "]");
    return Table(*file_, nullptr);
  }
  file_->asked[node->as_table()];
  return Table(*file_, node->as_table());
}

std::vector<Table> Table::tables(const std::string& key) const {
  if (!has(key)) {
    complain_missing(*file_, node_, key, "sections that begin [[" + key + "]]");
  }
  return tables_or_none(key);
}

std::vector<Table> Table::tables_or_none(const std::string& key) const {
  const toml::node* node = ask(*file_, node_, key);
  std::vector<Table> found;
  if (node == nullptr) {
    return found;
  }
  const toml::array* array = node->as_array();
  if (array == nullptr) {
    complain_at(*file_, *node, key + " = " + show(*node), "sections that begin [[" + key + "]]");
    return found;
  }
  for (const toml::node& element : *array) {
    const toml::table* table = element.as_table();
    if (table == nullptr) {
      complain_at(*file_, element, show(element) + " in " + key, "a table { ... }");
      continue;
    }
    file_->asked[table];
    found.push_back(Table(*file_, table));
  }
  return found;
}

std::vector<std::string> Table::keys() const {
  std::vector<const toml::key*> here;
  if (node_ != nullptr) {
    for (auto at = as_table(node_)->begin(); at != as_table(node_)->end(); ++at) {
      here.push_back(&at->first);
    }
  }
  std::sort(here.begin(), here.end(), [](const toml::key* a, const toml::key* b) {
    const toml::source_position one = a->source().begin;
    const toml::source_position other = b->source().begin;
    return one.line != other.line ? one.line < other.line : one.column < other.column;
  });
  std::vector<std::string> words;
  words.reserve(here.size());
  for (const toml::key* key : here) {
    words.emplace_back(key->str());
  }
  return words;
}

void Table::complain(const std::string& key, const std::string& expected) const {
  const toml::node* node = ask(*file_, node_, key);
  if (node == nullptr) {
    complain_missing(*file_, node_, key, expected);
    return;
  }
  complain_at(*file_, *node, key + " = " + show(*node), expected);
}

int Table::line() const {
  return node_ == nullptr ? 0 : static_cast<int>(as_table(node_)->source().begin.line);
}

int Table::line_of(const std::string& key) const {
  const toml::node* node = node_ == nullptr ? nullptr : as_table(node_)->get(key);
  return node == nullptr ? line() : static_cast<int>(node->source().begin.line);
}

const std::string& Table::file_name() const {
  return file_->name;
}

} // namespace matula::strict
