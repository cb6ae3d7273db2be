#pragma once

#include "engine/author/amounts.hpp"
#include "engine/generator/consistency.hpp"
#include "engine/scenario/problem.hpp"
#include "engine/strict/table.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>

namespace matula::author {

/// What a patient's urine can be: assets/author/physiology.toml.
struct Physiology {
  struct Span {
    strict::Range range;
    std::string words;
    std::string source;
  };
  struct Substance {
    Place place;
    Span span; ///< In unit_of the place.
  };
  std::vector<Substance> substances;
  std::map<std::string, Span> whole; ///< By what follows from the composition.
};

[[nodiscard]] tl::expected<Physiology, scenario::Problems>
load_physiology(const std::filesystem::path& assets_folder);

/// What of a specimen no patient passes, a sentence each; empty when all is plausible. Nothing is said of a
/// substance that is not listed and may be missing.
[[nodiscard]] std::vector<std::string> implausible(const specimen::Specimen& specimen,
                                                   const Physiology& physiology,
                                                   const scenario::Limits& limits,
                                                   const matter::Catalogue& catalogue);

} // namespace matula::author
