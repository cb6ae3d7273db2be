#include "engine/strict/parted.hpp"

#include "engine/strict/parsed.hpp"

#include <algorithm>
#include <sstream>
#include <vector>

namespace matula::strict {

namespace {

using Keep = std::function<bool(const std::string&)>;

std::string printed(const toml::node& value) {
  std::ostringstream out;
  out << toml::toml_formatter(value, toml::format_flags::none);
  return out.str();
}

std::string printed_key(const std::string& key) {
  const auto bare = [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
           (letter >= '0' && letter <= '9') || letter == '_' || letter == '-';
  };
  return !key.empty() && std::all_of(key.begin(), key.end(), bare) ? key
                                                                   : printed(toml::value<std::string>(key));
}

bool is_list_of_tables(const toml::node& node) {
  const toml::array* array = node.as_array();
  return array != nullptr && !array->empty() && array->is_homogeneous<toml::table>();
}

/// Keys in the order they stand in the file.
std::vector<std::string> keys_of(const toml::table& table) {
  std::vector<std::pair<toml::source_position, std::string>> placed;
  for (const auto& [key, node] : table) {
    placed.emplace_back(key.source().begin, std::string(key.str()));
  }
  std::stable_sort(placed.begin(), placed.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> keys;
  for (auto& [place, key] : placed) {
    keys.push_back(std::move(key));
  }
  return keys;
}

/// Writes the values that `keep` lets through: of a table first its own values, then the tables in it.
class Printer {
public:
  explicit Printer(const Keep& keep) : keep_(keep) {}

  void table(const toml::table& table, const std::string& head, const std::string& path) {
    for (const auto& key : keys_of(table)) {
      const toml::node& node = *table.get(key);
      if (!node.is_table() && !is_list_of_tables(node) && keep_(path + key)) {
        out_ << printed_key(key) << " = " << printed(node) << '\n';
      }
    }
    for (const auto& key : keys_of(table)) {
      const toml::node& node = *table.get(key);
      const std::string place = head + (head.empty() ? "" : ".") + printed_key(key);
      if (const toml::table* inner = node.as_table()) {
        inside("[" + place + "]", *inner, place, path + key + ".");
      } else if (is_list_of_tables(node)) {
        for (const auto& one : *node.as_array()) {
          inside("[[" + place + "]]", *one.as_table(), place, path + key + ".");
        }
      }
    }
  }

  [[nodiscard]] std::string text() const { return out_.str(); }

private:
  /// A table of which nothing is kept leaves its head only where `keep` takes the table itself.
  void inside(const std::string& line, const toml::table& table, const std::string& head,
              const std::string& path) {
    Printer inner(keep_);
    inner.table(table, head, path);
    const std::string words = inner.text();
    if (!words.empty() || keep_(path)) {
      out_ << '\n' << line << '\n' << words;
    }
  }

  const Keep& keep_;
  std::ostringstream out_;
};

tl::expected<toml::table, scenario::Problems> parsed(const std::string& text, const std::string& name) {
  toml::parse_result result = toml::parse(text);
  if (result) {
    return std::move(result).table();
  }
  const auto at = result.error().source().begin;
  return tl::make_unexpected(scenario::Problems{
      {name, static_cast<int>(at.line), static_cast<int>(at.column), "",
       "text that is not TOML (" + std::string(result.error().description()) + ")", "key = value"}});
}

bool put_together(toml::table& into, const toml::table& from);

bool put_together(toml::node& into, const toml::node& from) {
  if (into.is_table() && from.is_table()) {
    return put_together(*into.as_table(), *from.as_table());
  }
  if (!is_list_of_tables(into) || !is_list_of_tables(from) ||
      into.as_array()->size() != from.as_array()->size()) {
    return false;
  }
  bool good = true;
  for (std::size_t i = 0; i < into.as_array()->size(); ++i) {
    good = put_together(*into.as_array()->get_as<toml::table>(i), *from.as_array()->get_as<toml::table>(i)) &&
           good;
  }
  return good;
}

bool put_together(toml::table& into, const toml::table& from) {
  bool good = true;
  for (const auto& [key, node] : from) {
    toml::node* there = into.get(key.str());
    if (there == nullptr) {
      into.insert(key, node);
    } else {
      good = put_together(*there, node) && good;
    }
  }
  return good;
}

} // namespace

tl::expected<Parted, scenario::Problems> part(const std::string& text, const std::string& name,
                                              const Keep& keep) {
  const auto whole = parsed(text, name);
  if (!whole) {
    return tl::make_unexpected(whole.error());
  }
  const Keep take = [&keep](const std::string& path) { return !keep(path); };
  Printer kept(keep);
  Printer taken(take);
  kept.table(*whole, "", "");
  taken.table(*whole, "", "");
  return Parted{kept.text(), taken.text()};
}

tl::expected<std::string, scenario::Problems> join(const Parted& halves, const std::string& name) {
  auto whole = parsed(halves.kept, name);
  const auto taken = parsed(halves.taken, name);
  if (!whole || !taken) {
    return tl::make_unexpected(whole ? taken.error() : whole.error());
  }
  if (!put_together(*whole, *taken)) {
    return tl::make_unexpected(scenario::Problems{
        {name, 0, 0, "", "two halves that do not belong together", "both halves of one scenario"}});
  }
  const Keep everything = [](const std::string&) { return true; };
  Printer printer(everything);
  printer.table(*whole, "", "");
  return printer.text();
}

} // namespace matula::strict
