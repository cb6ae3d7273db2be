#include "engine/strict/known.hpp"

#include "engine/strict/parsed.hpp"

#include <optional>
#include <stdexcept>

namespace matula::strict {

namespace {

thread_local Listening* listener = nullptr;

/// The path at which a table stands.
std::optional<std::string> path_of(const toml::node& node, const void* table, const std::string& path) {
  if (const auto* list = node.as_array()) {
    for (const auto& element : *list) {
      if (auto found = path_of(element, table, path + "[]")) {
        return found;
      }
    }
  }
  const auto* here = node.as_table();
  if (here == nullptr || here == table) {
    return here == nullptr ? std::nullopt : std::optional(path);
  }
  for (const auto& [key, inner] : *here) {
    const std::string word(key.str());
    if (auto found = path_of(inner, table, path.empty() ? word : path + "." + word)) {
      return found;
    }
  }
  return std::nullopt;
}

} // namespace

Listening::Listening() {
  if (listener != nullptr) {
    throw std::logic_error("one listens already");
  }
  listener = this;
}

Listening::~Listening() {
  listener = nullptr;
}

void tell_listener(const void* document, const void* table, const std::string& key) {
  if (listener == nullptr) {
    return;
  }
  if (const auto path = path_of(*static_cast<const toml::table*>(document), table, "")) {
    listener->heard_[*path].insert(key);
  }
}

} // namespace matula::strict
