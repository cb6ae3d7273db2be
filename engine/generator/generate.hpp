#pragma once

#include "engine/generator/consistency.hpp"
#include "engine/generator/people.hpp"

#include <tl/expected.hpp>

namespace matula::generator {

/// A scenario made from a pattern.
struct Variant {
  std::string key; ///< File name without its ending.
  std::string text;
  Derived derived;
  int attempts = 1;
};

/// The pattern's own middle (`typical`), or the patient that `seed` stands for. The same pattern, people and
/// seed give the same text. Fails, saying why, when no try in a hundred is consistent.
[[nodiscard]] tl::expected<Variant, std::string> generate(const Pattern& pattern, const People& people,
                                                          std::uint64_t seed, bool typical,
                                                          const matter::Catalogue& catalogue);

/// Where the patterns and the names lie in an assets folder.
[[nodiscard]] std::filesystem::path patterns_folder(const std::filesystem::path& assets);
[[nodiscard]] std::filesystem::path people_file(const std::filesystem::path& assets);

} // namespace matula::generator
