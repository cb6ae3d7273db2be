#include "engine/examination/halves.hpp"

#include "engine/scenario/halves.hpp"
#include "engine/scenario/scenario.hpp"

#include <sstream>
#include <string_view>

namespace matula::examination {

std::string bench_hash(const std::string& text) {
  const auto halves = scenario::halve(text, "");
  return halves ? scenario::text_hash(halves->kept) : "";
}

std::string with_seed(const std::string& text, std::uint64_t seed) {
  std::istringstream in(text);
  std::string changed;
  bool top = true;
  for (std::string line; std::getline(in, line);) {
    const std::size_t first = line.find_first_not_of(" \t");
    const std::string_view words = first == std::string::npos ? "" : std::string_view(line).substr(first);
    top = top && words.rfind('[', 0) != 0;
    const std::size_t after = words.rfind("seed", 0) == 0 ? words.find_first_not_of(" \t", 4) : 0;
    const bool is_seed = top && after != 0 && after != std::string_view::npos && words[after] == '=';
    changed += is_seed ? "seed = " + std::to_string(seed) : line;
    changed += '\n';
  }
  return changed;
}

} // namespace matula::examination
