#include "engine/strict/same.hpp"

#include "engine/strict/parsed.hpp"

#include <algorithm>

namespace matula::strict {

namespace {

/// A key that `one` has and `other` has not, or has otherwise.
std::string difference(const toml::table& one, const toml::table& other,
                       const std::vector<std::string>& but_for) {
  for (const auto& [key, node] : one) {
    const std::string word(key.str());
    const toml::node* there = other.get(key.str());
    toml::table first;
    toml::table second;
    first.insert("value", node);
    if (there != nullptr) {
      second.insert("value", *there);
    }
    if (std::find(but_for.begin(), but_for.end(), word) == but_for.end() && first != second) {
      return word;
    }
  }
  return "";
}

} // namespace

std::string first_difference(const std::string& one, const std::string& other,
                             const std::vector<std::string>& but_for) {
  const toml::parse_result first = toml::parse(one);
  const toml::parse_result second = toml::parse(other);
  if (!first || !second) {
    return "(unreadable)";
  }
  const std::string found = difference(first.table(), second.table(), but_for);
  return found.empty() ? difference(second.table(), first.table(), but_for) : found;
}

} // namespace matula::strict
