#include "engine/strict/file.hpp"

#include "engine/strict/nearest.hpp"
#include "engine/strict/parsed.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <tuple>

namespace matula::strict {

namespace {

std::vector<std::string> split_lines(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    if (!line.empty() && line.back() == '\r') {
      line.pop_back();
    }
    lines.push_back(line);
  }
  return lines;
}

void report_unknown(File::Impl& file, const toml::table& table);

void report_inside(File::Impl& file, const toml::node& node) {
  if (const toml::table* table = node.as_table()) {
    // A table nobody opened was asked for as a whole and refused already.
    if (file.asked.count(table) > 0) {
      report_unknown(file, *table);
    }
  } else if (const toml::array* array = node.as_array()) {
    for (const toml::node& element : *array) {
      report_inside(file, element);
    }
  }
}

void report_unknown(File::Impl& file, const toml::table& table) {
  const std::set<std::string>& known = file.asked[&table];
  for (const auto& [key, node] : table) {
    const std::string word(key.str());
    if (known.count(word) > 0) {
      report_inside(file, node);
      continue;
    }
    const std::vector<std::string> candidates(known.begin(), known.end());
    const toml::source_position at = key.source().begin;
    file.complain(static_cast<int>(at.line), static_cast<int>(at.column), "unknown key '" + word + "'",
                  candidates.empty() ? "no key here" : suggestion(word, candidates));
  }
}

} // namespace

bool read_text(const std::filesystem::path& path, std::string& text) {
  const std::ifstream in(path, std::ios::binary);
  if (!in) {
    return false;
  }
  std::ostringstream words;
  words << in.rdbuf();
  text = words.str();
  return true;
}

void File::Impl::complain(int line, int column, const std::string& found, const std::string& expected) {
  if (broken && !problems.empty()) {
    return;
  }
  scenario::Problem problem;
  problem.file = name;
  problem.line = line;
  problem.column = column;
  if (line >= 1 && static_cast<std::size_t>(line) <= lines.size()) {
    problem.text = lines[static_cast<std::size_t>(line) - 1];
  }
  problem.found = found;
  problem.expected = expected;
  problems.push_back(problem);
}

File::File(const std::string& text, std::string name) : impl_(std::make_unique<Impl>()) {
  impl_->name = std::move(name);
  impl_->lines = split_lines(text);
  toml::parse_result result = toml::parse(text);
  if (result) {
    impl_->document = std::move(result).table();
    return;
  }
  impl_->broken = true;
  const toml::source_position at = result.error().source().begin;
  impl_->complain(static_cast<int>(at.line), static_cast<int>(at.column),
                  "text that is not TOML (" + std::string(result.error().description()) + ")",
                  "key = value, with words in \"quotes\"");
}

File::File(const std::filesystem::path& path) : impl_(std::make_unique<Impl>()) {
  std::string text;
  if (!read_text(path, text)) {
    impl_->name = path.string();
    impl_->broken = true;
    impl_->complain(0, 0, "no readable file", "a file at this place");
    return;
  }
  *this->impl_ = std::move(*File(text, path.string()).impl_);
}

File::~File() = default;

Table File::root() {
  return {*impl_, impl_->broken ? nullptr : &impl_->document};
}

void File::complain(int line, int column, const std::string& found, const std::string& expected) {
  impl_->complain(line, column, found, expected);
}

scenario::Problems File::finish() {
  if (!impl_->broken) {
    report_unknown(*impl_, impl_->document);
  }
  std::stable_sort(impl_->problems.begin(), impl_->problems.end(),
                   [](const scenario::Problem& a, const scenario::Problem& b) {
                     return std::tie(a.line, a.column) < std::tie(b.line, b.column);
                   });
  return impl_->problems;
}

} // namespace matula::strict
