#include "engine/records/name_list.hpp"

#include "engine/records/marker.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <sstream>

namespace matula::records {

std::vector<std::pair<std::string, std::string>> read_name_list(const std::filesystem::path& file) {
  std::string text;
  if (!strict::read_text(file, text)) {
    throw Trouble(file.string() + " cannot be read.");
  }
  std::istringstream in(text);
  std::vector<std::pair<std::string, std::string>> names;
  int number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' ')) {
      line.pop_back();
    }
    if (line.empty() || (number == 1 && line == "pseudonym,name")) {
      continue;
    }
    const auto comma = line.find(',');
    std::string name = comma == std::string::npos ? "" : line.substr(comma + 1);
    if (name.size() >= 2 && name.front() == '"' && name.back() == '"') {
      name = name.substr(1, name.size() - 2);
    }
    const std::string pseudonym = line.substr(0, comma);
    if (comma == std::string::npos || !refuse_pseudonym(pseudonym).empty()) {
      throw Trouble(fmt::format("{}:{}: found \"{}\"; write one student a line: pseudonym,name",
                                file.string(), number, line));
    }
    names.emplace_back(pseudonym, name);
  }
  return names;
}

std::string in_words(const Removed& removed) {
  return fmt::format("{} student(s), {} name(s), {} sitting(s) with their logs, {} score(s), {} mark(s), {} "
                     "reading(s), {} written word(s) nobody else wrote, {} scenario(s) nobody else sat",
                     removed.students, removed.names, removed.sittings, removed.scores, removed.marks,
                     removed.readings, removed.words, removed.scenarios);
}

} // namespace matula::records
