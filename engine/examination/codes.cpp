#include "engine/examination/returned.hpp"
#include "engine/seal/base32.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"

#include <sstream>

namespace matula::examination {

namespace {

constexpr std::size_t code_letters = 8;

/// A line's words between commas, without blanks and quotes round them.
std::vector<std::string> columns(const std::string& line) {
  std::vector<std::string> words;
  std::istringstream in(line);
  for (std::string word; std::getline(in, word, ',');) {
    const std::size_t first = word.find_first_not_of(" \t\r\"");
    const std::size_t last = word.find_last_not_of(" \t\r\"");
    words.push_back(first == std::string::npos ? "" : word.substr(first, last - first + 1));
  }
  return words;
}

bool is_code(const std::string& word) {
  const std::string letters = seal::tidy(word);
  return letters.size() == code_letters && seal::from_base32(letters).has_value();
}

} // namespace

seal::Maybe<decltype(Register::codes)> read_codes(const std::filesystem::path& file) {
  const auto bytes = seal::read_bytes(file, "the register of closing codes");
  if (!bytes) {
    return tl::make_unexpected(bytes.error());
  }
  decltype(Register::codes) codes;
  scenario::Problems problems;
  std::istringstream in(seal::text_of(*bytes));
  int number = 0;
  for (std::string line; std::getline(in, line);) {
    const auto words = columns(line);
    const bool shaped = words.size() == 2 || words.size() == 3;
    ++number;
    if (line.find_first_not_of(" \t\r,") == std::string::npos ||
        (number == 1 && shaped && !is_code(words.back()))) {
      continue; // An empty line, or the names of the columns.
    }
    if (!shaped || !seal::is_name(words.front()) || !is_code(words.back())) {
      problems.push_back({file.string(), number, 0, seal::is_text(line) ? line : "",
                          "a line that is no entry of the register",
                          "pseudonym,code or pseudonym,case,code; the code has eight letters and digits"});
      continue;
    }
    const auto place = std::make_pair(words.front(), words.size() == 3 ? words[1] : std::string());
    if (!codes.emplace(place, words.back()).second) {
      problems.push_back({file.string(), number, 0, line, "a second code of '" + words.front() + "'",
                          "one line a learner, or one a case: pseudonym,case,code"});
    }
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return codes;
}

} // namespace matula::examination
