#include "engine/scenario/halves.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace matula::scenario {

namespace {

/// Beginnings of the paths a bench needs; a list of what may stay, so that what is new stays out.
constexpr std::array<std::string_view, 11> bench_paths{
    "seed",  "story",  "patient.",         "collection.",    "specimen.", "bench.", "laboratory_rules.",
    "asked", "asked.", "decision.options", "decision.prompt"};

bool is_for_bench(const std::string& path) {
  return path == "decision.key" ||
         std::any_of(bench_paths.begin(), bench_paths.end(), [&](std::string_view beginning) {
           const bool begins = path.rfind(beginning, 0) == 0;
           return begins && (beginning.back() == '.' || path.size() == beginning.size() ||
                             path[beginning.size()] == '.');
         });
}

} // namespace

tl::expected<strict::Parted, Problems> halve(const std::string& text, const std::string& name) {
  return strict::part(text, name, is_for_bench);
}

} // namespace matula::scenario
