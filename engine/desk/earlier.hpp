#pragma once

#include "engine/desk/ground.hpp"
#include "sim/appearance/appearance.hpp"

#include <string>
#include <vector>

namespace matula::desk {

/// A tube of an earlier sitting as it was when its grade was written.
struct EarlierTube {
  std::string sitting; ///< "alkaline-2"
  std::string written; ///< The learner's word; empty when none was written.
  std::string shown;   ///< A practised reader's.
  double intensity = 0;
  appearance::Appearance looks;
};

/// Tubes of one test out of the sittings handed in, latest sittings first up to `most`, then put in order of
/// their strength: the learner's own ladder. Sittings that cannot be read, ask for another test or were of a
/// case that has changed since are left out. Every sitting is played again, a fraction of a second each.
[[nodiscard]] std::vector<EarlierTube>
earlier_tubes(const Ground& ground, const std::filesystem::path& scenarios,
              const std::filesystem::path& sittings, const std::filesystem::path& except,
              const std::string& test, const appearance::View& view, std::size_t most);

} // namespace matula::desk
