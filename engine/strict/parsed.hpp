#pragma once

#include "engine/strict/file.hpp"

// The parser answers with values, not exceptions.
#define TOML_EXCEPTIONS 0
#include <toml++/toml.h>

#include <map>
#include <set>

namespace matula::strict {

/// The parsed text, what was asked of it, and what was wrong. Only this room sees the parser.
struct File::Impl {
  std::string name;
  std::vector<std::string> lines;
  toml::table document;
  bool broken = false;
  std::map<const void*, std::set<std::string>> asked; ///< Keys asked for, by table.
  scenario::Problems problems;

  void complain(int line, int column, const std::string& found, const std::string& expected);
};

} // namespace matula::strict
